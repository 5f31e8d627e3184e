//! Records of pieces: those of the cut lists and those that only procedures name.

use std::collections::{BTreeMap, BTreeSet};

use super::leads::Leads;
use super::{UrlMaker, joined, readable, species_name, text, titled};
use crate::model::Guidebook;
use crate::model::guidebook::Cut;
use crate::model::words::State;
use crate::site::search::record::{Kind, OtherName, Record};
use crate::site::search::token::words;

/// The records of pieces, by species and id.
pub(super) fn records(book: &Guidebook, leads: &Leads<'_>, urls: &impl UrlMaker) -> Vec<Record> {
    let listed = book.cuts.values().map(|cut| (cut.species.as_str(), cut.piece.value.as_str()));
    let all: BTreeSet<(&str, &str)> = leads.pieces().chain(listed).collect();
    let regional = regional_names(book);
    all.into_iter().filter_map(|(species, piece)| record(book, leads, &regional, urls, species, piece)).collect()
}

fn record(
    book: &Guidebook,
    leads: &Leads<'_>,
    regional: &BTreeMap<Vec<String>, BTreeSet<&str>>,
    urls: &impl UrlMaker,
    species: &str,
    piece: &str,
) -> Option<Record> {
    let cut = book.cuts.get(piece).filter(|cut| cut.species == species);
    let lead = leads.get(species, piece);
    let url = match lead {
        Some(lead) => match lead.step {
            Some((_, step)) => urls.step(&lead.procedure.id, &step.id),
            None => urls.guide(&lead.procedure.id),
        },
        None => urls.piece(species, piece)?,
    };
    let title = cut.map_or_else(|| readable(piece), |_| book.piece_name(piece));
    let mut names = Vec::new();
    // Where this very name means another piece elsewhere, it is shown whose name it is here.
    let elsewhere = regional.get(&words(&title)).is_some_and(|pieces| pieces.iter().any(|other| *other != piece));
    if let Some(region) = book.region.value().filter(|_| elsewhere) {
        names.push(OtherName { name: title.clone(), region: Some(region.clone()) });
    }
    names.extend(cut.into_iter().flat_map(other_names));
    let text = joined(cut.into_iter().flat_map(|cut| [text(&cut.lies), text(&cut.region)]));
    let earlier = cut.into_iter().flat_map(|cut| cut.was.iter().map(|was| readable(&was.value)));
    let notes = joined(earlier);
    Some(Record {
        kind: Kind::Piece,
        species: Some(species.to_owned()),
        species_name: species_name(book, species),
        title,
        named: cut.is_some() || lead.is_none_or(|lead| !lead.passes_on),
        step: lead.and_then(|lead| lead.step).map(|(number, _)| number),
        context: lead.map_or_else(String::new, |lead| titled(&lead.procedure.title, &lead.procedure.id)),
        state: lead.map_or(State::InForce, |lead| lead.procedure.revision.state()),
        url,
        names,
        text,
        notes,
    })
}

/// Names with their regions, then codes with the name of their system before them.
fn other_names(cut: &Cut) -> impl Iterator<Item = OtherName> {
    let also = cut.also.iter().map(|also| OtherName { name: also.name.value.clone(), region: also.region.clone() });
    let codes = cut.codes.iter().map(|(system, code)| OtherName { name: format!("{} {code}", system.to_uppercase()), region: None });
    also.chain(codes)
}

/// Which pieces each regional name means, by the words of the name.
fn regional_names(book: &Guidebook) -> BTreeMap<Vec<String>, BTreeSet<&str>> {
    let mut names: BTreeMap<Vec<String>, BTreeSet<&str>> = BTreeMap::new();
    for cut in book.cuts.values() {
        for also in cut.also.iter().filter(|also| also.region.is_some()) {
            names.entry(words(&also.name.value)).or_default().insert(cut.piece.value.as_str());
        }
    }
    names
}
