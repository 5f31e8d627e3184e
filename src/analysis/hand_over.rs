//! Does the piece that one procedure gives weigh what the next one is written for?

use crate::model::Guidebook;
use crate::model::quantity::{Mass, Range};

use super::house_cuts::HouseCuts;
use super::procedure::ProcedureAnalysis;

/// Rounding in derived weights: below a billionth of a weight nothing is said.
const TOLERANCE: f64 = 1e-9;

/// How the weight of one piece compares with the taker's start weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fit {
    /// At the giver's typical start weight it always lies inside.
    Inside,
    /// At the giver's typical start weight it can lie outside.
    CanLeave,
    /// Even over the giver's whole range of start weights it never lies inside.
    NeverMeets,
}

/// A piece handed over from one procedure to the house cut that starts from it. Weights are kilograms of one
/// piece: the weight of all that the giver gives under that id, divided by how many lie together.
#[derive(Debug, Clone, PartialEq)]
pub struct HandOver {
    /// The procedure that gives, as a position in the list of procedures.
    pub giver: usize,
    /// The piece, as a position in the giver's network.
    pub piece: usize,
    /// The house cut that takes, as a position in the list of procedures.
    pub taker: usize,
    /// How many lie together.
    pub together: u32,
    /// One piece at the giver's own typical start weight.
    pub at_typical: Range<f64>,
    /// One piece over the giver's own range of start weights.
    pub at_any: Range<f64>,
    /// The start weight that the taker is written for.
    pub wanted: Range<Mass>,
    /// How they compare.
    pub fit: Fit,
}

/// All hand-overs whose weights are known. A giver counts at its own start weight, wherever it stands in a chain.
pub(super) fn hand_overs(guidebook: &Guidebook, procedures: &[ProcedureAnalysis], cuts: &HouseCuts) -> Vec<HandOver> {
    cuts.iter()
        .filter_map(|link| {
            let giver = procedures.get(link.giver)?;
            let together = giver.facts.get(link.piece)?.pieces_together()?;
            // The start is the first piece of the network and is not among the shares.
            let share = giver.shares.as_ref()?.pieces.get(link.piece.checked_sub(1)?)?.share;
            let start = &guidebook.procedures.get(link.giver)?.start;
            let weight = *start.weight.value()?;
            let typical = if start.typical.is_broken() { return None } else { start.typical_mass()?.kilograms() };
            let wanted = *guidebook.procedures.get(link.taker)?.start.weight.value()?;
            let one = f64::from(together);
            let at_typical = Range { low: typical * share.low / one, high: typical * share.high / one };
            let at_any = Range { low: weight.low.kilograms() * share.low / one, high: weight.high.kilograms() * share.high / one };
            let fit = compare(at_typical, at_any, wanted);
            Some(HandOver { giver: link.giver, piece: link.piece, taker: link.taker, together, at_typical, at_any, wanted, fit })
        })
        .collect()
}

/// Compares kilograms of one piece with the range wanted.
fn compare(at_typical: Range<f64>, at_any: Range<f64>, wanted: Range<Mass>) -> Fit {
    let (low, high) = (wanted.low.kilograms(), wanted.high.kilograms());
    let slack = TOLERANCE * high.max(at_any.high);
    if at_any.high < low - slack || at_any.low > high + slack {
        Fit::NeverMeets
    } else if at_typical.low < low - slack || at_typical.high > high + slack {
        Fit::CanLeave
    } else {
        Fit::Inside
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::Analysis;
    use crate::analysis::testing::{given, guidebook, house_cut, kilograms};

    /// A leg of 25 to 28 % of a side of 8 to 12 kg, typically 10, handed to a guide written for `wanted`.
    fn hand_over(wanted: &str, together: u32) -> HandOver {
        let mut leg = house_cut("a/leg", "leg", &["leg -> topside 50 | flank 50"]);
        leg.start.weight = given(kilograms(wanted));
        let side = format!("side -> leg 25-28 x{together} | loin rest");
        let book = guidebook(vec![leg, house_cut("a/side", "side", &[&side])]);
        Analysis::of(&book).hand_overs.first().unwrap().clone()
    }

    #[test]
    fn the_weight_of_one_piece_is_held_against_the_taker() {
        let inside = hand_over("2.5-2.8", 1);
        assert_eq!(inside.fit, Fit::Inside);
        assert!((inside.at_typical.low - 2.5).abs() < 1e-12 && (inside.at_any.high - 3.36).abs() < 1e-12);
        assert_eq!(hand_over("2.51-2.8", 1).fit, Fit::CanLeave);
        assert_eq!(hand_over("3.36-4", 1).fit, Fit::CanLeave);
        assert_eq!(hand_over("3.37-4", 1).fit, Fit::NeverMeets);
        assert_eq!(hand_over("1-1.99", 1).fit, Fit::NeverMeets);
    }

    #[test]
    fn two_together_weigh_half_each() {
        assert_eq!(hand_over("2.5-2.8", 2).fit, Fit::NeverMeets);
        assert_eq!(hand_over("1.25-1.4", 2).fit, Fit::Inside);
    }
}
