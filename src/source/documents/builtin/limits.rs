//! The shape of the embedded limits, `src/reference/limits-<profile>.yaml`; `profiles.yaml` explains each key.

use serde::Deserialize;

use super::Source;
use crate::source::documents::texts::{Id, LimitText, Line, Word};
use crate::source::field::{Optional, Required};

/// One limit.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Limit {
    /// Its id within the profile.
    pub id: Required<Id>,
    /// What it is about.
    pub stage: Required<Word>,
    /// Classes of product.
    pub product: Optional<Vec<Required<Word>>>,
    /// Species.
    pub species: Optional<Vec<Required<Id>>>,
    /// What it measures.
    pub measures: Required<Word>,
    /// The highest figure.
    pub at_most: Optional<LimitText>,
    /// The lowest figure.
    pub at_least: Optional<LimitText>,
    /// The figure above which it begins.
    pub above: Optional<LimitText>,
    /// The figure in the other unit, as the source prints it.
    pub printed_twin: Optional<LimitText>,
    /// A time.
    pub duration: Optional<LimitText>,
    /// `single` or `cumulative`.
    pub clock: Optional<Word>,
    /// True for an option.
    pub only_when_asked: Optional<bool>,
    /// Risk material of animals of this age or older.
    pub from_age: Optional<LimitText>,
    /// Risk material of animals over this age.
    pub over_age: Optional<LimitText>,
    /// Parts that are risk material.
    pub parts: Optional<Vec<Required<Id>>>,
    /// The rule in plain words.
    pub text: Required<Line>,
    /// What to know about it.
    pub note: Optional<Line>,
    /// `law`, `guidance`, `standard` or `repealed`.
    pub force: Required<Word>,
    /// Where it comes from.
    pub citation: Required<Source>,
    /// How that was verified.
    pub verified: Required<Word>,
}
