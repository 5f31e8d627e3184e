//! The shape of `guidebook.yaml`.

use schemars::JsonSchema;
use serde::Deserialize;

use super::texts::{Id, LimitText, Line, PathText, Word};
use crate::source::field::{Optional, Required};
use crate::source::schema::{rules, spelling, words};

/// What the whole guidebook states of itself.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Guidebook {
    /// What it is called.
    pub title: Required<Line>,
    /// Who publishes it.
    pub publisher: Optional<Line>,
    /// The language of its texts; `en` when left out.
    #[schemars(with = "Optional<spelling::LanguageCode>")]
    pub language: Optional<Word>,
    /// Languages of its translations.
    #[schemars(with = "Optional<Vec<Required<spelling::LanguageCode>>>")]
    pub also_in: Optional<Vec<Required<Word>>>,
    /// `metric` (when left out) or `imperial`.
    #[schemars(extend("enum" = words::UNITS))]
    pub units: Optional<Word>,
    /// Whose trade names come first.
    pub region: Optional<Word>,
    /// The profile of limits.
    #[schemars(extend("enum" = words::PROFILES))]
    pub limits: Optional<Id>,
    /// Limits of the shop that are stricter than the profile's.
    pub stricter: Optional<Vec<Required<Stricter>>>,
    /// The address at which the site is served.
    pub site: Optional<Line>,
    /// The theme: a built-in one, or a folder of the guidebook.
    pub theme: Optional<PathText>,
    /// The guidebook that this one is a house edition of.
    pub over: Optional<PathText>,
    /// Advice turned off everywhere.
    pub off: Optional<Vec<Required<Off>>>,
}

/// One limit of the shop.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(transform = rules::stricter)]
pub struct Stricter {
    /// `hold`, `room`, `time-out`, `receiving`, `tool-water` or `cleaning-interval`.
    #[schemars(extend("enum" = words::LIMIT))]
    pub limit: Required<Word>,
    /// The figure.
    pub at_most: Required<LimitText>,
    /// Who watches it.
    pub watch: Optional<Line>,
    /// How often.
    pub every: Optional<Line>,
    /// What is done when it is missed.
    pub if_missed: Optional<Line>,
}

/// One advice turned off.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Off {
    /// The id of the check.
    pub check: Required<Id>,
    /// Why.
    pub reason: Required<Line>,
}
