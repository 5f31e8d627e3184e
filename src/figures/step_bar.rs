//! The step bar: what a step takes as one bar, parted into what it gives, with the reach of each cut.
//!
//! Parts are as long as their typical shares. Between two parts the cut may fall anywhere between two bounds: so much at
//! least, and so much at most, goes to all parts left of it. Those bounds are exact, as the parts of a step make up the whole.

use serde::Serialize;

use crate::analysis::shares::ShareRange;

use super::kind::Kind;
use super::numbers::short;

/// The bar of a step. All lengths are along the whole, with a percent sign, as SVG takes them: `4.5%`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepBar {
    /// What the step gives, in its order, the loss last.
    pub parts: Vec<BarPart>,
    /// Where one part ends and the next begins.
    pub cuts: Vec<BarCut>,
}

/// A part.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BarPart {
    /// What becomes of it.
    pub kind: Kind,
    /// Where it begins, at typical shares.
    pub from: String,
    /// How long it is.
    pub length: String,
}

/// The cut between two parts.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BarCut {
    /// Where it lies, at typical shares.
    pub typical: String,
    /// The least that can lie left of it.
    pub from: String,
    /// How far it can move from there.
    pub length: String,
}

impl StepBar {
    /// The bar of outputs with their shares of the step, as fractions of 1 that can occur beside each other.
    #[must_use]
    pub fn of(outputs: &[(Kind, ShareRange)]) -> Self {
        let length = |share: f64| format!("{}%", short(share.clamp(0.0, 1.0) * 100.0, 1));
        let (mut parts, mut cuts) = (Vec::with_capacity(outputs.len()), Vec::new());
        let mut before = ShareRange::default();
        for (at, (kind, share)) in outputs.iter().enumerate() {
            parts.push(BarPart { kind: *kind, from: length(before.typical), length: length(share.typical) });
            before = ShareRange { low: before.low + share.low, typical: before.typical + share.typical, high: before.high + share.high };
            let behind = outputs.get(at + 1..).unwrap_or(&[]);
            if behind.is_empty() {
                break;
            }
            let least: f64 = behind.iter().map(|(_, share)| share.low).sum();
            let most: f64 = behind.iter().map(|(_, share)| share.high).sum();
            let (low, high) = (before.low.max(1.0 - most), before.high.min(1.0 - least));
            cuts.push(BarCut { typical: length(before.typical), from: length(low), length: length((high - low).max(0.0)) });
        }
        Self { parts, cuts }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::words::Use;

    fn share(low: f64, typical: f64, high: f64) -> ShareRange {
        ShareRange { low, typical, high }
    }

    #[test]
    fn two_parts_have_one_cut_between_the_bounds_of_the_first() {
        let bar = StepBar::of(&[(Kind::Onward, share(0.6, 0.7, 0.8)), (Kind::Final(Use::Bone), share(0.2, 0.3, 0.4))]);
        let parts: Vec<(&str, &str)> = bar.parts.iter().map(|part| (part.from.as_str(), part.length.as_str())).collect();
        assert_eq!(parts, [("0%", "70%"), ("70%", "30%")]);
        assert_eq!(bar.cuts, [BarCut { typical: "70%".to_owned(), from: "60%".to_owned(), length: "20%".to_owned() }]);
    }

    /// Reckoned by hand: left of the second cut lie 30–50 % by their own bounds, but what stands right of it takes 58–65 %.
    #[test]
    fn a_cut_is_bounded_from_both_sides() {
        let bar = StepBar::of(&[
            (Kind::Final(Use::Retail), share(0.1, 0.15, 0.2)),
            (Kind::Final(Use::FatTrim), share(0.2, 0.23, 0.3)),
            (Kind::Onward, share(0.57, 0.6, 0.62)),
            (Kind::Loss, share(0.01, 0.02, 0.03)),
        ]);
        let cuts: Vec<(&str, &str, &str)> =
            bar.cuts.iter().map(|cut| (cut.from.as_str(), cut.typical.as_str(), cut.length.as_str())).collect();
        assert_eq!(cuts, [("10%", "15%", "10%"), ("35%", "38%", "7%"), ("97%", "98%", "2%")]);
    }

    #[test]
    fn one_part_has_no_cut() {
        let bar = StepBar::of(&[(Kind::Onward, share(1.0, 1.0, 1.0))]);
        assert_eq!((bar.parts.len(), bar.cuts.len()), (1, 0));
        assert_eq!(StepBar::of(&[]), StepBar { parts: Vec::new(), cuts: Vec::new() });
    }
}
