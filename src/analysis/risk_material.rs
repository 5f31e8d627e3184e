//! Parts that must not become food: risk material of a profile at the animal's age, and glands; and where they end.
//!
//! An age that is not stated counts as unknown, and unknown counts as over everything.

use std::collections::BTreeSet;

use crate::model::age::Age;
use crate::model::builtin::limits::Limit;
use crate::model::words::{Stage, Use};
use crate::model::{Guidebook, Procedure};

use super::anatomy::{Anatomy, named_parts};
use super::cold_limits::profile_of;
use super::network::Network;
use super::procedure::ProcedureAnalysis;
use super::travel::{Trace, bare, follow};
use super::uses::FinalUse;

/// A part that a profile lists as risk material for a guide.
#[derive(Debug, Clone, Copy)]
pub struct Listed<'a> {
    /// The part, by its id.
    pub part: &'a str,
    /// The entry that lists it; one from memory never makes a fault.
    pub limit: &'a Limit,
}

/// The age that holds: the stated one, unknown when none is stated, `None` when it could not be read.
#[must_use]
pub fn age_of(procedure: &Procedure) -> Option<Age> {
    if procedure.age.is_broken() {
        return None;
    }
    Some(procedure.age.value().copied().unwrap_or(Age::Unknown))
}

/// The entries on risk material that the profile has for a species, whatever the age.
pub fn entries<'a>(book: &'a Guidebook, species: &'a str) -> impl Iterator<Item = &'a Limit> {
    let limits = profile_of(book).map_or(&[][..], |(_, profile)| &profile.limits);
    let of_stage = limits.iter().filter(|limit| limit.stage == Stage::RiskMaterial);
    of_stage.filter(move |limit| limit.species.is_empty() || limit.species.iter().any(|own| own == species))
}

/// All parts that are risk material in a guide, each once, those of entries that bind first.
#[must_use]
pub fn listed<'a>(book: &'a Guidebook, procedure: &'a Procedure) -> Vec<Listed<'a>> {
    let (Some(species), Some(age)) = (procedure.species.value(), age_of(procedure)) else { return Vec::new() };
    let mut limits: Vec<&Limit> = entries(book, species).filter(|limit| limit.counts_at(age)).collect();
    limits.sort_by_key(|limit| !limit.binds());
    let mut known = BTreeSet::new();
    let all = limits.iter().flat_map(|limit| limit.parts.iter().map(move |part| Listed { part, limit }));
    all.filter(|listed| known.insert(listed.part)).collect()
}

/// The parts of a list that a guide names at all: as anatomy of a step, in a piece, or as a piece.
#[must_use]
pub fn named<'a>(procedure: &Procedure, anatomy: &Anatomy<'a>) -> BTreeSet<&'a str> {
    let mut named = BTreeSet::new();
    for step in &procedure.steps {
        let pieces = step.give.iter().map(|output| bare(&output.piece.value, anatomy.species));
        let names = named_parts(step).map(|name| name.value.as_str()).chain(pieces);
        named.extend(names.filter_map(|name| anatomy.id_of(name)));
    }
    named
}

/// How a part ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ending {
    /// Where it must, or where it goes on to another guide.
    Sound,
    /// Not known: something about the use of the piece is told elsewhere.
    Unclear,
    /// Somewhere else; when only one piece can hold it, its position in `Network::pieces`.
    Wrong(Option<usize>),
}

/// How a followed part ends, when it must end in a piece of one of these uses.
#[must_use]
pub fn ending(trace: &Trace, uses: &[Option<FinalUse>], wanted: &[Use]) -> Ending {
    let ends = || trace.ends.iter().filter_map(|piece| uses.get(*piece).copied().flatten());
    if ends().filter_map(FinalUse::purpose).any(|purpose| wanted.contains(&purpose) || purpose == Use::ForCutting) {
        return Ending::Sound;
    }
    if ends().count() < trace.ends.len() || ends().any(|end| end.purpose().is_none()) {
        return Ending::Unclear;
    }
    let mut pieces = trace.ends.iter();
    Ending::Wrong(pieces.next().copied().filter(|_| trace.held && pieces.next().is_none()))
}

/// A part that ends in the wrong place.
#[derive(Debug, Clone)]
pub struct Misplaced<'a> {
    /// The part, by its id.
    pub part: &'a str,
    /// How it was followed.
    pub trace: Trace,
    /// The one piece that can hold it, as a position in `Network::pieces`.
    pub piece: Option<usize>,
}

/// The given parts that a guide names and that end in none of the wanted uses.
///
/// Parts that outputs hold come first. What a step merely names is left out where something else is misplaced for
/// certain, or where the larger part that it belongs to is held: that is the same mistake.
#[must_use]
pub fn misplaced<'a>(
    procedure: &Procedure,
    analysis: &ProcedureAnalysis,
    anatomy: &Anatomy<'a>,
    parts: &[&'a str],
    wanted: &[Use],
) -> Vec<Misplaced<'a>> {
    let named = named(procedure, anatomy);
    let followed: Vec<(&str, Vec<Trace>)> = parts
        .iter()
        .filter(|part| named.contains(*part))
        .map(|part| (*part, follow(procedure, &analysis.network, anatomy, part)))
        .collect();
    let is_held = |part: &str| followed.iter().any(|(other, traces)| *other == part && traces.iter().any(|trace| trace.held));
    // A guide that holds the backbone speaks of the neck bones as well, and the other way round.
    let whole_of = |part: &str| anatomy.find(part).and_then(|part| part.part_of);
    let whole_is_held =
        |part: &str| whole_of(part).is_some_and(is_held) || parts.iter().any(|other| whole_of(other) == Some(part) && is_held(other));
    let mut wrong = Vec::new();
    for (part, traces) in &followed {
        for trace in traces {
            if let Ending::Wrong(piece) = ending(trace, &analysis.uses, wanted)
                && (trace.held || !whole_is_held(part))
            {
                wrong.push(Misplaced { part, trace: trace.clone(), piece });
            }
        }
    }
    if wrong.iter().any(|misplaced| misplaced.trace.held) {
        wrong.retain(|misplaced| misplaced.trace.held);
    }
    wrong.sort_by_key(|misplaced| misplaced.trace.named.span.start);
    wrong
}

/// The outputs that give a piece, first the one that states its use.
#[must_use]
pub fn use_of<'a>(procedure: &'a Procedure, network: &Network, piece: usize) -> Option<&'a crate::model::Spanned<Use>> {
    let node = network.pieces.get(piece)?;
    node.given_by.iter().find_map(|giving| super::facts::output_at(procedure, *giving)?.purpose.given())
}
