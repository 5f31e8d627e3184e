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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::step_balance::StepBalance;
    use crate::analysis::testing::{given, kilograms, procedure};
    use crate::model::Stated;
    use crate::model::procedure::Portions;

    /// One step from a start of this weight; the first output is portioned.
    fn portioned(weight: &str, typical: &str, step: &str, portion: &str, count: Option<u32>) -> PortionFit {
        let mut procedure = procedure("p/p", "start", &[step]);
        procedure.start.weight = given(kilograms(weight));
        procedure.start.typical = given(kilograms(typical).low);
        procedure.steps[0].give[0].portions = given(Portions {
            weight: given(kilograms(portion)),
            thickness: Stated::Absent,
            count: count.map_or(Stated::Absent, |count| given(Range::single(count))),
        });
        let network = Network::of(&procedure);
        let facts: Vec<PieceFacts> = network.pieces.iter().map(|piece| PieceFacts::of(&procedure, piece)).collect();
        let shares = Shares::of(&network, &[StepBalance::of(&procedure.steps[0])], &[None, None, None]).unwrap();
        portion_fits(&procedure, &network, &facts, &shares)[0]
    }

    /// Own judgement figures of an order for salmon: two sides of a gutted fish of 4.5 to 5.5 kg come to
    /// 48.4 to 62.0 % skinless; six portions of 155 to 165 g a side are sure, eight usual.
    #[test]
    fn the_floor_is_taken_for_each_piece() {
        let fit = portioned("4.5-5.5", "5.0", "start -> sides 48.4-62 ~55.2 x2 | other rest", "0.155-0.165", None);
        assert_eq!(fit.verdict, PortionVerdict::Fits);
        assert_eq!(fit.counts, PortionCounts { low: 12, typical: 16, high: 22 });
        // Taken together they would seem to give 13.
        assert_eq!((4.5_f64 * 0.484 / 0.165).floor(), 13.0);
    }

    #[test]
    fn a_piece_inside_the_portion_range_is_one_portion() {
        let fit = portioned("1.6-2.0", "1.8", "start -> legs 31-35 x2 | body rest", "0.240-0.350", None);
        assert_eq!(fit.counts, PortionCounts { low: 2, typical: 2, high: 2 });
        assert_eq!(fit.verdict, PortionVerdict::Fits);
    }

    #[test]
    fn hardly_and_never() {
        let verdict =
            |portion: &str, count: Option<u32>| portioned("8-12", "10", "start -> steak 10-15 | other rest", portion, count).verdict;
        // One piece weighs 0.8 to 1.8 kg.
        assert_eq!(verdict("0.8-0.9", None), PortionVerdict::Fits);
        assert_eq!(verdict("0.81-0.9", None), PortionVerdict::HardlyFits);
        assert_eq!(verdict("1.8-2.0", None), PortionVerdict::HardlyFits);
        assert_eq!(verdict("1.81-2.0", None), PortionVerdict::NeverFits);
        assert_eq!(verdict("0.2-0.25", Some(4)), PortionVerdict::Fits);
        assert_eq!(verdict("0.2-0.25", Some(5)), PortionVerdict::HardlyFits);
        assert_eq!(verdict("0.2-0.25", Some(10)), PortionVerdict::NeverFits);
    }
}
