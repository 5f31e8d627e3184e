//! Pages of tables: all of them, those of a species, and the yield of every step of a guide.

use super::frame::{About, paints};
use super::{Views, gone};
use crate::figures::Worked;
use crate::figures::outputs::step_figures;
use crate::figures::yield_table::YieldTable;
use crate::site::context::frame::Link;
use crate::site::context::tables::{GuideTablePage, GuideYields, SpeciesTablePage, SpeciesTables, TableStep, TablesPage};
use crate::site::page::{TableOf, species_of};
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `tables.html` gets.
    pub(super) fn tables(&self, path: &str) -> Result<TablesPage, ThemeError> {
        let title = self.engine.words.plain("tables")?.to_owned();
        let page = self.frame(About {
            path,
            title,
            trail: vec![self.home_link(path)],
            procedure: None,
            paints: Vec::new(),
            look: Look::Table,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        let species = species_of(self.book).into_iter().map(|species| SpeciesTables {
            name: self.species_name(species),
            href: paths::link(path, &paths::species_table(species)),
            guides: self.procedures_of(species).filter_map(|at| self.table_link(path, at)).collect(),
        });
        let chains = (0..self.analysis.chains.len()).filter_map(|at| self.chain_link(path, at));
        Ok(TablesPage { page, chains: chains.collect(), species: species.collect() })
    }

    /// What `species-table.html` gets.
    pub(super) fn species_table(&self, path: &str, species: &str) -> Result<SpeciesTablePage, ThemeError> {
        let name = self.species_name(species);
        let trail = vec![self.home_link(path), self.tables_link(path)?];
        let title = self.engine.words.with("species-tables", &[("species", name.as_str().into())])?;
        let guides = self.procedures_of(species).filter_map(|at| {
            let (procedure, analysis) = (self.book.procedures.get(at)?, self.analysis.procedures.get(at)?);
            let (table, _) = YieldTable::of_procedure(self.book, analysis, Worked::of(procedure, self.scale)?)?;
            Some(GuideYields {
                id: procedure.id.clone(),
                title: self.title(at),
                href: paths::link(path, &paths::guide(&procedure.id)),
                table_href: paths::link(path, &paths::guide_table(&procedure.id)),
                state: procedure.revision.state().word(),
                table,
            })
        });
        let guides: Vec<GuideYields> = guides.collect();
        let page = self.frame(About {
            path,
            title,
            trail,
            procedure: None,
            paints: paints(guides.iter().map(|guide| &guide.table)),
            look: Look::Table,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        let chains = self.chains_of(species).filter_map(|at| self.chain_link(path, at)).collect();
        Ok(SpeciesTablePage { page, name, guides, chains, downloads: self.downloads(path, &TableOf::Species(species.to_owned()))? })
    }

    /// What `guide-table.html` gets.
    pub(super) fn guide_table(&self, path: &str, at: usize) -> Result<GuideTablePage, ThemeError> {
        let (Some(procedure), Some(analysis)) = (self.book.procedures.get(at), self.analysis.procedures.get(at)) else {
            return Err(gone("procedure"));
        };
        let (yields, rounded) = self.yields(path, at).ok_or_else(|| gone("yield"))?;
        let worked = Worked::of(procedure, self.scale).ok_or_else(|| gone("start weight"))?;
        let figures = step_figures(analysis, worked, &rounded).ok_or_else(|| gone("step"))?;
        let steps = (1..).zip(procedure.steps.iter().zip(&figures)).map(|(number, (step, figures))| TableStep {
            number,
            name: step.name.value().cloned().unwrap_or_default(),
            takes: step.take.iter().map(|piece| self.piece(&piece.value)).collect(),
            outputs: figures.outputs.iter().map(|output| self.step_output(path, procedure, analysis, step, output)).collect(),
        });
        let steps = steps.collect();
        let stands_in = self
            .analysis
            .chains
            .iter()
            .enumerate()
            .filter(|(_, chain)| chain.procedures.len() > 1 && chain.procedures.contains(&procedure.id));
        let title = self.engine.words.with("guide-table-title", &[("title", self.title(at).into())])?;
        let trail = self.trail_behind(path, at);
        Ok(GuideTablePage {
            page: self.frame(About {
                path,
                title,
                trail,
                procedure: Some(procedure),
                paints: paints([&yields.table]),
                look: Look::Table,
                scripts: &["weight.js"],
                data: None,
                anchor: "main",
            })?,
            id: procedure.id.clone(),
            title: self.title(at),
            guide_href: paths::link(path, &paths::guide(&procedure.id)),
            start: self.start(path, procedure),
            yields,
            steps,
            control: self.control(path, procedure)?,
            downloads: self.downloads(path, &TableOf::Guide(at))?,
            chains: stands_in.filter_map(|(at, _)| self.chain_link(path, at)).collect(),
        })
    }

    /// The link to the table of a guide.
    fn table_link(&self, page: &str, at: usize) -> Option<Link> {
        let procedure = self.book.procedures.get(at)?;
        self.analysis.procedures.get(at)?.shares.as_ref()?;
        Some(Link { name: self.title(at), href: paths::link(page, &paths::guide_table(&procedure.id)) })
    }

    /// The link to all tables.
    pub(super) fn tables_link(&self, page: &str) -> Result<Link, ThemeError> {
        Ok(Link { name: self.engine.words.plain("tables")?.to_owned(), href: paths::link(page, paths::TABLES) })
    }
}
