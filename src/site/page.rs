//! Which pages a site has, and where each lies.

use std::collections::{BTreeMap, BTreeSet};

use crate::analysis::Analysis;
use crate::analysis::anatomy::Anatomy;
use crate::analysis::clock::ColdClock;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::figures::cut_map;
use crate::model::{Guidebook, Procedure};

use super::engine::Engine;
use super::offline::{Part, all_parts};
use super::paths;
use super::views::{SearchFiles, address_of, species_with_pieces};

/// What stands at a path. Procedures and chains are named by their position in the guidebook or the analysis.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Page {
    /// The home page.
    Home,
    /// A species.
    Species(String),
    /// The guide of a procedure.
    Guide(usize),
    /// A guide at the bench, one step a screen.
    Bench(usize),
    /// A guide for a projector.
    Room(usize),
    /// The wall card of a procedure.
    Card(usize),
    /// The class sheet of a procedure.
    ClassSheet(usize),
    /// All tables.
    Tables,
    /// The yields of a procedure.
    GuideTable(usize),
    /// The yields of all procedures of a species.
    SpeciesTable(String),
    /// What house cuts make of a starting piece.
    ChainTable(usize),
    /// The names of all pieces.
    Pieces,
    /// The limits against which guides are held.
    Limits,
    /// Time out of the cold of a procedure.
    ColdClock(usize),
    /// The drawing of time out of the cold.
    ColdDrawing(usize),
    /// Bones, muscles, tissues and glands of a species.
    Anatomy(String),
    /// The pieces of a species with their names.
    SpeciesPieces(String),
    /// A course, by its position in the guidebook.
    Course(usize),
    /// A free page, by its position in the guidebook.
    Free(usize),
    /// What is checked.
    Checks,
    /// The file of a procedure.
    Source(usize),
    /// A guide for machines.
    GuideData(usize),
    /// The list of all pages for machines that look for them; only where the guidebook states an address.
    Sitemap,
    /// The figures of a page of tables as a file.
    TableFile(TableOf, TableFile),
    /// The cut map of a species.
    CutMap(String),
    /// Its drawing.
    CutMapDrawing(String),
    /// The drawing of where the weight of a procedure goes.
    FlowDrawing(usize),
    /// A picture of the guidebook, by its path there.
    Picture(String),
    /// A script or the icon of the theme, by its name there.
    Asset(String),
    /// A script of the search index, by its position.
    SearchScript(usize),
    /// What the site is called and looks like when it stands on a home screen.
    Manifest,
    /// The revision of each guide, and the words by which a newer edition is told.
    Revisions,
    /// What changed, for readers of feeds; only where the guidebook states an address.
    Feed,
    /// The files of a part that can be kept on a device.
    PartFiles(Part),
    /// What is kept on this device, and the choice of it.
    Offline,
    /// What keeps the site on a device.
    ServiceWorker,
}

impl Page {
    /// When the page is made: 0 for all that need nothing but the guidebook; those of a later turn are made from what
    /// all pages of the turns before came to.
    pub(super) const fn turn(&self) -> u8 {
        match self {
            Self::PartFiles(_) => 1,
            Self::Offline => 2,
            Self::ServiceWorker => 3,
            _ => 0,
        }
    }
}

/// A page of tables.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TableOf {
    /// The yields of a procedure.
    Guide(usize),
    /// The yields of all procedures of a species.
    Species(String),
    /// What house cuts make of a starting piece.
    Chain(usize),
}

/// In what form figures are offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TableFile {
    /// Comma-separated values (RFC 4180).
    Csv,
    /// JSON as `tally` prints it.
    Json,
}

impl TableFile {
    /// All forms.
    pub const ALL: &'static [Self] = &[Self::Csv, Self::Json];

    /// The ending of such a file.
    #[must_use]
    pub const fn ending(self) -> &'static str {
        match self {
            Self::Csv => "csv",
            Self::Json => "json",
        }
    }

    /// What such a file is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Csv => "CSV",
            Self::Json => "JSON",
        }
    }
}

/// All pages by path.
pub(super) fn all(book: &Guidebook, analysis: &Analysis, engine: &Engine, search: &SearchFiles) -> BTreeMap<String, Page> {
    let mut pages = BTreeMap::from([
        (paths::HOME.to_owned(), Page::Home),
        (paths::TABLES.to_owned(), Page::Tables),
        (paths::PIECES.to_owned(), Page::Pieces),
        (paths::LIMITS.to_owned(), Page::Limits),
        (paths::CHECKS.to_owned(), Page::Checks),
        (paths::MANIFEST.to_owned(), Page::Manifest),
        (paths::REVISIONS.to_owned(), Page::Revisions),
        (paths::OFFLINE.to_owned(), Page::Offline),
        (paths::SERVICE_WORKER.to_owned(), Page::ServiceWorker),
    ]);
    for species in species_of(book) {
        pages.insert(paths::species(species), Page::Species(species.to_owned()));
        table(&mut pages, paths::species_table(species), Page::SpeciesTable(species.to_owned()), &TableOf::Species(species.to_owned()));
        if has_cut_map(book, analysis, species) {
            pages.insert(paths::cut_map(species), Page::CutMap(species.to_owned()));
            pages.insert(paths::cut_map_drawing(species), Page::CutMapDrawing(species.to_owned()));
        }
        if Anatomy::of(book, species).is_some() {
            pages.insert(paths::anatomy(species), Page::Anatomy(species.to_owned()));
        }
    }
    for species in species_with_pieces(book, analysis) {
        pages.insert(paths::pieces_of(&species), Page::SpeciesPieces(species));
    }
    for (at, procedure) in book.procedures.iter().enumerate() {
        pages.insert(paths::guide(&procedure.id), Page::Guide(at));
        pages.insert(paths::guide_data(&procedure.id), Page::GuideData(at));
        pages.insert(paths::source(&procedure.id), Page::Source(at));
        if !procedure.steps_from_yields {
            pages.insert(paths::bench(&procedure.id), Page::Bench(at));
            pages.insert(paths::room(&procedure.id), Page::Room(at));
            pages.insert(paths::card(&procedure.id), Page::Card(at));
            pages.insert(paths::class_sheet(&procedure.id), Page::ClassSheet(at));
        }
        if analysis.procedures.get(at).is_some_and(|procedure| procedure.shares.is_some()) {
            table(&mut pages, paths::guide_table(&procedure.id), Page::GuideTable(at), &TableOf::Guide(at));
            pages.insert(paths::flow_drawing(&procedure.id), Page::FlowDrawing(at));
        }
        if let Some(cold) = analysis.procedures.get(at).and_then(|analysis| cold_clock(procedure, analysis)) {
            pages.insert(paths::cold_clock(&procedure.id), Page::ColdClock(at));
            if cold.steps_without_minutes.is_empty() {
                pages.insert(paths::cold_drawing(&procedure.id), Page::ColdDrawing(at));
            }
        }
    }
    for (at, chain) in analysis.chains.iter().enumerate() {
        if chain.shares.is_some() {
            table(&mut pages, paths::chain_table(&chain.start), Page::ChainTable(at), &TableOf::Chain(at));
        }
    }
    if book.site.value().is_some_and(|site| address_of(site).is_some()) {
        pages.insert(paths::SITEMAP.to_owned(), Page::Sitemap);
        pages.insert(paths::FEED.to_owned(), Page::Feed);
    }
    pages.extend(all_parts(book).into_iter().map(|part| (paths::part_files(&part.id(book)), Page::PartFiles(part))));
    for (at, course) in book.courses.iter().enumerate() {
        pages.insert(paths::course(&course.id), Page::Course(at));
    }
    for (at, page) in book.pages.iter().enumerate() {
        pages.insert(paths::free_page(&page.id), Page::Free(at));
    }
    for path in book.pictures.keys() {
        pages.insert(path.clone(), Page::Picture(path.clone()));
    }
    pages.extend(search.paths().enumerate().map(|(at, path)| (path, Page::SearchScript(at))));
    for (name, (path, _)) in &engine.assets {
        pages.insert(path.clone(), Page::Asset(name.clone()));
    }
    pages
}

/// A page of tables, and its figures as files beside it.
fn table(pages: &mut BTreeMap<String, Page>, path: String, page: Page, of: &TableOf) {
    for file in TableFile::ALL {
        pages.insert(paths::table_file(&path, file.ending()), Page::TableFile(of.clone(), *file));
    }
    pages.insert(path, page);
}

/// The cold clock of a procedure that says how the work is done.
pub(super) fn cold_clock<'a>(procedure: &Procedure, analysis: &'a ProcedureAnalysis) -> Option<&'a ColdClock> {
    analysis.cold.as_ref().filter(|_| !procedure.steps_from_yields)
}

/// True for a species whose map can be read.
pub(super) fn has_cut_map(book: &Guidebook, analysis: &Analysis, species: &str) -> bool {
    let own = book.procedures.iter().enumerate().filter(|(_, procedure)| folder_of(&procedure.id) == species);
    cut_map::size(analysis, own.map(|(at, _)| at)) <= cut_map::MOST_PIECES
}

/// The species that have a procedure, sorted.
pub(super) fn species_of(book: &Guidebook) -> BTreeSet<&str> {
    book.procedures.iter().map(|procedure| folder_of(&procedure.id)).collect()
}

/// The folder of a procedure, which is its species.
pub(super) fn folder_of(procedure: &str) -> &str {
    procedure.split_once('/').map_or(procedure, |(folder, _)| folder)
}
