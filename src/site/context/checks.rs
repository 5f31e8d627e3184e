//! `checks.html`: every check with its text, for whoever writes a guidebook.

use serde::Serialize;

use super::frame::Frame;

/// `checks.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChecksPage {
    /// The frame.
    pub page: Frame,
    /// How many checks there are.
    pub count: usize,
    /// Families of checks.
    pub groups: Vec<CheckGroup>,
}

/// A family of checks.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckGroup {
    /// Its word: `balance`; the anchor is `group-` and this.
    pub id: &'static str,
    /// What it looks at, as a heading.
    pub name: String,
    /// In the order of their ids.
    pub checks: Vec<CheckText>,
}

/// A check.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckText {
    /// Its id, which is its anchor.
    pub id: &'static str,
    /// `fault` or `advice`.
    pub level: &'static str,
    /// Why this guidebook turns it off; empty where it does not.
    pub off: String,
    /// What it finds.
    pub what_html: String,
    /// Why that matters at the bench.
    pub why_html: String,
    /// A few lines that have it.
    pub example: &'static str,
    /// How to mend it.
    pub mend_html: String,
    /// Where the rule comes from.
    pub source_html: String,
}
