//! Bones, muscles, tissues and glands that ship inside the program, by group of species.
//!
//! Data and look-ups only: what a guide names wrongly is found in `analysis::anatomy`.

use std::collections::BTreeMap;

use crate::model::names::hyphenated;
use crate::model::quantity::Range;
use crate::model::words::{PartKind, Verified};

/// The anatomy of one group: `pig`, `bird`, `round-fish`.
#[derive(Debug, Clone, Default)]
pub struct GroupAnatomy {
    /// Parts by id.
    pub parts: BTreeMap<String, BuiltinPart>,
    /// Ids by the hyphenated form of another name: `shoulder-node` leads to `prescapular-node`.
    pub aliases: BTreeMap<String, String>,
}

impl GroupAnatomy {
    /// The anatomy of these parts.
    #[must_use]
    pub fn new(parts: BTreeMap<String, BuiltinPart>) -> Self {
        let names = |part: &BuiltinPart| std::iter::once(&part.name).chain(&part.also).map(|name| hyphenated(name)).collect::<Vec<_>>();
        let named = parts.iter().flat_map(|(id, part)| names(part).into_iter().map(move |name| (name, id.clone())));
        let aliases = named.filter(|(alias, _)| !parts.contains_key(alias)).collect();
        Self { parts, aliases }
    }

    /// The part that is called so, by its id or the hyphenated form of another name, with its id.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<(&str, &BuiltinPart)> {
        let id = self.aliases.get(name).map_or(name, String::as_str);
        self.parts.get_key_value(id).map(|(id, part)| (id.as_str(), part))
    }

    /// True when some part lies in a region of this name.
    #[must_use]
    pub fn has_region(&self, region: &str) -> bool {
        self.parts.values().any(|part| part.regions.iter().any(|own| own == region))
    }
}

/// A bone (joints and fins with them), muscle, tissue or gland.
#[derive(Debug, Clone)]
pub struct BuiltinPart {
    /// What it is called.
    pub name: String,
    /// Other names, anatomical ones included.
    pub also: Vec<String>,
    /// What it is.
    pub kind: PartKind,
    /// How many there are, of a paired part on each side; `None` when that is not told.
    pub count: Option<PartCount>,
    /// True when the animal has it on both sides.
    pub paired: bool,
    /// The larger part that it belongs to.
    pub part_of: Option<String>,
    /// The regions in which it lies.
    pub regions: Vec<String>,
    /// What it does.
    pub does: String,
    /// Where it lies.
    pub lies: String,
    /// Where the facts come from, one text a source.
    pub sources: Vec<String>,
    /// How they were verified.
    pub verified: Verified,
}

/// How many of a part there are.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PartCount {
    /// The same in every species of the group.
    Every(Range<u32>),
    /// By species; others are not known.
    Each(BTreeMap<String, Range<u32>>),
}

impl PartCount {
    /// How many a species has.
    #[must_use]
    pub fn of(&self, species: &str) -> Option<Range<u32>> {
        match self {
            Self::Every(range) => Some(*range),
            Self::Each(by_species) => by_species.get(species).copied(),
        }
    }
}
