//! From the guidebook to what a template gets, and through the template to a page. One file a view.

mod addresses;
mod anatomy;
mod card;
mod card_measure;
mod card_steps;
mod cautions;
mod chain;
mod checks;
mod class_sheet;
mod cold;
mod control;
mod course;
mod cut_map;
mod dates;
mod description;
mod downloads;
mod feed;
mod frame;
mod free_page;
mod gear;
mod guide;
mod guide_data;
mod home;
mod kept;
mod kit;
mod limit_entries;
mod limits;
mod links;
mod manifest;
mod pictures;
mod piece_names;
mod piece_places;
mod pieces;
mod revisions;
mod rows;
mod search;
mod source;
mod species;
mod step;
mod step_output;
mod tables;
mod targets;
mod waivers;
mod ways;
mod work;
mod yields;

use std::collections::BTreeMap;

use crate::analysis::Analysis;
use crate::analysis::anatomy::Anatomy;
use crate::checks::{Accepted, Checked};
use crate::figures::units::Scale;
use crate::finding::SourceMap;
use crate::model::Guidebook;

use super::engine::Engine;
use super::offline::{Listing, Made, Parts, all_parts};
use super::page::{Page, species_of};
use super::small_html::small;
use super::theme_error::ThemeError;
pub(super) use addresses::address_of;
use links::Givers;
use piece_places::Places;
pub(super) use piece_places::species_with_pieces;
pub(super) use search::SearchFiles;
pub use search::{SearchBox, SpeciesChoice};
use work::{BENCH, ROOM};

/// All that views draw on.
pub(super) struct Views<'a> {
    book: &'a Guidebook,
    analysis: &'a Analysis,
    accepted: &'a [Accepted],
    sources: &'a SourceMap,
    engine: Engine,
    scale: Scale,
    givers: Givers,
    /// The anatomy of each species that has a guide, where it is known.
    anatomies: BTreeMap<&'a str, Anatomy<'a>>,
    places: BTreeMap<String, Places>,
    search: SearchFiles,
    parts: Parts,
}

impl<'a> Views<'a> {
    /// Gets ready what all views share.
    pub(super) fn new(checked: &'a Checked<Guidebook>, engine: Engine, search: SearchFiles) -> Self {
        let (book, analysis) = (checked.value(), checked.analysis());
        let anatomies = species_of(book).into_iter().filter_map(|species| Some((species, Anatomy::of(book, species)?)));
        let places = piece_places::all(book, analysis);
        engine.know_pieces(piece_places::species_of_pieces(book, &places));
        Self {
            book,
            analysis,
            accepted: checked.accepted(),
            sources: checked.sources(),
            engine,
            scale: Scale(book.units()),
            givers: Givers::of(analysis),
            anatomies: anatomies.collect(),
            places,
            search,
            parts: Parts::of(book, analysis),
        }
    }

    /// The bytes of one page.
    pub(super) fn render(&self, path: &str, page: &Page) -> Result<Vec<u8>, ThemeError> {
        match page {
            Page::Home => self.engine.render("home.html", &self.home(path)?),
            Page::Species(species) => self.engine.render("species.html", &self.species(path, species)?),
            // A guide is the page that must arrive at once.
            Page::Guide(at) => {
                let page = self.engine.render("guide.html", &self.guide(path, *at)?)?;
                Ok(small(&String::from_utf8_lossy(&page)).into_bytes())
            }
            Page::Bench(at) => self.engine.render("bench.html", &self.work(path, *at, &BENCH)?),
            Page::Room(at) => self.engine.render("room.html", &self.work(path, *at, &ROOM)?),
            Page::Card(at) => self.engine.render("card.html", &self.card_page(path, *at)?),
            Page::ClassSheet(at) => self.engine.render("class-sheet.html", &self.class_page(path, *at)?),
            Page::Tables => self.engine.render("tables.html", &self.tables(path)?),
            Page::GuideTable(at) => self.engine.render("guide-table.html", &self.guide_table(path, *at)?),
            Page::SpeciesTable(species) => self.engine.render("species-table.html", &self.species_table(path, species)?),
            Page::ChainTable(at) => self.engine.render("chain-table.html", &self.chain_table(path, *at)?),
            Page::Pieces => self.engine.render("pieces.html", &self.pieces(path)?),
            Page::Limits => self.engine.render("limits.html", &self.limits_page(path)?),
            Page::ColdClock(at) => self.engine.render("cold.html", &self.cold(path, *at)?),
            Page::ColdDrawing(at) => self.cold_drawing(*at),
            Page::Anatomy(species) => self.engine.render("anatomy.html", &self.anatomy(path, species)?),
            Page::SpeciesPieces(species) => self.engine.render("pieces-of-species.html", &self.species_pieces(path, species)?),
            Page::Course(at) => self.engine.render("course.html", &self.course(path, *at)?),
            Page::Free(at) => self.engine.render("free-page.html", &self.free_page(path, *at)?),
            Page::Checks => self.engine.render("checks.html", &self.checks(path)?),
            Page::Source(at) => self.engine.render("source.html", &self.source(path, *at)?),
            Page::GuideData(at) => self.guide_data(path, *at),
            Page::Manifest => self.manifest(path),
            Page::Revisions => self.revisions(),
            Page::Feed => self.feed(path),
            // These list other pages, so `Site` alone can have them made.
            Page::Sitemap | Page::PartFiles(_) | Page::Offline | Page::ServiceWorker => Err(gone("list of pages")),
            Page::TableFile(table, file) => self.table_file(table, *file),
            Page::CutMap(species) => self.engine.render("cut-map.html", &self.cut_map(path, species)?),
            Page::CutMapDrawing(species) => self.cut_map_drawing(species),
            Page::FlowDrawing(at) => self.flow_drawing(*at),
            Page::Picture(picture) => self.picture_bytes(picture),
            Page::SearchScript(at) => self.search.text(*at).map(|text| text.as_bytes().to_vec()).ok_or_else(|| gone("search index")),
            Page::Asset(name) => Ok(self.engine.assets.get(name).map(|(_, bytes)| bytes.clone()).unwrap_or_default()),
        }
    }

    /// What a page of a later turn lists.
    pub(super) fn listing<'b>(&'b self, page: &Page, made: &'b [Made], pages: &'b BTreeMap<String, Page>) -> Listing<'b> {
        Listing::before(page, made, pages, self.book, &self.parts)
    }

    /// The bytes of a page of a later turn.
    pub(super) fn close(&self, path: &str, page: &Page, listing: &Listing<'_>) -> Result<Vec<u8>, ThemeError> {
        match page {
            Page::PartFiles(part) => Ok(listing.part_text(part).into_bytes()),
            Page::Offline => self.engine.render("offline.html", &self.kept(path, listing)?),
            Page::ServiceWorker => Ok(format!("{}{}", listing.worker_head(&all_parts(self.book)), self.engine.worker).into_bytes()),
            other => self.render(path, other),
        }
    }
}

/// Something that the list of pages promised is not there: a mistake of the program, told instead of a panic.
fn gone(what: &str) -> ThemeError {
    ThemeError::new(format!("the {what} of this page is not in the guidebook"))
}
