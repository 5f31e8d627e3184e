//! A piece that a step gave no more: its share is missing there, and a later step takes it in vain.
//!
//! One mistake, seen from both ends: `shares-fall-short` tells it, and `piece-unknown` stays silent.

use crate::analysis::network::Taking;
use crate::analysis::order::OrderFault;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::step_balance::Whole;
use crate::checks::nearest::nearest;
use crate::model::Procedure;

/// For each step that falls short of the whole, in order, the later `take` that names a piece unlike any other.
pub(super) fn left_out(procedure: &Procedure, analysis: &ProcedureAnalysis) -> Vec<(usize, Taking)> {
    let falls_short = |balance: &Option<_>| matches!(balance, Some(Whole::FallsShort(_)));
    let wholes = analysis.balances.iter().map(|balance| balance.as_ref().map(|balance| balance.whole));
    let mut short = wholes.enumerate().filter(|(_, whole)| falls_short(whole)).map(|(step, _)| step).peekable();
    let mut found = Vec::new();
    for fault in &analysis.network.faults {
        let OrderFault::UnknownTake { at } = fault else { continue };
        let Some(name) = procedure.steps.get(at.step).and_then(|step| step.take.get(at.take)) else { continue };
        let misspelt =
            nearest(&name.value, analysis.network.pieces.iter().filter(|piece| piece.taken_by.is_none()).map(|piece| piece.id.as_str()));
        if misspelt.is_none()
            && let Some(step) = short.next_if(|step| *step < at.step)
        {
            found.push((step, *at));
        }
    }
    found
}
