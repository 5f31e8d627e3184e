//! The pieces of a species by region: what they are called, what makes them, what they become.

use std::collections::BTreeSet;

use super::Views;
use super::control::text;
use super::frame::About;
use super::piece_places::{self, Places};
use crate::analysis::starts::HouseCut;
use crate::figures::yield_table::capitalised;
use crate::model::guidebook::Cut;
use crate::site::context::frame::Link;
use crate::site::context::pieces::{Code, InGuide, Piece, RegionPieces, SpeciesPiecesPage, Start, StepLink, TradeName};
use crate::site::escape::keep_units;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

/// Names of regions and systems up to this length are initials: `UK`, `IMPS`.
const INITIALS: usize = 5;

/// A piece by its id, with its entry of a cut list and its places in the guides.
type Found<'a> = (&'a str, Option<&'a Cut>, &'a Places);

impl Views<'_> {
    /// What `pieces-of-species.html` gets.
    pub(super) fn species_pieces(&self, path: &str, species: &str) -> Result<SpeciesPiecesPage, ThemeError> {
        let nowhere = Places::default();
        let mut pieces: Vec<Found<'_>> = Vec::new();
        for (id, own) in piece_places::species_of_pieces(self.book, &self.places) {
            if own == species
                && let Some((id, places)) = self.piece_by_id(&id)
            {
                pieces.push((id, self.book.cuts.get(id), places.unwrap_or(&nowhere)));
            }
        }
        // A cut list keeps its own order; what it leaves out follows by name.
        pieces.sort_by_key(|(id, cut, _)| (cut.is_none(), cut.map(|cut| cut.piece.place), *id));
        let used: BTreeSet<&'static str> = pieces.iter().flat_map(|(_, _, places)| places.uses.iter().copied()).collect();
        let name = self.species_name(species);
        let all = Link { name: self.engine.words.plain("pieces-title")?.to_owned(), href: paths::link(path, paths::PIECES) };
        let page = self.frame(About {
            path,
            title: self.engine.words.with("pieces-of-species", &[("species", name.as_str().into())])?,
            trail: vec![self.home_link(path), all],
            procedure: None,
            paints: used.into_iter().collect(),
            look: Look::Pieces,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        let has_guides = self.procedures_of(species).next().is_some();
        let species_href = if has_guides { paths::link(path, &paths::species(species)) } else { String::new() };
        let anatomy = self.anatomy_link(path, species)?;
        Ok(SpeciesPiecesPage { page, name, species_href, anatomy, count: pieces.len(), regions: self.regions(path, &pieces) })
    }

    /// Pieces of one species by region, regions in the order in which they are first named, those of no region last.
    fn regions(&self, page: &str, pieces: &[Found<'_>]) -> Vec<RegionPieces> {
        let mut regions: Vec<RegionPieces> = Vec::new();
        for (id, cut, places) in pieces {
            let name = cut.and_then(|cut| cut.region.value()).map_or_else(String::new, |region| capitalised(&region.replace('-', " ")));
            let piece = self.piece_entry(page, id, *cut, places);
            match regions.iter_mut().find(|region| region.name == name && region.listed == cut.is_some()) {
                Some(region) => region.pieces.push(piece),
                None => regions.push(RegionPieces { name, listed: cut.is_some(), pieces: vec![piece] }),
            }
        }
        regions.sort_by_key(|region| (!region.listed, region.name.is_empty()));
        regions
    }

    fn piece_entry(&self, page: &str, id: &str, cut: Option<&Cut>, places: &Places) -> Piece {
        let starts = &self.analysis.starts;
        let house = match starts.house_cut(id) {
            HouseCut::One(at) => Some(at),
            HouseCut::None | HouseCut::Unclear => None,
        };
        let becomes =
            starts.from(id).iter().filter_map(|at| Some(Start { guide: self.guide_link(page, *at)?, house_cut: house == Some(*at) }));
        Piece {
            id: id.to_owned(),
            name: self.piece(id),
            names: cut.map_or_else(Vec::new, |cut| trade_names(cut, self.book.region.value().map(String::as_str))),
            codes: cut
                .map_or(&[][..], |cut| cut.codes.as_slice())
                .iter()
                .map(|(system, code)| Code { system: initials(system), code: code.clone() })
                .collect(),
            weight: cut.and_then(|cut| cut.weight.value()).map_or_else(String::new, |weight| self.scale.masses(*weight)),
            per_animal: cut.and_then(|cut| cut.per_animal.value()).copied().unwrap_or(0),
            lies: cut.map_or_else(String::new, |cut| keep_units(&text(&cut.lies))),
            uses: places.uses.clone(),
            made: places.given.iter().filter_map(|(at, steps)| self.in_guide(page, *at, steps)).collect(),
            taken: places.taken.iter().filter_map(|(at, steps)| self.in_guide(page, *at, steps)).collect(),
            becomes: becomes.collect(),
        }
    }

    /// A guide with some of its steps, counted from 0.
    pub(super) fn in_guide(&self, page: &str, at: usize, steps: &[usize]) -> Option<InGuide> {
        let procedure = self.book.procedures.get(at)?;
        let guide = self.guide_link(page, at)?;
        let steps = steps.iter().filter_map(|step| {
            let id = &procedure.steps.get(*step)?.id;
            Some(StepLink { number: step + 1, href: paths::anchored(guide.href.clone(), &format!("step-{id}")) })
        });
        Some(InGuide { steps: steps.collect(), guide })
    }
}

/// Other trade names: those of the guidebook's own region, then those of everywhere, then the rest; each group as it
/// stands in the list.
pub(super) fn trade_names(cut: &Cut, own: Option<&str>) -> Vec<TradeName> {
    let mut names: Vec<_> = cut.also.iter().collect();
    names.sort_by_key(|name| match name.region.as_deref() {
        Some(region) if Some(region) == own => 0,
        None => 1,
        Some(_) => 2,
    });
    names
        .into_iter()
        .map(|name| TradeName { name: name.name.value.clone(), region: name.region.as_deref().map_or_else(String::new, initials) })
        .collect()
}

/// A short id as initials, a longer one in words: `UK`, `IMPS`, `New Zealand`.
fn initials(id: &str) -> String {
    if id.len() <= INITIALS && id.is_ascii() {
        return id.to_uppercase();
    }
    id.split('-').map(capitalised).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{FileId, Place, Span};
    use crate::model::guidebook::TradeName as Stated;
    use crate::model::stated::{self, Spanned};

    fn cut(names: &[(&str, Option<&str>)]) -> Cut {
        let place = Place::new(FileId(0), Span::new(0, 0));
        let named = |(name, region): &(&str, Option<&str>)| Stated {
            name: Spanned::new((*name).to_owned(), place),
            region: region.map(str::to_owned),
        };
        Cut {
            piece: Spanned::new("p".to_owned(), place),
            species: "pork".to_owned(),
            name: stated::Stated::Absent,
            also: names.iter().map(named).collect(),
            codes: Vec::new(),
            weight: stated::Stated::Absent,
            per_animal: stated::Stated::Absent,
            region: stated::Stated::Absent,
            lies: stated::Stated::Absent,
            was: Vec::new(),
        }
    }

    #[test]
    fn names_of_the_own_region_come_first_and_say_so() {
        let cut = cut(&[("short loin", Some("us")), ("psoas", None), ("fillet", Some("uk")), ("eye fillet", Some("new-zealand"))]);
        let shown = |own| trade_names(&cut, own).into_iter().map(|name| format!("{} {}", name.name, name.region)).collect::<Vec<_>>();
        assert_eq!(shown(Some("uk")), ["fillet UK", "psoas ", "short loin US", "eye fillet New Zealand"]);
        assert_eq!(shown(None), ["psoas ", "short loin US", "fillet UK", "eye fillet New Zealand"]);
    }
}
