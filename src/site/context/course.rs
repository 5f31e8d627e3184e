//! `course.html`: a course, lesson by lesson.

use serde::Serialize;

use super::frame::{Frame, Link};
use super::home::GuideRow;

/// `course.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CoursePage {
    /// The frame.
    pub page: Frame,
    /// The id of the course.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// How many learners; 0 when not stated.
    pub class_size: u32,
    /// The lessons in order.
    pub lessons: Vec<CourseLesson>,
}

/// A lesson.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CourseLesson {
    /// Counts from 1; the anchor is `lesson-` and this.
    pub number: usize,
    /// What it is called.
    pub name: String,
    /// What the learners take away; may be empty.
    pub aims_html: String,
    /// The guides that it works through, in order.
    pub guides: Vec<CourseGuide>,
    /// Tools of all its guides, each once; each entry is a choice of one or several.
    pub tools: Vec<Vec<String>>,
    /// What is worn in all its guides, each once.
    pub wear: Vec<String>,
    /// Protection that comes off for a tool of one of its guides, each once.
    pub off: Vec<String>,
    /// Guides to know first that neither this lesson nor an earlier one works through.
    pub needs: Vec<Link>,
}

/// A guide of a lesson.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CourseGuide {
    /// The guide as a row of a list.
    pub row: GuideRow,
    /// Its level of training; may be empty.
    pub level: String,
    /// Its other views.
    pub ways: Vec<Link>,
    /// How many questions it asks.
    pub questions: usize,
    /// Where they stand.
    pub questions_href: String,
}

/// A course in a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CourseCard {
    /// Its title, and its page.
    pub link: Link,
    /// How many lessons it has.
    pub lessons: usize,
    /// How many learners; 0 when not stated.
    pub class_size: u32,
}
