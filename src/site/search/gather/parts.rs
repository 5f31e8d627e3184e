//! Records of bones, muscles, tissues and glands that steps name and that are no pieces.

use std::collections::{BTreeMap, BTreeSet};

use super::{UrlMaker, joined, readable, species_name, titled};
use crate::analysis::anatomy::Anatomy;
use crate::model::words::PartKind;
use crate::model::{Guidebook, Procedure, Step};
use crate::site::search::plain::plain;
use crate::site::search::record::{Kind, OtherName, Record};
use crate::site::search::token::words;

/// The parts of all species that have a procedure, those that ship inside among them.
pub(super) struct Parts<'a> {
    book: &'a Guidebook,
    by_species: BTreeMap<&'a str, Option<Anatomy<'a>>>,
}

/// What is searched of a part.
struct Told<'a> {
    /// Its id, whatever a step calls it.
    id: &'a str,
    /// What it is called.
    name: String,
    /// What it is called among all that is found.
    title: String,
    /// Other names, its id among them.
    also: Vec<String>,
    /// Where it lies and what it does.
    text: String,
}

impl<'a> Parts<'a> {
    /// Of a guidebook.
    pub(super) fn of(book: &'a Guidebook) -> Self {
        let species = book.procedures.iter().filter_map(|procedure| procedure.species.value());
        Self { book, by_species: species.map(|species| (species.as_str(), Anatomy::of(book, species))).collect() }
    }

    /// The part that a step calls so; where nobody knows it, its name alone.
    fn told(&self, species: &str, part: &'a str) -> Told<'a> {
        let anatomy = self.by_species.get(species).and_then(Option::as_ref);
        let found = anatomy.and_then(|anatomy| {
            let id = anatomy.id_of(part)?;
            let told = anatomy.told(id)?;
            let own = self.book.anatomy.get(species).and_then(|parts| parts.get(id)).is_some_and(|part| part.name.value().is_some());
            let is_muscle = anatomy.find(id).is_some_and(|part| part.kind == Some(PartKind::Muscle));
            // A muscle that bears the name of a cut of the trade must not stand before the cut.
            let title = if is_muscle && !own && !told.name.contains(' ') { format!("{} muscle", told.name) } else { told.name.clone() };
            let also = told.also.into_iter().map(str::to_owned).chain([readable(id)]);
            let known = words(&told.name);
            let also: Vec<String> = also.filter(|name| words(name) != known && words(name) != words(&title)).collect();
            Some(Told { id, name: told.name, title, also: once_each(also), text: joined([plain(told.lies), plain(told.does)]) })
        });
        found.unwrap_or_else(|| Told { id: part, name: readable(part), title: readable(part), also: Vec::new(), text: String::new() })
    }

    /// All names of a part.
    pub(super) fn names_of(&self, species: &str, part: &'a str) -> String {
        let told = self.told(species, part);
        joined([told.name].into_iter().chain(told.also))
    }
}

/// The records of parts, by species and id; a part that bears the name of a piece among `pieces` is left out, because
/// the piece leads further.
pub(super) fn records(book: &Guidebook, parts: &Parts<'_>, pieces: &[Record], urls: &impl UrlMaker) -> Vec<Record> {
    let taken: BTreeSet<(&str, Vec<String>)> =
        pieces.iter().filter_map(|piece| Some((piece.species.as_deref()?, words(&piece.title)))).collect();
    let mut first: BTreeMap<(&str, &str), (Told<'_>, &Procedure, usize, &Step)> = BTreeMap::new();
    // A step that works at a part comes before one whose piece only carries it.
    for named in [worked_at, carried] {
        for procedure in &book.procedures {
            let Some(species) = procedure.species.value() else { continue };
            for (number, step) in (1..).zip(&procedure.steps) {
                for part in named(step) {
                    let told = parts.told(species, part);
                    first.entry((species, told.id)).or_insert((told, procedure, number, step));
                }
            }
        }
    }
    let mut records = Vec::new();
    for ((species, _), (told, procedure, number, step)) in first {
        if taken.contains(&(species, words(&told.name))) {
            continue;
        }
        records.push(Record {
            kind: Kind::Anatomy,
            species: Some(species.to_owned()),
            species_name: species_name(book, species),
            title: told.title,
            named: true,
            step: Some(number),
            context: titled(&procedure.title, &procedure.id),
            state: procedure.revision.state(),
            url: urls.step(&procedure.id, &step.id),
            names: told.also.into_iter().map(|name| OtherName { name, region: None }).collect(),
            text: told.text,
            notes: String::new(),
        });
    }
    records
}

/// Parts at which a step works.
pub(super) fn worked_at(step: &Step) -> Vec<&str> {
    step.anatomy.iter().map(|part| part.value.as_str()).collect()
}

/// Parts that the pieces of a step carry with them.
pub(super) fn carried(step: &Step) -> Vec<&str> {
    step.give.iter().flat_map(|output| &output.holds).map(|part| part.value.as_str()).collect()
}

/// Names without those that say the same in the same words.
fn once_each(names: Vec<String>) -> Vec<String> {
    let mut seen = BTreeSet::new();
    names.into_iter().filter(|name| seen.insert(words(name))).collect()
}
