//! `offline.html`: what is kept on a device, and the choice of it.

use serde::Serialize;

use super::frame::Frame;

/// `offline.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OfflinePage {
    /// The frame.
    pub page: Frame,
    /// True when the whole site is kept at once; else a reader chooses.
    pub all: bool,
    /// How much they are: `2.1 MB`.
    pub size: String,
    /// How much every reader keeps, whatever is chosen.
    pub shell: String,
    /// Species, by name.
    pub species: Vec<OfflinePart>,
    /// Courses, by name.
    pub courses: Vec<OfflinePart>,
    /// What belongs to no species.
    pub rest: OfflinePart,
}

/// A part that is kept or removed as one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OfflinePart {
    /// Its id for the script of the page: `species/pork`.
    pub id: String,
    /// What it is called; empty for the rest.
    pub name: String,
    /// How many guides.
    pub guides: usize,
    /// How much it is: `640 kB`.
    pub size: String,
}
