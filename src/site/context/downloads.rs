//! Files with the figures of a table, offered beside it.

use serde::Serialize;

/// A file to take along.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Download {
    /// What kind of file it is: `CSV`, `JSON`.
    pub kind: &'static str,
    /// Relative to the page.
    pub href: String,
    /// How large it is, rounded: `2.1 kB`.
    pub size: String,
}
