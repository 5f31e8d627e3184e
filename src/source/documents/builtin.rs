//! The shapes of the reference data that ships inside the program, `src/reference/*.yaml`.

pub mod anatomy;
pub mod limits;

use serde::Deserialize;

use super::texts::{Id, Line, Word};
use crate::source::field::{Entries, Optional, Required};

/// One species.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Species {
    /// What its meat is called.
    pub name: Required<Line>,
    /// What it comes from.
    pub animal: Optional<Line>,
    /// The biological family.
    pub family: Optional<Line>,
    /// The class of product.
    pub product: Required<Word>,
    /// The group whose anatomy it shares.
    pub group: Required<Id>,
    /// The allergen that a label declares.
    pub allergen: Optional<Line>,
    /// True where warm fish of the species forms histamine.
    pub histamine: Optional<bool>,
}

/// One tool.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Tool {
    /// What it is called.
    pub name: Required<Line>,
    /// What sort of tool it is.
    pub kind: Required<Word>,
    /// What it is for.
    pub does: Required<Line>,
    /// Cautions demanded of a step with it.
    pub cautions: Optional<Vec<Required<Id>>>,
    /// Cautions demanded under some profiles only.
    pub cautions_in: Optional<Entries<Vec<Required<Id>>>>,
    /// Cautions that are advised.
    pub advise_cautions: Optional<Vec<Required<Id>>>,
    /// Protection demanded.
    pub wear: Optional<Vec<Required<AnySet>>>,
    /// Protection advised.
    pub advise_wear: Optional<Vec<Required<AnySet>>>,
    /// Protection forbidden.
    pub never: Optional<Vec<Required<Id>>>,
    /// Where the demand comes from.
    pub sources: Optional<Vec<Required<Source>>>,
    /// How that was checked.
    pub verified: Optional<Word>,
}

/// A demand that any of several sets of protection meets.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct AnySet {
    /// The sets.
    pub any_of: Required<Vec<Required<Vec<Required<Id>>>>>,
}

/// Protection that is worn.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Wear {
    /// What it is called.
    pub name: Required<Line>,
    /// True for what covers the fingers.
    pub glove: Required<bool>,
    /// What sort of protection it is.
    pub kind: Required<Word>,
    /// What it guards and what not.
    pub about: Required<Line>,
    /// Cautions that belong to it where it meets food.
    pub advised_cautions: Optional<Vec<Required<Id>>>,
    /// Where the facts come from.
    pub sources: Optional<Vec<Required<Source>>>,
    /// How that was checked.
    pub verified: Required<Word>,
}

/// One caution.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Caution {
    /// A short name.
    pub name: Required<Line>,
    /// The signal word.
    pub signal: Required<Word>,
    /// What can hurt.
    pub hazard: Required<Line>,
    /// What it does.
    pub consequence: Required<Line>,
    /// What to do.
    pub avoid: Required<Line>,
    /// What the hazard can do.
    pub harm: Required<Word>,
    /// The safety sign.
    pub sign: Optional<Sign>,
    /// Conditions beyond the tools under which it is demanded.
    pub demanded_when: Optional<Vec<Required<Condition>>>,
    /// Protection that is then demanded too.
    pub wear: Optional<Vec<Required<AnySet>>>,
    /// Protection that is then advised.
    pub advise_wear: Optional<Vec<Required<AnySet>>>,
    /// Where it comes from.
    pub sources: Optional<Vec<Required<Source>>>,
    /// How that was checked.
    pub verified: Required<Word>,
}

/// A condition on a step; all keys that stand there must hold.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Condition {
    /// The group of the species.
    pub group: Optional<Id>,
    /// Parts of which the step names, frees or cuts one.
    pub anatomy: Optional<Vec<Required<Id>>>,
    /// The class of product.
    pub product: Optional<Word>,
    /// Served raw.
    pub served_raw: Optional<bool>,
    /// The species forms histamine.
    pub histamine: Optional<bool>,
    /// How the blade is drawn.
    pub draws: Optional<Word>,
    /// Protection that the step wears.
    pub wear: Optional<Vec<Required<Id>>>,
}

/// A safety sign registered in ISO 7010.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Sign {
    /// Its code.
    pub code: Required<Line>,
    /// Its registered name.
    pub name: Required<Line>,
    /// How that was checked.
    pub verified: Required<Word>,
}

/// Where a fact comes from.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Source {
    /// The title.
    pub title: Required<Line>,
    /// The section.
    pub section: Optional<Line>,
    /// Who publishes it.
    pub publisher: Optional<Line>,
    /// The year.
    pub year: Optional<Line>,
    /// The edition.
    pub edition: Optional<Line>,
    /// `law`, `guidance`, `standard`, `repealed`.
    pub force: Optional<Word>,
    /// How it was checked.
    pub verified: Optional<Word>,
    /// The text that was read, where that is not the source itself.
    pub read_in: Optional<Line>,
}

/// A profile of limits.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Profile {
    /// What it is called.
    pub name: Required<Line>,
    /// Where it holds.
    pub jurisdiction: Required<Line>,
    /// What it covers and what not.
    pub about: Required<Line>,
    /// The text from which the figures were taken.
    pub edition: Required<Line>,
    /// How time out of the cold counts.
    pub clock: Optional<Word>,
}
