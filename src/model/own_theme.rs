//! What a guidebook has of its own to look different: files of a theme, and the folders that could be one.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::FileId;

/// Files and folders.
#[derive(Debug, Clone, Default)]
pub struct OwnTheme {
    /// The files of the folder that `theme` names, by path inside it; empty where it names a built-in theme.
    pub files: BTreeMap<String, ThemeFile>,
    /// All folders of the guidebook that could be a theme.
    pub folders: BTreeSet<String>,
    /// All its other folders.
    pub other_folders: BTreeSet<String>,
}

/// A file of a theme.
#[derive(Debug, Clone)]
pub struct ThemeFile {
    /// Where findings about it point.
    pub file: FileId,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// The themes that ship inside the program, the one that is used when none is named first.
pub const BUILT_IN: &[&str] = &["paper", "steel"];

/// A theme as it is named, without the marks of a path: `./ours/` is `ours`.
#[must_use]
pub fn folder_named(theme: &str) -> &str {
    theme.trim_start_matches("./").trim_end_matches('/')
}
