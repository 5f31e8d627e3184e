//! Start weights that something else contradicts already: what is computed from them stays silent.

use std::collections::BTreeSet;

use crate::analysis::hand_over::Fit;
use crate::checks::Subject;
use crate::model::Procedure;
use crate::model::guidebook::Cut;
use crate::model::quantity::{Mass, Range};

/// Rounding of derived weights: below a billionth of a weight nothing is said.
const TOLERANCE: f64 = 1e-9;

/// Procedures whose start weight is in doubt, by position in the guidebook.
pub(super) struct Doubtful {
    by_cut_list: BTreeSet<usize>,
    by_giver: BTreeSet<usize>,
}

impl Doubtful {
    /// Looks through all procedures once.
    pub(super) fn of(subject: &Subject<'_>) -> Self {
        let by_cut_list = subject.procedures().filter(|(_, procedure, _)| start_contradicts(subject, procedure)).map(|(at, ..)| at);
        let by_cut_list: BTreeSet<usize> = by_cut_list.collect();
        let never = subject.analysis.hand_overs.iter().filter(|hand_over| hand_over.fit == Fit::NeverMeets);
        let by_giver = never.filter(|hand_over| !by_cut_list.contains(&hand_over.giver)).map(|hand_over| hand_over.taker).collect();
        Self { by_cut_list, by_giver }
    }

    /// True when the cut list gives the start piece another weight.
    pub(super) fn by_cut_list(&self, procedure: usize) -> bool {
        self.by_cut_list.contains(&procedure)
    }

    /// True when a procedure gives the start piece at weights that never meet the start weight.
    pub(super) fn by_giver(&self, procedure: usize) -> bool {
        self.by_giver.contains(&procedure)
    }

    /// True when the start weight is in doubt for either reason.
    pub(super) fn holds(&self, procedure: usize) -> bool {
        self.by_cut_list(procedure) || self.by_giver(procedure)
    }
}

fn start_contradicts(subject: &Subject<'_>, procedure: &Procedure) -> bool {
    let cut = procedure.start.piece.value().and_then(|piece| subject.book.cuts.get(piece));
    let weight = procedure.start.weight.value().map(|weight| weight.map(Mass::kilograms));
    cut.zip(weight).is_some_and(|(cut, weight)| miss(cut, weight).is_some())
}

/// By how many kilograms one piece never meets the usual weight in the cut list, and on which side.
pub(super) fn miss(cut: &Cut, found: Range<f64>) -> Option<(f64, &'static str)> {
    let usual = cut.weight.value()?.map(Mass::kilograms);
    let slack = TOLERANCE * usual.high;
    if found.low > usual.high + slack {
        Some((found.low - usual.high, "much"))
    } else if found.high < usual.low - slack {
        Some((usual.low - found.high, "little"))
    } else {
        None
    }
}
