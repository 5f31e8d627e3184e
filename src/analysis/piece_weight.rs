//! What one piece of a procedure weighs, over all start weights for which the procedure is written.

use crate::model::Procedure;
use crate::model::quantity::Range;

use super::procedure::ProcedureAnalysis;

/// Kilograms of one piece: lightest start at the lowest share to heaviest start at the highest, divided by how
/// many lie together. `piece` is a position in `Network::pieces`; `None` when a weight is not known.
#[must_use]
pub fn one_piece(procedure: &Procedure, analysis: &ProcedureAnalysis, piece: usize) -> Option<Range<f64>> {
    let start = procedure.start.weight.value()?;
    let node = analysis.network.pieces.get(piece)?;
    if node.is_start {
        return Some(Range { low: start.low.kilograms(), high: start.high.kilograms() });
    }
    // The start is the first piece of a sound network and is not among the shares.
    let share = analysis.shares.as_ref()?.pieces.get(piece.checked_sub(1)?)?.share;
    let one = f64::from(analysis.facts.get(piece)?.pieces_together()?);
    Some(Range { low: start.low.kilograms() * share.low / one, high: start.high.kilograms() * share.high / one })
}
