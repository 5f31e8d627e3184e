//! The home page.

use super::Views;
use super::frame::About;
use super::rows::main_paints;
use crate::site::context::home::{Change, HomePage, SpeciesCard};
use crate::site::page::{folder_of, species_of};
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

/// More guides than this are listed on the pages of their species alone.
const MOST_IN_ONE_LIST: usize = 24;
/// So many of the newest revisions are told.
const CHANGES: usize = 6;
/// So many starting pieces stand on the card of a species.
const STARTS: usize = 3;

impl Views<'_> {
    /// What `home.html` gets.
    pub(super) fn home(&self, path: &str) -> Result<HomePage, ThemeError> {
        let count = self.book.procedures.len();
        let listed = if count <= MOST_IN_ONE_LIST { count } else { 0 };
        let guides = self.rows(path, 0..listed)?;
        let page = self.frame(About {
            paints: main_paints(&guides),
            path,
            title: self.book.title.value().cloned().unwrap_or_default(),
            trail: Vec::new(),
            procedure: None,
            look: Look::Home,
            scripts: &["search.js", "search-box.js"],
            data: None,
            anchor: "main",
        })?;
        Ok(HomePage {
            page,
            species: species_of(self.book).into_iter().map(|species| self.card(path, species)).collect(),
            courses: self.courses(path),
            guides,
            changes: self.changes(path)?,
            tables_href: paths::link(path, paths::TABLES),
            pieces_href: paths::link(path, paths::PIECES),
            limits_href: paths::link(path, paths::LIMITS),
            pages: self.free_pages(path),
            checks_href: paths::link(path, paths::CHECKS),
            offline_href: paths::link(path, paths::OFFLINE),
            search: self.search_box(path),
        })
    }

    fn card(&self, page: &str, species: &str) -> SpeciesCard {
        let own = self.book.procedures.iter().filter(|procedure| folder_of(&procedure.id) == species);
        let mut starts = Vec::new();
        let mut guides = 0;
        for procedure in own {
            guides += 1;
            let start = procedure.start.piece.value().map_or_else(String::new, |piece| self.piece(piece));
            if !starts.contains(&start) && starts.len() < STARTS {
                starts.push(start);
            }
        }
        SpeciesCard { name: self.species_name(species), href: paths::link(page, &paths::species(species)), guides, starts }
    }

    /// The newest revisions first; of one day in the order of ids.
    fn changes(&self, page: &str) -> Result<Vec<Change>, ThemeError> {
        let newest = self.newest_revisions();
        let changes = newest.into_iter().take(CHANGES).filter_map(|(date, at)| Some((date, at, self.book.procedures.get(at)?)));
        changes
            .map(|(date, at, procedure)| {
                Ok(Change {
                    title: self.title(at),
                    href: paths::link(page, &paths::guide(&procedure.id)),
                    revision: procedure.revision.number.value().copied().unwrap_or(0),
                    state: procedure.revision.state().word(),
                    date: self.date(date)?,
                    date_iso: date.to_string(),
                    change: procedure.revision.change.value().map_or_else(String::new, |change| markdown::first_line(change)),
                })
            })
            .collect()
    }
}
