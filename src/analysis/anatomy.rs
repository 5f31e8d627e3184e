//! The anatomy that holds for a species: the built-in parts of its group, and what the guidebook adds.
//!
//! Look-ups only. A part is found by its id or by the hyphenated form of another name. Where nobody knows whose
//! anatomy a species has, there is none, and whatever depends on it stays silent.

use std::collections::BTreeMap;

use crate::model::Guidebook;
use crate::model::builtin::anatomy::{BuiltinPart, GroupAnatomy};
use crate::model::guidebook::AnatomyPart;
use crate::model::names::hyphenated;
use crate::model::quantity::Range;
use crate::model::stated::Spanned;
use crate::model::words::{PartKind, Verified};
use crate::model::{Procedure, Step};

/// The anatomy of one species.
#[derive(Debug, Clone)]
pub struct Anatomy<'a> {
    /// The species.
    pub species: &'a str,
    /// The group whose parts it shares.
    pub group: &'a str,
    builtin: &'a GroupAnatomy,
    own: Option<&'a BTreeMap<String, AnatomyPart>>,
    own_names: BTreeMap<String, &'a str>,
}

/// A part of an animal, as it holds for one species.
#[derive(Debug, Clone)]
pub struct Part<'a> {
    /// Its id.
    pub id: &'a str,
    /// What it is; `None` when the guidebook says so in words that could not be read.
    pub kind: Option<PartKind>,
    /// The regions in which it lies; empty when that is not told.
    pub regions: Vec<&'a str>,
    /// How many the animal has, of a paired part on each side.
    pub count: Option<Range<u32>>,
    /// True when the animal has it on both sides.
    pub paired: bool,
    /// True when the count is the guidebook's own, or was verified otherwise than from memory.
    pub count_is_sure: bool,
    /// The larger part that it belongs to.
    pub part_of: Option<&'a str>,
}

/// What is told of a part in words.
#[derive(Debug, Clone)]
pub struct Told<'a> {
    /// What it is called.
    pub name: String,
    /// Other names.
    pub also: Vec<&'a str>,
    /// What it does; empty when that is not told.
    pub does: &'a str,
    /// Where it lies; empty when that is not told.
    pub lies: &'a str,
    /// Where the facts come from, those of the guidebook first.
    pub sources: Vec<&'a str>,
    /// How the built-in facts were verified; `None` for an entry of the guidebook alone.
    pub verified: Option<Verified>,
}

/// The group whose anatomy a species shares: built in, or by the guidebook's `like:`.
#[must_use]
pub fn group_of<'a>(book: &'a Guidebook, species: &str) -> Option<&'a str> {
    let builtin = book.builtin.species.get(species).map(|species| species.group.as_str());
    builtin.or_else(|| book.anatomy_like.get(species).map(|like| like.value.as_str()))
}

impl<'a> Anatomy<'a> {
    /// The anatomy of a species; `None` when no group is known for it, or its own file could not be read.
    #[must_use]
    pub fn of(book: &'a Guidebook, species: &'a str) -> Option<Self> {
        if book.broken_files.contains(&format!("anatomy/{species}.yaml")) {
            return None;
        }
        let group = group_of(book, species)?;
        let builtin = book.builtin.anatomy.get(group)?;
        let own = book.anatomy.get(species);
        let named = own.into_iter().flatten().flat_map(|(id, part)| {
            let names = part.name.value().into_iter().chain(&part.also);
            names.map(move |name| (hyphenated(name), id.as_str()))
        });
        Some(Self { species, group, builtin, own, own_names: named.collect() })
    }

    /// The anatomy of a procedure's species.
    #[must_use]
    pub fn of_procedure(book: &'a Guidebook, procedure: &'a Procedure) -> Option<Self> {
        Self::of(book, procedure.species.value()?)
    }

    /// The id of the part that is called so.
    #[must_use]
    pub fn id_of(&self, name: &str) -> Option<&'a str> {
        if let Some(own) = self.own {
            let id = self.own_names.get(name).copied().unwrap_or(name);
            if let Some((id, _)) = own.get_key_value(name).or_else(|| own.get_key_value(id)) {
                return Some(id);
            }
        }
        self.builtin.find(name).map(|(id, _)| id)
    }

    /// True when a part is called so and has this id.
    #[must_use]
    pub fn is(&self, name: &str, id: &str) -> bool {
        self.id_of(name) == Some(id)
    }

    /// The ids of all parts of a kind, sorted.
    pub fn of_kind(&self, kind: PartKind) -> impl Iterator<Item = &'a str> {
        let own = self.own;
        let says = move |id: &str| own.and_then(|own| own.get(id)).and_then(|part| part.kind.value()).copied();
        let builtin = self.builtin.parts.iter().filter(move |(id, part)| says(id).unwrap_or(part.kind) == kind).map(|(id, _)| id.as_str());
        let known = &self.builtin.parts;
        let added =
            own.into_iter().flatten().map(|(id, _)| id.as_str()).filter(move |id| !known.contains_key(*id) && says(id) == Some(kind));
        let mut all: Vec<&'a str> = builtin.chain(added).collect();
        all.sort_unstable();
        all.into_iter()
    }

    /// The part that is called so.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<Part<'a>> {
        let id = self.id_of(name)?;
        match self.own.and_then(|own| own.get(id)) {
            Some(part) => Some(self.own_part(id, part)),
            None => self.builtin.parts.get(id).map(|part| self.builtin_part(id, part)),
        }
    }

    /// What is told of the part with this id: by the guidebook where it says something, else as it is built in.
    #[must_use]
    pub fn told(&self, id: &str) -> Option<Told<'a>> {
        let own = self.own.and_then(|own| own.get(id));
        let builtin = self.builtin.parts.get(id);
        if own.is_none() && builtin.is_none() {
            return None;
        }
        let own_name = own.and_then(|own| own.name.value()).or(builtin.map(|part| &part.name));
        let also = own.into_iter().flat_map(|own| &own.also).chain(builtin.into_iter().flat_map(|part| &part.also));
        let own_text = |text: Option<&'a String>, other: Option<&'a String>| text.or(other).map_or("", |text| text.trim());
        let own_sources = own.into_iter().flat_map(|own| &own.sources).map(|source| source.value.as_str());
        Some(Told {
            name: own_name.map_or_else(|| id.replace('-', " "), Clone::clone),
            also: also.map(String::as_str).collect(),
            does: own_text(own.and_then(|own| own.does.value()), builtin.map(|part| &part.does)),
            lies: own_text(own.and_then(|own| own.lies.value()), builtin.map(|part| &part.lies)),
            sources: own_sources.chain(builtin.into_iter().flat_map(|part| &part.sources).map(String::as_str)).collect(),
            verified: builtin.map(|part| part.verified),
        })
    }

    /// All parts, those of the guidebook last.
    pub fn parts(&self) -> impl Iterator<Item = Part<'a>> {
        let own = self.own;
        let added = own.into_iter().flatten().map(|(id, part)| self.own_part(id, part));
        let builtin = self.builtin.parts.iter().filter(move |(id, _)| own.is_none_or(|own| !own.contains_key(*id)));
        builtin.map(|(id, part)| self.builtin_part(id, part)).chain(added)
    }

    /// True when some part lies in a region of this name.
    #[must_use]
    pub fn has_region(&self, region: &str) -> bool {
        let own = self.own.into_iter().flatten().flat_map(|(_, part)| &part.regions);
        self.builtin.has_region(region) || own.into_iter().any(|own| own.value == region)
    }

    fn builtin_part(&self, id: &'a str, part: &'a BuiltinPart) -> Part<'a> {
        Part {
            id,
            kind: Some(part.kind),
            regions: part.regions.iter().map(String::as_str).collect(),
            count: part.count.as_ref().and_then(|count| count.of(self.species)),
            paired: part.paired,
            count_is_sure: part.verified != Verified::Memory,
            part_of: part.part_of.as_deref(),
        }
    }

    /// A part of the guidebook; what it leaves out holds as it is built in.
    fn own_part(&self, id: &'a str, own: &'a AnatomyPart) -> Part<'a> {
        let mut part = self.builtin.parts.get(id).map_or_else(
            || Part { id, kind: None, regions: Vec::new(), count: None, paired: false, count_is_sure: true, part_of: None },
            |builtin| self.builtin_part(id, builtin),
        );
        part.kind = own.kind.value().copied().or(part.kind.filter(|_| own.kind.is_absent()));
        if let Some(count) = own.count.value() {
            part.count = Some(*count);
            part.count_is_sure = true;
        }
        if !own.regions.is_empty() {
            part.regions = own.regions.iter().map(|region| region.value.as_str()).collect();
        }
        part
    }
}

/// Every place at which a step names a part, in the order: `anatomy`, `cuts-through`, then `counts` and `holds`
/// of each output.
pub fn named_parts(step: &Step) -> impl Iterator<Item = &Spanned<String>> {
    let outputs = step.give.iter().flat_map(|output| output.counts.iter().map(|count| &count.part).chain(&output.holds));
    step.anatomy.iter().chain(&step.cuts_through).chain(outputs)
}
