//! What ships inside the program: species, tools, protection, cautions, limit profiles and anatomy.
//!
//! Read once from `src/reference/*.yaml`, which are embedded; a test holds that each entry can be read.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use super::words::{Clock, Harm, PartKind, Product, Signal, Verified};

pub mod anatomy;
pub mod demands;
pub mod limits;

use anatomy::GroupAnatomy;
use demands::{Condition, ToolDemands, WearDemand};
use limits::Limit;

/// All built-in entries by id.
#[derive(Debug, Clone, Default)]
pub struct Builtin {
    /// Species.
    pub species: BTreeMap<String, BuiltinSpecies>,
    /// Tools.
    pub tools: BTreeMap<String, BuiltinTool>,
    /// Protection.
    pub wear: BTreeMap<String, BuiltinWear>,
    /// Cautions.
    pub cautions: BTreeMap<String, BuiltinCaution>,
    /// Limit profiles.
    pub profiles: BTreeMap<String, BuiltinProfile>,
    /// Anatomy by group of species: `pig`, `bird`, `round-fish`.
    pub anatomy: BTreeMap<String, GroupAnatomy>,
}

impl Builtin {
    /// The entries that ship inside the program.
    #[must_use]
    pub fn get() -> &'static Self {
        static BUILTIN: LazyLock<Builtin> = LazyLock::new(|| super::lower::builtin().0);
        &BUILTIN
    }

    /// The groups, other than `group`, in which a part is called so, sorted.
    pub fn groups_with<'a>(&'a self, part: &'a str, group: &'a str) -> impl Iterator<Item = (&'a str, PartKind)> {
        let others = self.anatomy.iter().filter(move |(name, _)| name.as_str() != group);
        others.filter_map(|(name, anatomy)| Some((name.as_str(), anatomy.find(part)?.1.kind)))
    }
}

/// A species.
#[derive(Debug, Clone)]
pub struct BuiltinSpecies {
    /// What it is called.
    pub name: String,
    /// What it comes from: `cattle`, `sheep under a year`.
    pub animal: String,
    /// The class of product of its meat.
    pub product: Product,
    /// The group whose anatomy it shares: `pig`, `bird`, `round-fish`.
    pub group: String,
    /// The allergen that a label declares.
    pub allergen: Option<String>,
    /// True when fish of its family forms histamine as it warms.
    pub histamine: bool,
}

/// A tool.
#[derive(Debug, Clone)]
pub struct BuiltinTool {
    /// What it is called.
    pub name: String,
    /// What sort of tool it is: `knife`, `hand-saw`, `powered-saw`, `powered-machine`, ….
    pub kind: String,
    /// What it is for.
    pub does: String,
    /// What a step with it owes.
    pub demands: ToolDemands,
    /// Where the demands come from, one text a source.
    pub sources: Vec<String>,
    /// How that was verified.
    pub verified: Verified,
}

impl BuiltinTool {
    /// True when it makes saw dust.
    #[must_use]
    pub fn saws(&self) -> bool {
        self.kind == "hand-saw" || self.kind == "powered-saw"
    }
}

/// Protection that is worn.
#[derive(Debug, Clone)]
pub struct BuiltinWear {
    /// What it is called.
    pub name: String,
    /// What it protects from.
    pub about: String,
    /// True for every kind of glove.
    pub glove: bool,
    /// `cut`, `mesh`, `hygiene`, `body`, `eyes` or `feet`.
    pub kind: String,
    /// Where the facts come from, one text a source.
    pub sources: Vec<String>,
    /// How they were verified.
    pub verified: Verified,
}

/// A caution in its four parts.
#[derive(Debug, Clone)]
pub struct BuiltinCaution {
    /// A short name.
    pub name: String,
    /// The signal word.
    pub signal: Signal,
    /// What can hurt.
    pub hazard: String,
    /// What it does.
    pub consequence: String,
    /// What to do.
    pub avoid: String,
    /// What the hazard can do.
    pub harm: Harm,
    /// The ISO 7010 code and what the sign means, when there is one.
    pub sign: Option<(String, String)>,
    /// Conditions beyond the tools of a step; any of them demands it.
    pub demanded_when: Vec<Condition>,
    /// Protection that is then demanded too.
    pub wear: Vec<WearDemand>,
    /// Protection that is then advised.
    pub advised_wear: Vec<WearDemand>,
    /// Where it comes from, one text a source.
    pub sources: Vec<String>,
    /// How the first source was verified.
    pub verified: Verified,
}

/// A profile of limits.
#[derive(Debug, Clone)]
pub struct BuiltinProfile {
    /// What it is called.
    pub name: String,
    /// Where it holds.
    pub jurisdiction: String,
    /// What it covers and what not.
    pub about: String,
    /// The text from which the figures were taken.
    pub edition: String,
    /// How time out of the cold counts; `None` where the rules set no time.
    pub clock: Option<Clock>,
    /// Its limits, in the order of the file.
    pub limits: Vec<Limit>,
}
