//! The names of all pieces, letter by letter, each with a link to the piece on the page of its species.

use std::collections::BTreeMap;

use super::Views;
use super::frame::About;
use super::piece_places::species_of_pieces;
use super::pieces::trade_names;
use crate::figures::yield_table::capitalised;
use crate::site::context::pieces::{LetterNames, PieceName, PiecesPage, SpeciesCount};
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

/// A page with more names than this, about 20 kB compressed, is slow on a phone: then each species lists its own, and
/// search finds all (own judgement).
const MOST_NAMES: usize = 600;

/// Stands for all names that begin with a digit.
const DIGITS: &str = "0\u{2013}9";

impl Views<'_> {
    /// What `pieces.html` gets.
    pub(super) fn pieces(&self, path: &str) -> Result<PiecesPage, ThemeError> {
        let page = self.frame(About {
            path,
            title: self.engine.words.plain("pieces-title")?.to_owned(),
            trail: vec![self.home_link(path)],
            procedure: None,
            paints: Vec::new(),
            look: Look::Pieces,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        let species_of = species_of_pieces(self.book, &self.places);
        let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
        let mut letters: BTreeMap<(bool, String), Vec<PieceName>> = BTreeMap::new();
        for (piece, species) in &species_of {
            *counts.entry(species).or_default() += 1;
            for name in self.names_of_piece(path, piece, species) {
                letters.entry(letter(&name.name)).or_default().push(name);
            }
        }
        let species = counts.into_iter().map(|(species, count)| SpeciesCount {
            id: species.to_owned(),
            name: self.species_name(species),
            count,
            href: paths::link(path, &paths::pieces_of(species)),
        });
        if letters.values().map(Vec::len).sum::<usize>() > MOST_NAMES {
            letters.clear();
        }
        let letters = letters.into_iter().map(|((_, letter), mut names)| {
            names.sort_by_cached_key(|name| (name.name.to_lowercase(), name.species.clone(), name.of.clone()));
            LetterNames { letter, names }
        });
        Ok(PiecesPage { page, count: species_of.len(), species: species.collect(), letters: letters.collect() })
    }

    /// What a piece is called here, then its other trade names.
    fn names_of_piece(&self, page: &str, piece: &str, species: &str) -> Vec<PieceName> {
        let own = self.piece(piece);
        let href = paths::link_to_piece(page, species, piece);
        let species = self.species_name(species);
        let name = |id: &str, name: String, region: String, of: &str| PieceName {
            id: id.to_owned(),
            name,
            region,
            of: of.to_owned(),
            species: species.clone(),
            href: href.clone(),
        };
        let also = self.book.cuts.get(piece).map_or_else(Vec::new, |cut| trade_names(cut, self.book.region.value().map(String::as_str)));
        let also = also.into_iter().map(|other| name("", capitalised(&other.name), other.region, &own));
        std::iter::once(name(piece, own.clone(), String::new(), "")).chain(also).collect()
    }
}

/// The letter under which a name stands, digits and signs after all letters.
fn letter(name: &str) -> (bool, String) {
    match name.chars().find(|character| character.is_alphanumeric()) {
        Some(first) if first.is_alphabetic() => (false, first.to_uppercase().collect()),
        _ => (true, DIGITS.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::letter;

    #[test]
    fn names_stand_under_their_first_letter() {
        assert_eq!(letter("knuckle"), (false, "K".to_owned()));
        assert_eq!(letter("\u{2018}eye\u{2019} fillet"), (false, "E".to_owned()));
        assert_eq!(letter("鮭"), (false, "鮭".to_owned()));
        assert!(letter("416") == letter("--") && letter("416") > letter("Z"));
    }
}
