//! What a step typically takes, also in a procedure that is not sound as a whole.
//!
//! `Shares` has figures only where every step is sound. A finding about one faulty step still wants to say
//! how much meat is at stake; here the typical shares are followed through the sound steps before it.

use super::network::Network;
use super::step_balance::{Slot, StepBalance};
use super::typicals::Typicals;

/// The typical weight that a step takes, for a start of weight 1.
///
/// `None` when something before the step is not sound, or is only given later. `balances` has one entry a step.
#[must_use]
pub fn typical_take(network: &Network, balances: &[Option<StepBalance>], step: usize) -> Option<f64> {
    let mut masses: Vec<Option<f64>> = network.pieces.iter().map(|piece| Some(if piece.is_start { 1.0 } else { 0.0 })).collect();
    for (at, (ends, balance)) in network.steps.iter().zip(balances).enumerate().take(step) {
        let taken = taken(network, &masses, at);
        let typicals = balance.as_ref().map(|balance| (&balance.outputs, &balance.typicals));
        for (output, piece) in ends.gives.iter().enumerate() {
            let share = typicals.and_then(|(outputs, typicals)| {
                let Typicals::Found(fractions) = typicals else { return None };
                let position = outputs.iter().position(|balance| balance.slot == Slot::Give(output))?;
                Some(fractions.get(position)?.number())
            });
            if let Some(mass) = masses.get_mut(*piece) {
                *mass = mass.zip(taken).zip(share).map(|((mass, taken), share)| mass + taken * share);
            }
        }
    }
    taken(network, &masses, step)
}

/// The weight of all that a step takes; `None` when a piece of it is unknown or not all there yet.
fn taken(network: &Network, masses: &[Option<f64>], step: usize) -> Option<f64> {
    let ends = network.steps.get(step)?;
    if ends.takes.is_empty() {
        return None;
    }
    ends.takes.iter().try_fold(0.0, |sum, piece| {
        let at = (*piece)?;
        let all_there = network.pieces.get(at)?.given_by.iter().all(|giving| giving.step < step);
        masses.get(at).copied().flatten().filter(|_| all_there).map(|mass| sum + mass)
    })
}
