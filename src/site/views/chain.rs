//! What house cuts make of a starting piece.

use super::frame::{About, paints};
use super::{Views, gone};
use crate::figures::Worked;
use crate::figures::yield_table::YieldTable;
use crate::site::context::chain::{Chain, ChainPage};
use crate::site::context::frame::Link;
use crate::site::page::{TableOf, folder_of};
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `chain-table.html` gets.
    pub(super) fn chain_table(&self, path: &str, at: usize) -> Result<ChainPage, ThemeError> {
        let chain = self.chain(path, at).ok_or_else(|| gone("chain"))?;
        let first = self.analysis.chains.get(at).and_then(|chain| chain.procedures.first()).map_or("", String::as_str);
        let species = folder_of(first);
        let mut trail = vec![self.home_link(path), self.tables_link(path)?];
        trail.push(Link { name: self.species_name(species), href: paths::link(path, &paths::species_table(species)) });
        let page = self.frame(About {
            paints: paints([&chain.table]),
            path,
            title: self.engine.words.with("chain-title", &[("piece", chain.table.start.as_str().into())])?,
            trail,
            procedure: None,
            look: Look::Table,
            scripts: &["weight.js"],
            data: None,
            anchor: "main",
        })?;
        let start = self.start(path, self.book.procedure(first).ok_or_else(|| gone("procedure"))?);
        Ok(ChainPage { page, chain, downloads: self.downloads(path, &TableOf::Chain(at))?, start })
    }

    /// A chain, worked at the start weight of its first guide.
    pub(super) fn chain(&self, page: &str, at: usize) -> Option<Chain> {
        let chain = self.analysis.chains.get(at)?;
        let shares = chain.shares.as_ref()?;
        let first = self.book.procedure(chain.procedures.first()?)?;
        let (table, _) = YieldTable::of(self.book, &chain.start, shares, Worked::of(first, self.scale)?);
        let position = |id: &String| self.book.procedures.binary_search_by(|procedure| procedure.id.cmp(id)).ok();
        let guides = chain.procedures.iter().filter_map(|id| self.guide_link(page, position(id)?));
        Some(Chain {
            piece: chain.start.clone(),
            href: paths::link(page, &paths::chain_table(&chain.start)),
            guides: guides.collect(),
            table,
        })
    }

    /// The link to the table of a chain.
    pub(super) fn chain_link(&self, page: &str, at: usize) -> Option<Link> {
        let chain = self.analysis.chains.get(at).filter(|chain| chain.shares.is_some())?;
        Some(Link { name: self.piece(&chain.start), href: paths::link(page, &paths::chain_table(&chain.start)) })
    }
}
