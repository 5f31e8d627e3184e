//! The cut map of a species: its pieces, and the guides that lead from one to others, as a graph with figures.
//!
//! A piece is one node however many guides give it. What a guide gives and takes up again itself stands inside it. A share
//! is of the first start where one chain of house cuts leads to the piece, else of the start of the one guide that gives
//! it; where neither is so, there is none.

use std::collections::{BTreeMap, BTreeSet};

use crate::analysis::Analysis;
use crate::analysis::shares::{ShareRange, Shares};
use crate::model::Guidebook;

use super::kind::Kind;
use super::outputs::kind_of;
use super::share::{Figure, Worked};
use super::units::Scale;
use super::yield_table::{YieldTable, capitalised};

/// A species with more pieces has no map: nobody reads it, and a picture of that length is shown by few phones.
pub const MOST_PIECES: usize = 600;

/// How many pieces the map of some procedures would have.
#[must_use]
pub fn size(analysis: &Analysis, procedures: impl Iterator<Item = usize>) -> usize {
    let networks = procedures.filter_map(|at| analysis.procedures.get(at)).map(|own| &own.network);
    let pieces: BTreeSet<&str> = networks.flat_map(|network| network.pieces.iter().map(|piece| piece.id.as_str())).collect();
    pieces.len()
}

/// A species as a graph.
#[derive(Debug, Clone, PartialEq)]
pub struct CutMap {
    /// In the order of first giving, guide after guide.
    pub pieces: Vec<MapPiece>,
    /// In the order of their ids.
    pub guides: Vec<MapGuide>,
    /// What shares are of.
    pub wholes: Vec<Whole>,
}

/// A piece.
#[derive(Debug, Clone, PartialEq)]
pub struct MapPiece {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// What becomes of it; `None` for a start that no guide gives, `Onward` for what only stands inside guides.
    pub kind: Option<Kind>,
    /// The guides that give it, as positions in `guides`.
    pub given_by: Vec<usize>,
    /// The guides that start from it.
    pub cut_by: Vec<usize>,
    /// The guides inside which it is given and taken up again, each with the step that takes it, counted from 1.
    pub inside: Vec<(usize, usize)>,
    /// Its share and weight, and the position of the whole.
    pub figure: Option<(usize, Figure)>,
}

/// A guide.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MapGuide {
    /// Its position in `Guidebook::procedures`.
    pub at: usize,
    /// What it is called.
    pub title: String,
    /// True for the usual way to break its start here.
    pub house_cut: bool,
    /// What it starts from, as a position in `pieces`.
    pub start: Option<usize>,
    /// What it gives, in the order of first giving.
    pub gives: Vec<usize>,
    /// What stands inside it, in the order of first giving.
    pub inside: Vec<usize>,
}

/// What shares are of: a start with its worked weight.
#[derive(Debug, Clone, PartialEq)]
pub struct Whole {
    /// What it is called.
    pub name: String,
    /// The worked weight, as it is written.
    pub weight: String,
    /// `kg` or `lb`.
    pub unit: &'static str,
    /// True when no guide of the map gives the start.
    pub is_first: bool,
    /// What is lost on the way to all its pieces, when something is.
    pub loss: Option<Figure>,
}

impl CutMap {
    /// The map of some procedures, given as positions in the guidebook.
    #[must_use]
    pub fn of(book: &Guidebook, analysis: &Analysis, procedures: impl Iterator<Item = usize>, scale: Scale) -> Self {
        let mut map = Self { pieces: Vec::new(), guides: Vec::new(), wholes: Vec::new() };
        let mut index = BTreeMap::new();
        for at in procedures {
            map.add(book, analysis, at, &mut index);
        }
        map.chains(book, analysis, scale, &index);
        map.alone(book, analysis, scale, &index);
        map
    }

    /// Adds a guide with its pieces.
    fn add(&mut self, book: &Guidebook, analysis: &Analysis, at: usize, index: &mut BTreeMap<String, usize>) {
        let (Some(procedure), Some(own)) = (book.procedures.get(at), analysis.procedures.get(at)) else { return };
        let number = self.guides.len();
        let mut guide = MapGuide {
            at,
            title: procedure.title.value().unwrap_or(&procedure.id).clone(),
            house_cut: procedure.house_cut.value() == Some(&true),
            start: None,
            gives: Vec::new(),
            inside: Vec::new(),
        };
        for (position, node) in own.network.pieces.iter().enumerate() {
            let place = *index.entry(node.id.clone()).or_insert_with(|| {
                let name = capitalised(&book.piece_name(&node.id));
                let empty = (Vec::new(), Vec::new(), Vec::new());
                let (given_by, cut_by, inside) = empty;
                self.pieces.push(MapPiece { id: node.id.clone(), name, kind: None, given_by, cut_by, inside, figure: None });
                self.pieces.len() - 1
            });
            let Some(piece) = self.pieces.get_mut(place) else { continue };
            if node.is_start {
                guide.start = Some(place);
                piece.cut_by.push(number);
            } else if node.is_final() {
                piece.given_by.push(number);
                // Where two guides say otherwise of one piece, the first is shown; a check tells of it.
                piece.kind = piece.kind.filter(|kind| *kind != Kind::Onward).or_else(|| Some(kind_of(own, position)));
                guide.gives.push(place);
            } else if let Some(taking) = node.taken_by {
                piece.inside.push((number, taking.step + 1));
                piece.kind = piece.kind.or(Some(Kind::Onward));
                guide.inside.push(place);
            }
        }
        self.guides.push(guide);
    }

    /// Figures of what one chain alone leads to.
    fn chains(&mut self, book: &Guidebook, analysis: &Analysis, scale: Scale, index: &BTreeMap<String, usize>) {
        let mut found: BTreeMap<usize, Vec<(usize, Figure)>> = BTreeMap::new();
        for chain in analysis.chains.iter().filter(|chain| index.contains_key(&chain.start)) {
            let first = chain.procedures.first().and_then(|first| book.procedure(first));
            let (Some(shares), Some(worked)) = (&chain.shares, first.and_then(|first| Worked::of(first, scale))) else { continue };
            let figures = self.whole(book, &chain.start, shares, worked, index);
            let whole = self.wholes.len() - 1;
            for (id, figure) in figures {
                if let Some(place) = index.get(&id) {
                    found.entry(*place).or_default().push((whole, figure));
                }
            }
        }
        for (place, mut figures) in found {
            if let (1, Some(piece)) = (figures.len(), self.pieces.get_mut(place)) {
                piece.figure = figures.pop();
            }
        }
    }

    /// Figures of what no chain leads to and one guide alone gives.
    fn alone(&mut self, book: &Guidebook, analysis: &Analysis, scale: Scale, index: &BTreeMap<String, usize>) {
        let chained: BTreeSet<&str> = analysis.chains.iter().flat_map(|chain| chain.procedures.iter().map(String::as_str)).collect();
        for number in 0..self.guides.len() {
            let at = self.guides.get(number).map_or(0, |guide| guide.at);
            let (Some(procedure), Some(own)) = (book.procedures.get(at), analysis.procedures.get(at)) else { continue };
            let (Some(start), Some(shares), Some(worked)) = (&own.start, &own.shares, Worked::of(procedure, scale)) else { continue };
            if chained.contains(procedure.id.as_str()) {
                continue;
            }
            let figures = self.whole(book, start, shares, worked, index);
            let whole = self.wholes.len() - 1;
            for (id, figure) in figures {
                let only = |piece: &&mut MapPiece| {
                    let inside = piece.inside.iter().map(|(guide, _)| *guide);
                    piece.figure.is_none() && piece.given_by.iter().copied().chain(inside).all(|guide| guide == number)
                };
                let piece = index.get(&id).and_then(|place| self.pieces.get_mut(*place)).filter(only);
                if let Some(piece) = piece.filter(|piece| id != *start || piece.given_by.is_empty()) {
                    piece.figure = Some((whole, figure));
                }
            }
        }
    }

    /// Adds a whole and gives the figures of its start and of all its pieces. A final piece has the figure that the table of
    /// the whole prints.
    fn whole(
        &mut self,
        book: &Guidebook,
        start: &str,
        shares: &Shares,
        worked: Worked,
        index: &BTreeMap<String, usize>,
    ) -> Vec<(String, Figure)> {
        let (table, _) = YieldTable::of(book, start, shares, worked);
        let all = ShareRange { low: 1.0, typical: 1.0, high: 1.0 };
        let mut figures = vec![(start.to_owned(), Figure::of(all, worked))];
        let rows: BTreeMap<&str, &Figure> = table.rows().map(|row| (row.piece.as_str(), &row.figure)).collect();
        for piece in &shares.pieces {
            let printed = rows.get(piece.piece.as_str()).map(|figure| (*figure).clone());
            figures.push((piece.piece.clone(), printed.unwrap_or_else(|| Figure::of(piece.share, worked))));
        }
        let loss = table.rows().find(|row| row.kind == Kind::Loss).map(|row| row.figure.clone());
        self.wholes.push(Whole {
            is_first: index.get(start).and_then(|place| self.pieces.get(*place)).is_some_and(|piece| piece.given_by.is_empty()),
            loss,
            name: table.start,
            weight: table.worked,
            unit: table.unit,
        });
        figures
    }
}
