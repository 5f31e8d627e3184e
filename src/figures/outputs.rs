//! What each step gives: its share of the step and of the start, and where it goes.
//!
//! A share of the start is exact: what a step takes depends on other steps alone, and their choices are free of its
//! own, so the least is the least taken times the least share, and the greatest likewise.

use serde::Serialize;

use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::rounding::tenths_of_percent;
use crate::analysis::shares::ShareRange;
use crate::analysis::step_balance::{OutputBalance, Slot};
use crate::analysis::typicals::Typicals;
use crate::model::quantity::{Range, Share};
use crate::model::words::Use;

use super::kind::Kind;
use super::share::{Percent, Weight, Worked};
use super::step_bar::StepBar;
use super::yield_table::RoundedFinals;

/// One step in figures.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepFigures {
    /// What it takes, as a share of the start; fractions of 1.
    #[serde(skip)]
    pub taken: ShareRange,
    /// What it gives in the order in which it stands, the loss last; a loss that is always zero is left out.
    pub outputs: Vec<Output>,
    /// All of it as one bar.
    pub bar: StepBar,
}

/// One output of a step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Output {
    /// The position in `Step::give`; `None` for the loss.
    #[serde(skip)]
    pub give: Option<usize>,
    /// The position in `Network::pieces`; `None` for the loss.
    #[serde(skip)]
    pub piece: Option<usize>,
    /// What becomes of it.
    pub kind: Kind,
    /// The step that takes it, counted from 1.
    pub to_step: Option<usize>,
    /// Its share of what the step takes.
    pub of_step: Percent,
    /// Its share of the start.
    pub of_start: Percent,
    /// Its weight at the worked start.
    pub weight: Weight,
    /// The typical share of the start, as a fraction of 1, for drawings.
    #[serde(skip)]
    pub typical: f64,
}

/// The figures of all steps, in order; `None` where order or balance is not sound.
#[must_use]
pub fn step_figures(analysis: &ProcedureAnalysis, worked: Worked, finals: &RoundedFinals) -> Option<Vec<StepFigures>> {
    let shares = analysis.shares.as_ref()?;
    let masses = shares.flow().typical_masses();
    let mut steps = Vec::with_capacity(analysis.balances.len());
    for (ends, balance) in analysis.network.steps.iter().zip(&analysis.balances) {
        let balance = balance.as_ref()?;
        let takes: Vec<usize> = ends.takes.iter().copied().collect::<Option<_>>()?;
        let Range { low, high } = shares.flow().range(takes.iter().map(|node| (*node, 1.0)));
        let typical = takes.iter().filter_map(|node| masses.get(*node)).sum();
        let taken = ShareRange { low, typical, high };
        let Typicals::Found(typicals) = &balance.typicals else { return None };
        let typicals: Vec<f64> = typicals.iter().map(|typical| typical.number()).collect();
        let tenths = tenths_of_percent(&typicals);
        let mut outputs = Vec::with_capacity(balance.outputs.len());
        let mut parts = Vec::with_capacity(balance.outputs.len());
        for ((output, typical), tenths) in balance.outputs.iter().zip(&typicals).zip(tenths) {
            if output.slot == Slot::Loss && output.tight.high == Share::ZERO {
                continue;
            }
            let piece = match output.slot {
                Slot::Give(at) => Some(*ends.gives.get(at)?),
                Slot::Loss => None,
            };
            let of_step = share_of_step(output, *typical);
            let figures = figures(analysis, piece, output.slot, of_step, tenths, taken, worked, finals);
            parts.push((figures.kind, of_step));
            outputs.push(figures);
        }
        steps.push(StepFigures { taken, outputs, bar: StepBar::of(&parts) });
    }
    Some(steps)
}

#[allow(clippy::too_many_arguments, reason = "all are plain facts of one output")]
fn figures(
    analysis: &ProcedureAnalysis,
    piece: Option<usize>,
    slot: Slot,
    of_step: ShareRange,
    tenths: u64,
    taken: ShareRange,
    worked: Worked,
    finals: &RoundedFinals,
) -> Output {
    let of_start = ShareRange { low: taken.low * of_step.low, typical: taken.typical * of_step.typical, high: taken.high * of_step.high };
    // A piece that one step alone gives stands in the yield table too, and must not differ from it there.
    let rounded = piece.filter(|at| is_given_once(analysis, *at)).and_then(|at| finals.of(at));
    Output {
        give: if let Slot::Give(at) = slot { Some(at) } else { None },
        piece,
        kind: piece.map_or(Kind::Loss, |at| kind_of(analysis, at)),
        to_step: piece.and_then(|at| analysis.network.pieces.get(at)?.taken_by).map(|taking| taking.step + 1),
        of_step: Percent::in_whole(of_step, tenths),
        of_start: rounded.map_or_else(|| Percent::of(of_start), |rounded| Percent::in_whole(of_start, rounded.tenths)),
        weight: rounded.map_or_else(|| Weight::of(of_start, worked), |rounded| Weight::in_whole(of_start, worked, rounded.hundredths)),
        typical: of_start.typical,
    }
}

/// The values that can occur beside the other outputs.
fn share_of_step(output: &OutputBalance, typical: f64) -> ShareRange {
    ShareRange { low: output.tight.low.fraction(), typical, high: output.tight.high.fraction() }
}

/// What becomes of a piece; one whose use nobody states goes on to be cut.
#[must_use]
pub fn kind_of(analysis: &ProcedureAnalysis, piece: usize) -> Kind {
    let taken = analysis.network.pieces.get(piece).is_some_and(|node| node.taken_by.is_some());
    if taken {
        return Kind::Onward;
    }
    let purpose = analysis.uses.get(piece).copied().flatten().and_then(crate::analysis::uses::FinalUse::purpose);
    Kind::Final(purpose.unwrap_or(Use::ForCutting))
}

fn is_given_once(analysis: &ProcedureAnalysis, piece: usize) -> bool {
    analysis.network.pieces.get(piece).is_some_and(|node| node.given_by.len() == 1)
}
