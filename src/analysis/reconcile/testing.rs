//! Sheets from plain text, for the tests of this room: commas part the cells, and nothing is quoted.

use crate::finding::Span;

use super::lower::{Word, sheet as lowered};
use super::sheet::Sheet;

/// The sheet of a text.
pub(super) fn sheet(text: &str) -> Sheet {
    let mut lines = text.lines().map(|line| line.split(',').map(|text| Word { text, span: Span::default() }).collect::<Vec<_>>());
    let header = lines.next().unwrap();
    lowered(&header, &lines.collect::<Vec<_>>()).unwrap()
}
