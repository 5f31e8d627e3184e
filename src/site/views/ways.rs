//! The views of one guide, each a page of its own, with links from one to the others.

use super::Views;
use crate::site::context::frame::Link;
use crate::site::paths;
use crate::site::theme_error::ThemeError;

/// Where a view of a procedure lies, by the id of the procedure.
type Path = fn(&str) -> String;

/// The views of a guide beside the guide itself: the id of the word that names it, and where it lies.
const WAYS: &[(&str, Path)] =
    &[("bench-view", paths::bench), ("room-view", paths::room), ("wall-card", paths::card), ("class-sheet", paths::class_sheet)];

impl Views<'_> {
    /// Links from a page to all views of a guide but the one that the page is, by the id of its word. Views that need
    /// steps are left out where the procedure states yields alone.
    pub(super) fn ways(&self, page: &str, at: usize, but: &str) -> Result<Vec<Link>, ThemeError> {
        let Some(procedure) = self.book.procedures.get(at).filter(|procedure| !procedure.steps_from_yields) else { return Ok(Vec::new()) };
        let others = WAYS.iter().filter(|(word, _)| *word != but);
        others
            .map(|(word, path)| Ok(Link { name: self.engine.words.plain(word)?.to_owned(), href: paths::link(page, &path(&procedure.id)) }))
            .collect()
    }
}
