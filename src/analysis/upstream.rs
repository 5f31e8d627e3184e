//! Which steps a step cannot do without: those that give what it takes, and what these take in turn.

use std::collections::BTreeSet;

use super::network::{NetworkPiece, NetworkStep};

/// True when `step` is `other`, or takes something that comes from it, whatever the order of the steps.
#[must_use]
pub fn needs(pieces: &[NetworkPiece], steps: &[NetworkStep], step: usize, other: usize) -> bool {
    let mut seen = BTreeSet::from([step]);
    let mut open = vec![step];
    while let Some(step) = open.pop() {
        if step == other {
            return true;
        }
        let takes = steps.get(step).into_iter().flat_map(|step| step.takes.iter().flatten());
        for giving in takes.filter_map(|piece| pieces.get(*piece)).flat_map(|piece| piece.given_by.iter()) {
            if seen.insert(giving.step) {
                open.push(giving.step);
            }
        }
    }
    false
}
