//! The page of a species.

use super::Views;
use super::frame::{About, paints};
use super::rows::main_paints;
use crate::site::context::chain::Chain;
use crate::site::context::species::SpeciesPage;
use crate::site::page::{folder_of, has_cut_map};
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `species.html` gets.
    pub(super) fn species(&self, path: &str, species: &str) -> Result<SpeciesPage, ThemeError> {
        let name = self.species_name(species);
        let guides = self.rows(path, self.procedures_of(species))?;
        let chains: Vec<Chain> = self.chains_of(species).filter_map(|at| self.chain(path, at)).collect();
        let mut shown = paints(chains.iter().map(|chain| &chain.table));
        shown.extend(main_paints(&guides));
        let page = self.frame(About {
            paints: shown,
            path,
            title: name.clone(),
            trail: vec![self.home_link(path)],
            procedure: None,
            look: Look::List,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        Ok(SpeciesPage {
            page,
            name,
            guides,
            chains,
            cut_map_href: if has_cut_map(self.book, self.analysis, species) {
                paths::link(path, &paths::cut_map(species))
            } else {
                String::new()
            },
            tables_href: paths::link(path, &paths::species_table(species)),
            anatomy: self.anatomy_link(path, species)?,
        })
    }

    /// Positions of the procedures of a species.
    pub(super) fn procedures_of(&self, species: &str) -> impl Iterator<Item = usize> {
        let all = self.book.procedures.iter().enumerate();
        all.filter(move |(_, procedure)| folder_of(&procedure.id) == species).map(|(at, _)| at)
    }

    /// Positions of the chains whose first guide is of a species, and in which more than one guide stands.
    pub(super) fn chains_of(&self, species: &str) -> impl Iterator<Item = usize> {
        let all = self.analysis.chains.iter().enumerate();
        let own = all.filter(move |(_, chain)| chain.procedures.first().is_some_and(|first| folder_of(first) == species));
        own.filter(|(_, chain)| chain.procedures.len() > 1).map(|(at, _)| at)
    }
}
