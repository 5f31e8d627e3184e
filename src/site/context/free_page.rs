//! `free-page.html`: a page that the guidebook's owner wrote.

use serde::Serialize;

use super::frame::Frame;

/// `free-page.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FreePage {
    /// The frame.
    pub page: Frame,
    /// Its first heading, else the name of its file.
    pub title: String,
    /// The rest.
    pub text_html: String,
}
