//! Where an anatomical part ends: in which final piece, followed from the step that names it.
//!
//! `holds` (or a count, or a piece that is called like the part) says in which output a part lies. From there it
//! travels with the piece, and where a later step cuts the piece and no output names the part, it lies somewhere
//! in what comes of it. A part that is only named by a step, and held by no output of the whole procedure, lies
//! somewhere in the outputs of that step.

use std::collections::BTreeSet;

use crate::finding::Place;
use crate::model::procedure::CountSpec;
use crate::model::{Output, Procedure, Step};

use super::anatomy::Anatomy;
use super::network::Network;

/// One part, followed to its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trace {
    /// Where it was named.
    pub named: Place,
    /// The step that names it.
    pub step: usize,
    /// True when an output holds it, false when a step only names it.
    pub held: bool,
    /// The final pieces in one of which it ends, as positions in `Network::pieces`.
    pub ends: BTreeSet<usize>,
}

/// The part of this id, followed through a procedure; empty when nothing names it, or the order is not sound.
#[must_use]
pub fn follow(procedure: &Procedure, network: &Network, anatomy: &Anatomy<'_>, part: &str) -> Vec<Trace> {
    if !network.is_sound() {
        return Vec::new();
    }
    let is_part = |name: &str| anatomy.is(name, part);
    let mut traces: Vec<Trace> = Vec::new();
    for (at, (step, ends)) in procedure.steps.iter().zip(&network.steps).enumerate() {
        let taken: BTreeSet<usize> = ends.takes.iter().flatten().copied().collect();
        let holders: Vec<(usize, Place)> = step
            .give
            .iter()
            .zip(&ends.gives)
            .filter_map(|(output, piece)| Some((*piece, held_in(output, anatomy.species, &is_part)?)))
            .collect();
        if holders.is_empty() {
            for trace in traces.iter_mut().filter(|trace| !trace.ends.is_disjoint(&taken)) {
                trace.ends.retain(|piece| !taken.contains(piece));
                trace.ends.extend(&ends.gives);
            }
        } else {
            // It turns out here where it lay.
            traces.retain(|trace| trace.ends.is_disjoint(&taken));
        }
        let held = holders.iter().map(|(piece, named)| Trace { named: *named, step: at, held: true, ends: BTreeSet::from([*piece]) });
        traces.extend(held);
        if holders.is_empty()
            && let Some(named) = named_by(step, &is_part)
        {
            traces.push(Trace { named, step: at, held: false, ends: ends.gives.iter().copied().collect() });
        }
    }
    // Where some output holds the part, the steps that only name it speak of that.
    if traces.iter().any(|trace| trace.held) || held_somewhere(procedure, anatomy, &is_part) {
        traces.retain(|trace| trace.held);
    }
    traces
}

/// True when some output of the procedure holds the part, whatever becomes of it.
fn held_somewhere(procedure: &Procedure, anatomy: &Anatomy<'_>, is_part: &impl Fn(&str) -> bool) -> bool {
    procedure.steps.iter().flat_map(|step| &step.give).any(|output| held_in(output, anatomy.species, is_part).is_some())
}

/// The place that says that an output holds the part.
fn held_in(output: &Output, species: &str, is_part: &impl Fn(&str) -> bool) -> Option<Place> {
    let held = output.holds.iter().find(|name| is_part(&name.value));
    let some = |number: &CountSpec| !matches!(number, CountSpec::Between(range) if range.high == 0);
    let counted = output.counts.iter().find(|count| is_part(&count.part.value) && count.number.value().is_some_and(some));
    let called = Some(&output.piece).filter(|piece| is_part(bare(&piece.value, species)));
    held.or(counted.map(|count| &count.part)).or(called).map(|name| name.place)
}

/// A piece without the species before its name: `spine` of `beef-spine`. A piece so called is that part itself.
pub(super) fn bare<'p>(piece: &'p str, species: &str) -> &'p str {
    piece.strip_prefix(species).and_then(|rest| rest.strip_prefix('-')).unwrap_or(piece)
}

/// The place at which a step names the part as its own anatomy.
fn named_by(step: &Step, is_part: &impl Fn(&str) -> bool) -> Option<Place> {
    step.anatomy.iter().chain(&step.cuts_through).find(|name| is_part(&name.value)).map(|name| name.place)
}
