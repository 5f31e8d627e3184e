//! The index of search as files of the site, and the box on the home page.

use serde::Serialize;

use super::Views;
use crate::analysis::Analysis;
use crate::model::Guidebook;
use crate::site::paths;
use crate::site::search::{Index, Script, Sizes, UrlMaker, records};

/// What the search box gets.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SearchBox {
    /// The first script of the index.
    pub index: String,
    /// From this page to the root of the site: empty, or `../`.
    pub root: String,
    /// A list of all pieces, for those without script.
    pub list: String,
    /// The species that something found can belong to.
    pub species: Vec<SpeciesChoice>,
    /// The kinds of things that can be found.
    pub kinds: Vec<&'static str>,
}

/// A species to narrow a search to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesChoice {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
}

/// The index as it is published.
pub(in crate::site) struct SearchFiles {
    scripts: Vec<Script>,
    species: Vec<String>,
    kinds: Vec<&'static str>,
}

impl SearchFiles {
    /// Indexes a guidebook.
    pub(in crate::site) fn of(book: &Guidebook, analysis: &Analysis) -> Self {
        let language = book.language.value().map_or("en", String::as_str);
        let index = Index::of(records(book, analysis, &Addresses), language);
        let name = |stem: &str, text: &str| {
            let mark: String = blake3::hash(text.as_bytes()).to_hex().chars().take(10).collect();
            format!("{stem}.{mark}.js")
        };
        Self {
            scripts: index.scripts(Sizes::default(), &name),
            species: index.species().into_iter().map(str::to_owned).collect(),
            kinds: index.kinds().into_iter().map(crate::site::search::Kind::word).collect(),
        }
    }

    /// The path of each script, in their order.
    pub(in crate::site) fn paths(&self) -> impl Iterator<Item = String> {
        self.scripts.iter().map(|script| paths::search_script(&script.name))
    }

    /// The text of the script at this position.
    pub(super) fn text(&self, at: usize) -> Option<&str> {
        self.scripts.get(at).map(|script| script.text.as_str())
    }
}

impl Views<'_> {
    /// The box, as it stands on `page`.
    pub(super) fn search_box(&self, page: &str) -> SearchBox {
        let species = self.search.species.iter().map(|id| SpeciesChoice { id: id.clone(), name: self.species_name(id) });
        SearchBox {
            index: self.search.paths().next().map_or_else(String::new, |first| paths::link(page, &first)),
            root: "../".repeat(page.matches('/').count()),
            list: paths::link(page, paths::PIECES),
            species: species.collect(),
            kinds: self.search.kinds.clone(),
        }
    }
}

/// Addresses from the root of the site.
struct Addresses;

impl UrlMaker for Addresses {
    fn guide(&self, procedure: &str) -> String {
        paths::link(paths::HOME, &paths::guide(procedure))
    }

    fn step(&self, procedure: &str, step: &str) -> String {
        paths::anchored(self.guide(procedure), &format!("step-{step}"))
    }

    fn piece(&self, species: &str, piece: &str) -> Option<String> {
        Some(paths::link_to_piece(paths::HOME, species, piece))
    }

    fn course(&self, course: &str) -> Option<String> {
        Some(paths::link(paths::HOME, &paths::course(course)))
    }

    fn page(&self, page: &str) -> Option<String> {
        Some(paths::link(paths::HOME, &paths::free_page(page)))
    }
}
