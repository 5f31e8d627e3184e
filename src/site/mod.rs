//! A checked guidebook to pages, one at a time, through the templates of a theme.
//!
//! Reached only with `Checked<Guidebook>`: what has a fault never becomes a page. It meets no disk and no clock;
//! `Site::render` is pure, may be called from any thread, and gives the same bytes for the same input.

mod context;
mod engine;
mod escape;
mod highlight;
mod markdown;
mod own_theme;
mod page;
pub mod paths;
mod picture_size;
mod policy;
mod script_words;
pub mod search;
mod small_html;
mod style;
mod style_apart;
mod telling;
mod templates;
mod theme;
mod theme_error;
mod views;
mod words;

pub use context::{
    anatomy, card, caution, chain, checks, class_sheet, cold, downloads, frame, free_page, guide, home, limits, pieces, source, species,
    step, tables, work,
};
pub use own_theme::findings as theme_findings;
pub use page::Page;
pub use theme::Theme;
pub use theme_error::{ThemeError, Wrong};
pub use views::{SearchBox, SpeciesChoice};

use std::collections::BTreeMap;

use crate::checks::Checked;
use crate::model::Guidebook;

use engine::Engine;
use views::{SearchFiles, Views};

/// All pages of a guidebook, ready to be made.
pub struct Site<'a> {
    views: Views<'a>,
    pages: BTreeMap<String, Page>,
}

impl<'a> Site<'a> {
    /// Makes the theme ready and lists the pages.
    ///
    /// # Errors
    /// When a template does not compile, a word is missing, or a file of the theme is not as it should be.
    pub fn new(checked: &'a Checked<Guidebook>, theme: &Theme) -> Result<Self, ThemeError> {
        let language = checked.value().language.value().map_or("en", String::as_str);
        Ok(Self::with(checked, Engine::new(theme, language)?))
    }

    /// All pages of a guidebook, made by an engine.
    fn with(checked: &'a Checked<Guidebook>, engine: Engine) -> Self {
        let book = checked.value();
        let search = SearchFiles::of(book, checked.analysis());
        let pages = page::all(book, checked.analysis(), &engine, &search);
        Self { views: Views::new(checked, engine, search), pages }
    }

    /// The path of each page, relative to the site, with forward slashes, sorted.
    #[must_use]
    pub fn pages(&self) -> Vec<String> {
        self.pages.keys().cloned().collect()
    }

    /// What stands at a path.
    #[must_use]
    pub fn page(&self, path: &str) -> Option<&Page> {
        self.pages.get(path)
    }

    /// The bytes of one page.
    ///
    /// # Errors
    /// When there is no such page, or its template cannot be filled.
    pub fn render(&self, path: &str) -> Result<Vec<u8>, ThemeError> {
        let page = self.pages.get(path).ok_or_else(|| ThemeError::new(format!("the site has no page `{path}`")))?;
        if *page == Page::Sitemap {
            return Ok(self.views.sitemap(self.pages.iter().map(|(path, page)| (path.as_str(), page))));
        }
        self.views.render(path, page)
    }
}

impl std::fmt::Debug for Site<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Site").field("pages", &self.pages).finish_non_exhaustive()
    }
}
