//! Counted parts held against what the animal has: more ribs than the species grows.
//!
//! A piece is of one side of the animal or of both. It is of one where `side` or the cut list says so, and where a
//! mammal's guide says nothing, for the trade counts ribs a side. It can be of both where several pieces lie
//! together, where `side` says both, where the start is a whole animal, and for birds, fish and rabbits.

use crate::model::procedure::CountSpec;
use crate::model::quantity::Range;
use crate::model::words::Side;
use crate::model::{Guidebook, Output, Procedure, Step};

use super::anatomy::{Anatomy, Part};
use super::procedure::ProcedureAnalysis;

/// More of a part than the animal has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TooMany<'a> {
    /// The step.
    pub step: usize,
    /// The output that alone holds too many; `None` when the outputs hold too many together.
    pub output: Option<usize>,
    /// The part, by its id.
    pub part: &'a str,
    /// How many there are.
    pub found: Range<u32>,
    /// How many the animal has, of a paired part on each side.
    pub most: Range<u32>,
    /// True when that is the number of each side.
    pub paired: bool,
    /// False when the number was written from memory.
    pub sure: bool,
}

/// All counts of a procedure that are too high, each where it arises: what follows from it is left out.
#[must_use]
pub fn too_many<'a>(book: &Guidebook, procedure: &Procedure, analysis: &ProcedureAnalysis, anatomy: &Anatomy<'a>) -> Vec<TooMany<'a>> {
    let mut found = Vec::new();
    for (at, step) in procedure.steps.iter().enumerate() {
        let mut seen: Vec<&str> = Vec::new();
        for count in step.give.iter().flat_map(|output| &output.counts) {
            let Some(part) = anatomy.find(&count.part.value) else { continue };
            // What a step takes in known numbers is held against its outputs by the conservation of counts.
            if seen.contains(&part.id) || is_taken(analysis, at, &count.part.value) {
                continue;
            }
            seen.push(part.id);
            found.extend(in_step(book, procedure, anatomy, (at, step), &part));
        }
    }
    found
}

/// True when all that the step takes is known to hold so many of the part.
fn is_taken(analysis: &ProcedureAnalysis, step: usize, part: &str) -> bool {
    let takes = analysis.network.steps.get(step).map_or(&[][..], |ends| &ends.takes);
    let held = |piece: &Option<usize>| piece.and_then(|piece| analysis.counts.held.get(piece)).is_some_and(|held| held.contains_key(part));
    !takes.is_empty() && takes.iter().all(held)
}

/// The first output that alone holds too many of a part, or all of them together.
fn in_step<'a>(
    book: &Guidebook,
    procedure: &Procedure,
    anatomy: &Anatomy<'a>,
    (at, step): (usize, &Step),
    part: &Part<'a>,
) -> Option<TooMany<'a>> {
    let most = part.count?;
    let too_many = |output, found| TooMany { step: at, output, part: part.id, found, most, paired: part.paired, sure: part.count_is_sure };
    let is_part = |name: &str| anatomy.is(name, part.id);
    let (mut sum, mut sides) = (0_u32, 1_u32);
    for (position, output) in step.give.iter().enumerate() {
        let Some(count) = output.counts.iter().find(|count| is_part(&count.part.value)) else { continue };
        let Some(CountSpec::Between(range)) = count.number.value() else { continue };
        let own = sides_of(book, procedure, anatomy, step, output);
        sides = sides.max(own);
        if range.high > most.high.saturating_mul(own) {
            return Some(too_many(Some(position), *range));
        }
        sum = sum.saturating_add(range.low);
    }
    let sawn = step.cuts_through.iter().any(|cut| is_part(&cut.value));
    (!sawn && sum > most.high.saturating_mul(sides)).then(|| too_many(None, Range::single(sum)))
}

/// How many sides of the animal an output can be of.
fn sides_of(book: &Guidebook, procedure: &Procedure, anatomy: &Anatomy<'_>, step: &Step, output: &Output) -> u32 {
    let per_animal = |piece: &str| book.cuts.get(piece).and_then(|cut| cut.per_animal.value()).copied();
    let stated = [&output.side, &step.side, &procedure.start.side].into_iter().find_map(|side| side.value());
    let start = procedure.start.piece.value().map_or("", String::as_str);
    let together = output.pieces.value().copied().unwrap_or(1) > 1 || per_animal(&output.piece.value) == Some(1);
    let is_whole = start.split('-').any(|word| matches!(word, "whole" | "carcass" | "carcase" | "saddle"));
    let cut_whole = matches!(anatomy.group, "bird" | "rabbit" | "round-fish" | "flat-fish");
    match (stated, per_animal(start)) {
        (Some(Side::Left | Side::Right), _) => 1,
        (Some(Side::Both), _) => 2,
        (None, Some(1)) => 2,
        (None, Some(_)) => 1 + u32::from(together),
        (None, None) => 1 + u32::from(together || is_whole || cut_whole),
    }
}
