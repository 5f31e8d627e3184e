//! What follows from a guidebook: balance, order, shares of the start, chains, counts, portions, time.
//!
//! Pure and total: it imports the model, makes no findings and no text, and never fails. What cannot be
//! known is absent (`None`), never wrong. Checks, figures, site and tally read it.

pub mod facts;
pub mod flow;
pub mod network;
pub mod order;
pub mod shares;
pub mod starts;
pub mod step_balance;
pub mod typicals;
pub mod uses;


use crate::model::Guidebook;

/// All that is computed of a guidebook.
#[derive(Debug)]
pub struct Analysis {}

impl Analysis {
    /// Computes it.
    #[must_use]
    pub fn of(_book: &Guidebook) -> Self {
        Self {}
    }
}
