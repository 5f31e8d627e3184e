//! How many portions come of a piece, and whether they fit it at all.

use crate::model::Procedure;
use crate::model::quantity::{Mass, Range};

use super::facts::{PieceFacts, PortionSpec};
use super::network::Network;
use super::shares::{ShareRange, Shares};

/// A portion counts when only rounding of derived weights is missing from it.
const TOLERANCE: f64 = 1e-9;

/// Whether portions fit a piece. The lightest portion of the stated range is what is held against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PortionVerdict {
    /// Even the lightest piece gives the stated count, or one portion where none is stated.
    Fits,
    /// The heaviest piece gives them, the lightest does not.
    HardlyFits,
    /// Even the heaviest piece does not.
    NeverFits,
}

/// How many portions come of all pieces together: the floor for each piece, times the pieces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PortionCounts {
    /// The lightest piece in the heaviest portions: the number to promise. A piece that is itself no heavier
    /// than the heaviest portion, and no lighter than the lightest, gives one.
    pub low: u64,
    /// The typical piece in portions of the middle weight.
    pub typical: u64,
    /// The heaviest piece in the lightest portions.
    pub high: u64,
}

/// Portions by weight, held against the piece that they are cut from. Weights are kilograms of one piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PortionFit {
    /// The piece, as a position in `Network::pieces`.
    pub piece: usize,
    /// What was stated.
    pub spec: PortionSpec,
    /// The weight of one portion.
    pub portion: Range<Mass>,
    /// How many pieces lie together.
    pub together: u32,
    /// One piece: lightest, at the typical start weight and share, heaviest.
    pub one_piece: ShareRange,
    /// Whether they fit.
    pub verdict: PortionVerdict,
    /// How many come out.
    pub counts: PortionCounts,
}

/// All portions by weight whose piece has a known weight, in the order of first giving.
#[must_use]
pub fn portion_fits(procedure: &Procedure, network: &Network, facts: &[PieceFacts], shares: &Shares) -> Vec<PortionFit> {
    let start = &procedure.start;
    let (Some(weight), Some(typical), false) = (start.weight.value(), start.typical_mass(), start.typical.is_broken()) else {
        return Vec::new();
    };
    network
        .given()
        .zip(&shares.pieces)
        .filter_map(|((at, _), share)| {
            let facts = facts.get(at)?;
            let spec = *facts.portions.value()?;
            let portion = spec.weight.filter(|portion| portion.low.picograms() > 0)?;
            let together = facts.pieces_together()?;
            let one = f64::from(together);
            let one_piece = ShareRange {
                low: weight.low.kilograms() * share.share.low / one,
                typical: typical.kilograms() * share.share.typical / one,
                high: weight.high.kilograms() * share.share.high / one,
            };
            let (verdict, counts) = fit(one_piece, portion, spec.count, together);
            Some(PortionFit { piece: at, spec, portion, together, one_piece, verdict, counts })
        })
        .collect()
}

/// The verdict and the counts for pieces of these weights.
fn fit(piece: ShareRange, portion: Range<Mass>, wanted: Option<Range<u32>>, together: u32) -> (PortionVerdict, PortionCounts) {
    let portion = portion.map(Mass::kilograms);
    let times = u64::from(together);
    let most = |piece: f64| whole(piece, portion.low) * times;
    let wanted = wanted.map_or(1, |count| u64::from(count.low)).max(1);
    let verdict = if most(piece.high) < wanted {
        PortionVerdict::NeverFits
    } else if most(piece.low) < wanted {
        PortionVerdict::HardlyFits
    } else {
        PortionVerdict::Fits
    };
    // One portion at least where the piece as it lies is a portion inside the stated range.
    let at_least = |piece: f64, portions: u64| portions.max(whole(piece, portion.low).min(1)) * times;
    let middle = f64::midpoint(portion.low, portion.high);
    let counts = PortionCounts {
        low: at_least(piece.low, whole(piece.low, portion.high)),
        typical: at_least(piece.typical, whole(piece.typical, middle)),
        high: most(piece.high),
    };
    (verdict, counts)
}

/// How many whole portions of this weight are in a piece.
fn whole(piece: f64, portion: f64) -> u64 {
    let portions = (piece / portion * (1.0 + TOLERANCE)).floor();
    if portions.is_finite() && portions > 0.0 { portions as u64 } else { 0 }
}
