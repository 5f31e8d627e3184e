//! The shapes of the embedded anatomy, `src/reference/anatomy-<group>*.yaml`.

use serde::Deserialize;

use crate::source::documents::texts::{CountText, Id, Line, Markdown, Word};
use crate::source::field::{Entries, Optional, Required};

/// A bone (joints and fins with them), muscle, tissue or gland.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Part {
    /// What it is called.
    pub name: Required<Line>,
    /// Other names, anatomical ones included.
    pub also: Optional<Vec<Required<Line>>>,
    /// `bone`, `muscle`, `tissue` or `gland`.
    pub kind: Required<Word>,
    /// How many there are.
    pub count: Optional<PartCount>,
    /// True when the count is that of each side.
    pub paired: Optional<bool>,
    /// The larger part that it belongs to.
    pub part_of: Optional<Id>,
    /// The regions in which it lies.
    pub regions: Required<Vec<Required<Id>>>,
    /// What it does.
    pub does: Required<Markdown>,
    /// Where it lies.
    pub lies: Required<Markdown>,
    /// Where the facts come from.
    pub sources: Optional<Vec<Required<Line>>>,
    /// How they were verified.
    pub verified: Required<Word>,
}

/// How many there are: a number for the whole group, or one a species.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename = "$either a number or `{ species: number }`")]
pub enum PartCount {
    /// In every species of the group.
    #[serde(rename = "text")]
    Every(CountText),
    /// By species.
    #[serde(rename = "mapping")]
    Each(Entries<CountText>),
}
