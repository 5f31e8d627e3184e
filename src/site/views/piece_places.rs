//! Where each piece stands in the guides: the steps that give it and take it, and what becomes of it there.

use std::collections::{BTreeMap, BTreeSet};

use crate::analysis::Analysis;
use crate::figures::Kind;
use crate::figures::outputs::kind_of;
use crate::model::Guidebook;
use crate::site::page::folder_of;

/// Where one piece stands. Guides are positions in the guidebook, steps count from 0.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Places {
    /// The species of the first guide that names it.
    pub(super) species: String,
    /// Guides with the steps that give it.
    pub(super) given: Vec<(usize, Vec<usize>)>,
    /// Guides with the step that takes it; the start of a guide is not among them.
    pub(super) taken: Vec<(usize, Vec<usize>)>,
    /// What becomes of it, in the order of tables.
    pub(super) uses: Vec<&'static str>,
}

/// The species of each piece: that of its cut list, else that of the first guide that names it.
pub(super) fn species_of_pieces(book: &Guidebook, places: &BTreeMap<String, Places>) -> BTreeMap<String, String> {
    let mut species: BTreeMap<String, String> = places.iter().map(|(piece, places)| (piece.clone(), places.species.clone())).collect();
    species.extend(book.cuts.iter().map(|(piece, cut)| (piece.clone(), cut.species.clone())));
    species
}

/// The species that have a piece.
pub(in crate::site) fn species_with_pieces(book: &Guidebook, analysis: &Analysis) -> BTreeSet<String> {
    species_of_pieces(book, &all(book, analysis)).into_values().collect()
}

/// All pieces that a guide gives or starts from.
pub(super) fn all(book: &Guidebook, analysis: &Analysis) -> BTreeMap<String, Places> {
    let mut all: BTreeMap<String, Places> = BTreeMap::new();
    let mut kinds: BTreeMap<String, Vec<Kind>> = BTreeMap::new();
    for (at, (procedure, analysis)) in book.procedures.iter().zip(&analysis.procedures).enumerate() {
        for (position, piece) in analysis.network.pieces.iter().enumerate() {
            let places = all.entry(piece.id.clone()).or_default();
            if places.species.is_empty() {
                folder_of(&procedure.id).clone_into(&mut places.species);
            }
            if piece.is_start {
                continue;
            }
            let mut steps: Vec<usize> = piece.given_by.iter().map(|giving| giving.step).collect();
            steps.dedup();
            places.given.push((at, steps));
            if let Some(taking) = piece.taken_by {
                places.taken.push((at, vec![taking.step]));
            } else {
                kinds.entry(piece.id.clone()).or_default().push(kind_of(analysis, position));
            }
        }
    }
    for (piece, mut kinds) in kinds {
        kinds.sort_unstable();
        kinds.dedup();
        if let Some(places) = all.get_mut(&piece) {
            places.uses = kinds.into_iter().map(Kind::id).collect();
        }
    }
    all
}
