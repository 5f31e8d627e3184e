//! A checked guidebook to pages, one at a time, through the templates of a theme.
//!
//! Reached only with `Checked<Guidebook>`: what has a fault never becomes a page. It meets no disk and no clock;
//! `Site::render` is pure, may be called from any thread, and gives the same bytes for the same input.
//!
//! A few pages, `Site::closing`, list what all others came to, so they are made last.

mod context;
mod engine;
mod escape;
mod highlight;
mod markdown;
mod offline;
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
    anatomy, card, caution, chain, checks, class_sheet, cold, course, cut_map, downloads, frame, free_page, guide, home, kept, limits,
    pieces, source, species, step, tables, work,
};
pub use offline::{AT_ONCE, Made, Part};
pub use own_theme::findings as theme_findings;
pub use page::Page;
pub use theme::Theme;
pub use theme_error::{ThemeError, Wrong};
pub use views::{SearchBox, SpeciesChoice};

use std::collections::BTreeMap;
use std::sync::OnceLock;

use rayon::prelude::*;

use crate::checks::Checked;
use crate::model::Guidebook;

use engine::Engine;
use views::{SearchFiles, Views};

/// All pages of a guidebook, ready to be made.
pub struct Site<'a> {
    views: Views<'a>,
    pages: BTreeMap<String, Page>,
    /// What all pages but the last came to, once they were made for a page that lists them.
    made: OnceLock<Vec<Made>>,
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
        Self { views: Views::new(checked, engine, search), pages, made: OnceLock::new() }
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

    /// Paths of the pages that list what all pages before them came to, in the order in which they are to be made:
    /// after all others.
    #[must_use]
    pub fn closing(&self) -> Vec<String> {
        let mut last: Vec<(u8, &String)> =
            self.pages.iter().map(|(path, page)| (page.turn(), path)).filter(|(turn, _)| *turn > 0).collect();
        last.sort_unstable();
        last.into_iter().map(|(_, path)| path.clone()).collect()
    }

    /// The bytes of one page. For a page of `closing`, all pages before it are made once and forgotten again but for
    /// their sizes and marks; who makes them all anyway hands them to `close`.
    ///
    /// # Errors
    /// When there is no such page, or its template cannot be filled.
    pub fn render(&self, path: &str) -> Result<Vec<u8>, ThemeError> {
        let page = self.find(path)?;
        if page.turn() > 0 {
            return self.close(path, self.all_made()?);
        }
        if *page == Page::Sitemap {
            return Ok(self.views.sitemap(self.pages.iter().map(|(path, page)| (path.as_str(), page))));
        }
        self.views.render(path, page)
    }

    /// The bytes of a page of `closing`, from what all pages before it came to. More in `made` does no harm.
    ///
    /// # Errors
    /// When there is no such page, or its template cannot be filled.
    pub fn close(&self, path: &str, made: &[Made]) -> Result<Vec<u8>, ThemeError> {
        let page = self.find(path)?;
        self.views.close(path, page, &self.views.listing(page, made, &self.pages))
    }

    fn find(&self, path: &str) -> Result<&Page, ThemeError> {
        self.pages.get(path).ok_or_else(|| ThemeError::new(format!("the site has no page `{path}`")))
    }

    /// What all pages came to.
    fn all_made(&self) -> Result<&[Made], ThemeError> {
        if let Some(made) = self.made.get() {
            return Ok(made);
        }
        let first: Vec<&String> = self.pages.iter().filter(|(_, page)| page.turn() == 0).map(|(path, _)| path).collect();
        let made: Result<Vec<Made>, ThemeError> = first.into_par_iter().map(|path| Ok(Made::of(path, &self.render(path)?))).collect();
        let mut made = made?;
        for path in self.closing() {
            let bytes = self.close(&path, &made)?;
            made.push(Made::of(&path, &bytes));
        }
        // Another thread may have been faster with the same.
        Ok(self.made.get_or_init(|| made))
    }
}

impl std::fmt::Debug for Site<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Site").field("pages", &self.pages).finish_non_exhaustive()
    }
}
