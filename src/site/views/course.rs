//! A course: lessons in order, each with its guides, what lies ready and is worn, and where its questions stand.

use super::control::text;
use super::frame::About;
use super::rows::main_paints;
use super::{Views, gone};
use crate::model::Procedure;
use crate::model::guidebook::{Course, Lesson};
use crate::site::context::course::{CourseCard, CourseGuide, CourseLesson, CoursePage};
use crate::site::context::frame::Link;
use crate::site::escape::keep_units;
use crate::site::markdown::Layout;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `course.html` gets.
    pub(super) fn course(&self, path: &str, at: usize) -> Result<CoursePage, ThemeError> {
        let course = self.book.courses.get(at).ok_or_else(|| gone("course"))?;
        let mut taught: Vec<&str> = Vec::new();
        let mut lessons = Vec::new();
        for (number, lesson) in (1..).zip(&course.lessons) {
            taught.extend(lesson.procedures.iter().map(|id| id.value.as_str()));
            lessons.push(self.lesson(path, number, lesson, &taught)?);
        }
        let rows: Vec<_> = lessons.iter().flat_map(|lesson| &lesson.guides).map(|guide| guide.row.clone()).collect();
        let page = self.frame(About {
            path,
            title: course_title(course),
            trail: vec![self.home_link(path)],
            procedure: None,
            paints: main_paints(&rows),
            look: Look::Course,
            scripts: &["course.js"],
            data: None,
            anchor: "main",
        })?;
        let class_size = course.class_size.value().copied().unwrap_or(0);
        Ok(CoursePage { page, id: course.id.clone(), title: course_title(course), class_size, lessons })
    }

    /// All courses, in the order of their ids.
    pub(super) fn courses(&self, page: &str) -> Vec<CourseCard> {
        let card = |course: &Course| CourseCard {
            link: Link { name: course_title(course), href: paths::link(page, &paths::course(&course.id)) },
            lessons: course.lessons.len(),
            class_size: course.class_size.value().copied().unwrap_or(0),
        };
        self.book.courses.iter().map(card).collect()
    }

    /// One lesson; `taught` are the guides of this one and of those before it.
    fn lesson(&self, page: &str, number: usize, lesson: &Lesson, taught: &[&str]) -> Result<CourseLesson, ThemeError> {
        let (mut tools, mut wear, mut off) = (Vec::new(), Vec::new(), Vec::new());
        let (mut needs, mut guides) = (Vec::new(), Vec::new());
        for id in &lesson.procedures {
            let Ok(at) = self.book.procedures.binary_search_by(|procedure| procedure.id.as_str().cmp(&id.value)) else { continue };
            let Some(procedure) = self.book.procedures.get(at) else { continue };
            let gear = self.gear(procedure);
            once(&mut tools, gear.tools.into_iter().map(|item| item.any_of));
            once(&mut wear, gear.wear.into_iter().flat_map(|item| item.any_of));
            once(&mut off, gear.off.into_iter().flat_map(|item| item.any_of));
            let missing = procedure.needs.iter().filter(|need| !taught.contains(&need.value.as_str()));
            once(&mut needs, missing.map(|need| self.need(page, &need.value)));
            guides.extend(self.course_guide(page, at, procedure)?);
        }
        Ok(CourseLesson {
            number,
            name: text(&lesson.name),
            aims_html: self.laid_out(page, &lesson.aims, Layout { top_heading: 3, lines: false }),
            guides,
            tools,
            wear,
            off,
            needs,
        })
    }

    fn course_guide(&self, page: &str, at: usize, procedure: &Procedure) -> Result<Option<CourseGuide>, ThemeError> {
        let Some(row) = self.row(page, at)? else { return Ok(None) };
        Ok(Some(CourseGuide {
            level: keep_units(&text(&procedure.level)),
            ways: self.ways(page, at, "")?,
            questions: procedure.steps.iter().map(|step| step.ask.len()).sum(),
            questions_href: paths::anchored(row.href.clone(), "ask"),
            row,
        }))
    }
}

/// Its title, else the name of its file in words.
fn course_title(course: &Course) -> String {
    course.title.value().cloned().unwrap_or_else(|| course.id.replace('-', " "))
}

/// Adds what is not there yet.
fn once<T: PartialEq>(all: &mut Vec<T>, more: impl Iterator<Item = T>) {
    for new in more {
        if !all.contains(&new) {
            all.push(new);
        }
    }
}
