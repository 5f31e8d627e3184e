//! `source.html`: the file of a procedure as its author wrote it.

use serde::Serialize;

use super::frame::Frame;

/// `source.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SourcePage {
    /// The frame.
    pub page: Frame,
    /// What the guide is called.
    pub title: String,
    /// The path of the file in the guidebook.
    pub file: String,
    /// Its lines. Comments, keys and numbers are spans of the classes `c`, `k` and `n`.
    pub lines_html: Vec<String>,
}
