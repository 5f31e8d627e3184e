//! Records of bones, muscles, tissues and glands that steps name and that are no pieces.

use std::collections::{BTreeMap, BTreeSet};

use super::{UrlMaker, joined, readable, species_name, text, titled};
use crate::model::guidebook::AnatomyPart;
use crate::model::{Guidebook, Procedure, Step};
use crate::site::search::record::{Kind, OtherName, Record};
use crate::site::search::token::words;

/// The records of parts, by species and id; a part that bears the name of a piece among `pieces` is left out, because
/// the piece leads further.
pub(super) fn records(book: &Guidebook, pieces: &[Record], urls: &impl UrlMaker) -> Vec<Record> {
    let taken: BTreeSet<(&str, Vec<String>)> =
        pieces.iter().filter_map(|piece| Some((piece.species.as_deref()?, words(&piece.title)))).collect();
    let mut first: BTreeMap<(&str, &str), (&Procedure, usize, &Step)> = BTreeMap::new();
    for procedure in &book.procedures {
        let Some(species) = procedure.species.value() else { continue };
        for (number, step) in (1..).zip(&procedure.steps) {
            for part in named_in(step) {
                first.entry((species, part)).or_insert((procedure, number, step));
            }
        }
    }
    let mut records = Vec::new();
    for ((species, part), (procedure, number, step)) in first {
        let entry = part_of(book, species, part);
        let title = entry.and_then(|entry| entry.name.value().cloned()).unwrap_or_else(|| readable(part));
        if taken.contains(&(species, words(&title))) {
            continue;
        }
        let also = entry.into_iter().flat_map(|entry| entry.also.iter());
        records.push(Record {
            kind: Kind::Anatomy,
            species: Some(species.to_owned()),
            species_name: species_name(book, species),
            title,
            named: true,
            step: Some(number),
            context: titled(&procedure.title, &procedure.id),
            state: procedure.revision.state(),
            url: urls.step(&procedure.id, &step.id),
            names: also.map(|name| OtherName { name: name.clone(), region: None }).collect(),
            text: joined(entry.into_iter().flat_map(|entry| [text(&entry.lies), text(&entry.does)])),
            notes: String::new(),
        });
    }
    records
}

/// Parts that a step names, those inside its outputs among them.
pub(super) fn named_in(step: &Step) -> impl Iterator<Item = &str> {
    let holds = step.give.iter().flat_map(|output| output.holds.iter());
    step.anatomy.iter().chain(holds).map(|part| part.value.as_str())
}

/// All names of a part.
pub(super) fn names_of(book: &Guidebook, species: &str, part: &str) -> String {
    let entry = part_of(book, species, part);
    let name = entry.and_then(|entry| entry.name.value().cloned()).unwrap_or_else(|| readable(part));
    joined([name].into_iter().chain(entry.into_iter().flat_map(|entry| entry.also.iter().cloned())))
}

fn part_of<'a>(book: &'a Guidebook, species: &str, part: &str) -> Option<&'a AnatomyPart> {
    book.anatomy.get(species)?.get(part)
}
