//! `home.html`: the first page, and the rows by which guides are listed anywhere.

use serde::Serialize;

use super::course::CourseCard;
use super::frame::{Frame, Link};
use crate::figures::share::Percent;
use crate::site::views::SearchBox;

/// `home.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HomePage {
    /// The frame.
    pub page: Frame,
    /// Species that have guides.
    pub species: Vec<SpeciesCard>,
    /// All guides; only when they are few enough for one list, else empty.
    pub guides: Vec<GuideRow>,
    /// Courses.
    pub courses: Vec<CourseCard>,
    /// The newest revisions, the newest first.
    pub changes: Vec<Change>,
    /// All tables.
    pub tables_href: String,
    /// All pieces with their names.
    pub pieces_href: String,
    /// The limits against which guides are held.
    pub limits_href: String,
    /// Pages that the guidebook's owner wrote.
    pub pages: Vec<Link>,
    /// What is checked.
    pub checks_href: String,
    /// What is kept on a device.
    pub offline_href: String,
    /// The search box.
    pub search: SearchBox,
}

/// A species with its guides counted.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesCard {
    /// What it is called.
    pub name: String,
    /// Its page.
    pub href: String,
    /// How many guides.
    pub guides: usize,
    /// The pieces that they start from, a few.
    pub starts: Vec<String>,
}

/// A guide in a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GuideRow {
    /// What it is called.
    pub title: String,
    /// Its page.
    pub href: String,
    /// The piece that it starts from.
    pub start: String,
    /// The weights for which it is written.
    pub weight: String,
    /// Minutes of work; empty when not known.
    pub minutes: String,
    /// What it is worked for: `retail`, or `for-cutting` where more of it goes on to be cut; empty when neither.
    pub main_use: &'static str,
    /// How much that is, of the start.
    pub main: Option<Percent>,
    /// Revision number.
    pub revision: u32,
    /// `draft`, `in-force` or `withdrawn`.
    pub state: &'static str,
    /// The date of the revision in words.
    pub date: String,
    /// True for the usual way to break the piece here.
    pub house_cut: bool,
}

/// A revision that is new.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Change {
    /// What the guide is called.
    pub title: String,
    /// Its page.
    pub href: String,
    /// Revision number.
    pub revision: u32,
    /// `draft`, `in-force` or `withdrawn`.
    pub state: &'static str,
    /// The date in words.
    pub date: String,
    /// The date as `2026-03-02`.
    pub date_iso: String,
    /// What changed, on one line; may be empty.
    pub change: String,
}
