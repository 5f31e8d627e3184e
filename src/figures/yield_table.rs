//! The yield table: every final piece and the loss, by use, as shares of the start and by weight.
//!
//! The typical column adds up to exactly 100.0 and to the start weight as printed; the sums of uses are sums of what
//! is printed. Low and high are bounds of their own and do not add up.

use serde::Serialize;

use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::rounding::{tenths_of_percent, weights_in_units};
use crate::analysis::shares::{ShareRange, Shares};
use crate::model::Guidebook;
use crate::model::words::Use;

use super::kind::Kind;
use super::numbers::{fixed, short};
use super::share::{Figure, Rounded, Worked};

/// A printed whole.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct YieldTable {
    /// What the work starts from.
    pub start: String,
    /// The worked start weight, as it is written: `7.5`.
    pub worked: String,
    /// The same with two decimals, as the total is printed: `7.50`.
    pub total: String,
    /// `kg` or `lb`.
    pub unit: &'static str,
    /// Uses that occur, in a fixed order, the loss last.
    pub groups: Vec<YieldGroup>,
}

/// All rows of one use.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct YieldGroup {
    /// The use, or loss.
    pub kind: Kind,
    /// The pieces in the order of first giving.
    pub rows: Vec<YieldRow>,
    /// All of them together. The bounds are those of the sum, not sums of bounds.
    pub sum: Figure,
    /// Where the group begins in a bar of the whole, with a percent sign: `73.5%`.
    pub from: String,
    /// How long it is there.
    pub length: String,
}

/// One row.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct YieldRow {
    /// The id of the piece; empty for the loss.
    pub piece: String,
    /// What it is called; empty for the loss.
    pub name: String,
    /// The use, or loss.
    pub kind: Kind,
    /// Its share of the start and its weight.
    #[serde(flatten)]
    pub figure: Figure,
}

/// The typical values of final pieces as the table prints them.
#[derive(Debug, Clone, Default)]
pub struct RoundedFinals(Vec<(String, Rounded)>, Vec<String>);

impl RoundedFinals {
    /// For the piece at a position of `Network::pieces`, when it is final.
    #[must_use]
    pub fn of(&self, piece: usize) -> Option<Rounded> {
        let id = self.1.get(piece)?;
        self.0.iter().find(|(known, _)| known == id).map(|(_, rounded)| *rounded)
    }
}

impl YieldTable {
    /// The table of a sound procedure, with what it prints for each final piece.
    #[must_use]
    pub fn of_procedure(book: &Guidebook, analysis: &ProcedureAnalysis, worked: Worked) -> Option<(Self, RoundedFinals)> {
        let shares = analysis.shares.as_ref()?;
        let (table, rounded) = Self::of(book, analysis.start.as_deref()?, shares, worked);
        let ids = analysis.network.pieces.iter().map(|piece| piece.id.clone()).collect();
        Some((table, RoundedFinals(rounded, ids)))
    }

    /// The table of all final pieces of `shares`.
    #[must_use]
    pub fn of(book: &Guidebook, start: &str, shares: &Shares, worked: Worked) -> (Self, Vec<(String, Rounded)>) {
        let mut entries: Vec<(Kind, String, ShareRange)> = shares
            .pieces
            .iter()
            .filter(|piece| piece.is_final)
            .map(|piece| (Kind::Final(piece.purpose.unwrap_or(Use::ForCutting)), piece.piece.clone(), piece.share))
            .collect();
        if shares.loss.high > 0.0 {
            entries.push((Kind::Loss, String::new(), shares.loss));
        }
        let typicals: Vec<f64> = entries.iter().map(|(_, _, share)| share.typical).collect();
        let tenths = tenths_of_percent(&typicals);
        let hundredths = weights_in_units(&typicals, worked.in_unit(), 0.01);
        let rounded: Vec<Rounded> = tenths.into_iter().zip(hundredths).map(|(tenths, hundredths)| Rounded { tenths, hundredths }).collect();
        let mut groups = Vec::new();
        let mut from = 0.0;
        for kind in Kind::of_a_whole() {
            let members = || entries.iter().zip(&rounded).filter(|((own, _, _), _)| *own == kind);
            let rows: Vec<YieldRow> = members()
                .map(|((_, piece, share), rounded)| YieldRow {
                    name: if piece.is_empty() { String::new() } else { capitalised(&book.piece_name(piece)) },
                    piece: piece.clone(),
                    kind,
                    figure: Figure::in_whole(*share, worked, *rounded),
                })
                .collect();
            if rows.is_empty() {
                continue;
            }
            let sum = members().fold(Rounded::default(), |sum, (_, row)| Rounded {
                tenths: sum.tenths + row.tenths,
                hundredths: sum.hundredths + row.hundredths,
            });
            let share = together(shares, kind);
            let length = share.typical * 100.0;
            groups.push(YieldGroup {
                kind,
                rows,
                sum: Figure::in_whole(share, worked, sum),
                from: format!("{}%", short(from, 1)),
                length: format!("{}%", short(length, 1)),
            });
            from += length;
        }
        let table = Self {
            start: capitalised(&book.piece_name(start)),
            worked: short(worked.in_unit(), 2),
            total: fixed(worked.in_unit(), 2),
            unit: worked.scale.unit(),
            groups,
        };
        (table, entries.into_iter().map(|(_, piece, _)| piece).zip(rounded).collect())
    }

    /// All rows, group by group.
    pub fn rows(&self) -> impl Iterator<Item = &YieldRow> {
        self.groups.iter().flat_map(|group| &group.rows)
    }
}

/// What all pieces of one kind can come to together.
fn together(shares: &Shares, kind: Kind) -> ShareRange {
    if kind == Kind::Loss {
        return shares.loss;
    }
    let is_kind = |purpose: Option<Use>| Kind::Final(purpose.unwrap_or(Use::ForCutting)) == kind;
    shares.weighted(|piece| if is_kind(piece.purpose) { 1.0 } else { 0.0 }, 0.0)
}

/// With a capital first letter.
#[must_use]
pub fn capitalised(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
