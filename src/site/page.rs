//! Which pages a site has, and where each lies.

use std::collections::{BTreeMap, BTreeSet};

use crate::analysis::Analysis;
use crate::model::Guidebook;

use super::engine::Engine;
use super::paths;

/// What stands at a path. Procedures and chains are named by their position in the guidebook or the analysis.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Page {
    /// The home page.
    Home,
    /// A species.
    Species(String),
    /// The guide of a procedure.
    Guide(usize),
    /// All tables.
    Tables,
    /// The yields of a procedure.
    GuideTable(usize),
    /// The yields of all procedures of a species.
    SpeciesTable(String),
    /// What house cuts make of a starting piece.
    ChainTable(usize),
    /// The drawing of where the weight of a procedure goes.
    FlowDrawing(usize),
    /// A picture of the guidebook, by its path there.
    Picture(String),
    /// A script or the icon of the theme, by its name there.
    Asset(String),
}

/// All pages by path.
pub(super) fn all(book: &Guidebook, analysis: &Analysis, engine: &Engine) -> BTreeMap<String, Page> {
    let mut pages = BTreeMap::from([(paths::HOME.to_owned(), Page::Home), (paths::TABLES.to_owned(), Page::Tables)]);
    for species in species_of(book) {
        pages.insert(paths::species(species), Page::Species(species.to_owned()));
        pages.insert(paths::species_table(species), Page::SpeciesTable(species.to_owned()));
    }
    for (at, procedure) in book.procedures.iter().enumerate() {
        pages.insert(paths::guide(&procedure.id), Page::Guide(at));
        if analysis.procedures.get(at).is_some_and(|procedure| procedure.shares.is_some()) {
            pages.insert(paths::guide_table(&procedure.id), Page::GuideTable(at));
            pages.insert(paths::flow_drawing(&procedure.id), Page::FlowDrawing(at));
        }
    }
    for (at, chain) in analysis.chains.iter().enumerate() {
        if chain.shares.is_some() {
            pages.insert(paths::chain_table(&chain.start), Page::ChainTable(at));
        }
    }
    for path in book.pictures.keys() {
        pages.insert(path.clone(), Page::Picture(path.clone()));
    }
    for (name, (path, _)) in &engine.assets {
        pages.insert(path.clone(), Page::Asset(name.clone()));
    }
    pages
}

/// The species that have a procedure, sorted.
pub(super) fn species_of(book: &Guidebook) -> BTreeSet<&str> {
    book.procedures.iter().map(|procedure| folder_of(&procedure.id)).collect()
}

/// The folder of a procedure, which is its species.
pub(super) fn folder_of(procedure: &str) -> &str {
    procedure.split_once('/').map_or(procedure, |(folder, _)| folder)
}
