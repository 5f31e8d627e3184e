//! Which guide gives a piece, which one cuts it further, and links to guides and species.

use std::collections::BTreeMap;

use crate::analysis::Analysis;
use crate::analysis::starts::HouseCut;
use crate::figures::yield_table::capitalised;
use crate::site::context::frame::Link;
use crate::site::page::folder_of;
use crate::site::paths;

use super::Views;
use super::piece_places::Places;

/// Procedures by the final pieces that they give, as positions in the guidebook.
pub(super) struct Givers(BTreeMap<String, Vec<usize>>);

impl Givers {
    /// Looks through all procedures.
    pub(super) fn of(analysis: &Analysis) -> Self {
        let mut givers: BTreeMap<String, Vec<usize>> = BTreeMap::new();
        for (at, procedure) in analysis.procedures.iter().enumerate() {
            for (_, piece) in procedure.network.finals() {
                givers.entry(piece.id.clone()).or_default().push(at);
            }
        }
        Self(givers)
    }

    /// The procedures that give a piece.
    pub(super) fn of_piece(&self, piece: &str) -> &[usize] {
        self.0.get(piece).map_or(&[], Vec::as_slice)
    }
}

impl Views<'_> {
    /// The name of a piece, as it stands alone.
    pub(super) fn piece(&self, piece: &str) -> String {
        capitalised(&self.book.piece_name(piece))
    }

    /// The link to a piece on the page of its species; to the names of all pieces where its species is not known.
    pub(super) fn piece_href(&self, page: &str, piece: &str) -> String {
        let species = self.book.cuts.get(piece).map(|cut| &cut.species).or_else(|| self.places.get(piece).map(|places| &places.species));
        species.map_or_else(|| paths::link(page, paths::PIECES), |species| paths::link_to_piece(page, species, piece))
    }

    /// A piece by its id, as long-lived as the guidebook, with its places in the guides.
    pub(super) fn piece_by_id(&self, piece: &str) -> Option<(&str, Option<&Places>)> {
        let own = self.places.get_key_value(piece).map(|(id, places)| (id.as_str(), Some(places)));
        own.or_else(|| self.book.cuts.get_key_value(piece).map(|(id, _)| (id.as_str(), None)))
    }

    /// The pieces of a species; the names of all where it has none.
    pub(super) fn pieces_href(&self, page: &str, species: &str) -> String {
        let has = self.book.cuts.values().any(|cut| cut.species == species) || self.places.values().any(|places| places.species == species);
        paths::link(page, &if has { paths::pieces_of(species) } else { paths::PIECES.to_owned() })
    }

    /// What a species is called: its built-in name, else the name of its folder.
    pub(super) fn species_name(&self, species: &str) -> String {
        let builtin = self.book.builtin.species.get(species).map(|species| species.name.clone());
        capitalised(&builtin.unwrap_or_else(|| species.replace('-', " ")))
    }

    /// The guide that cuts a piece further: the house cut, else the only one there is.
    pub(super) fn cut_further(&self, page: &str, piece: &str, than: &str) -> Option<Link> {
        let starts = &self.analysis.starts;
        let at = match starts.house_cut(piece) {
            HouseCut::One(at) => at,
            HouseCut::None | HouseCut::Unclear => *starts.from(piece).first()?,
        };
        let procedure = self.book.procedures.get(at).filter(|procedure| procedure.id != than)?;
        Some(Link { name: self.title(at), href: paths::link(page, &paths::guide(&procedure.id)) })
    }

    /// The guides that give a piece.
    pub(super) fn given_by(&self, page: &str, piece: &str) -> Vec<Link> {
        self.givers.of_piece(piece).iter().filter_map(|at| self.guide_link(page, *at)).collect()
    }

    /// The link to a guide by its position.
    pub(super) fn guide_link(&self, page: &str, at: usize) -> Option<Link> {
        let procedure = self.book.procedures.get(at)?;
        Some(Link { name: self.title(at), href: paths::link(page, &paths::guide(&procedure.id)) })
    }

    /// The title of a procedure.
    pub(super) fn title(&self, at: usize) -> String {
        let procedure = self.book.procedures.get(at);
        procedure.map_or_else(String::new, |procedure| procedure.title.value().unwrap_or(&procedure.id).clone())
    }

    /// The way to a page about a species: home, then the species.
    pub(super) fn trail(&self, page: &str, procedure: &str) -> Vec<Link> {
        let species = folder_of(procedure);
        vec![self.home_link(page), Link { name: self.species_name(species), href: paths::link(page, &paths::species(species)) }]
    }

    /// The link home.
    pub(super) fn home_link(&self, page: &str) -> Link {
        let name = self.engine.words.plain("home").unwrap_or_default().to_owned();
        Link { name, href: paths::link(page, paths::HOME) }
    }
}
