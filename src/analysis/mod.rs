//! What follows from a guidebook: balance, order, shares of the start, chains, counts, portions, time.
//!
//! Pure and total: it imports the model, makes no findings and no text, and never fails. What cannot be
//! known is absent (`None`), never wrong. Checks, figures, site and tally read it. `Analysis::of` computes
//! all of it once, in time about linear in the size of the guidebook.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail"))]

pub mod anatomy;
pub mod chain;
pub mod clock;
pub mod cold_limits;
pub mod counts;
pub mod demands;
pub mod evidence;
pub mod facts;
pub mod flow;
pub mod hand_over;
pub mod house_cuts;
pub mod joint;
pub mod minutes;
pub mod network;
pub mod order;
pub mod part_counts;
pub mod piece_weight;
pub mod portions;
pub mod procedure;
pub mod reconcile;
pub mod regions;
pub mod risk_material;
pub mod rounding;
pub mod shares;
pub mod starts;
pub mod step_balance;
mod stretches;
pub mod takes;
pub mod travel;
pub mod typicals;
pub mod upstream;
pub mod uses;

#[cfg(test)]
mod clock_tests;
#[cfg(test)]
mod hazard_tests;
#[cfg(test)]
mod random_networks;
#[cfg(test)]
mod shares_oracle;
#[cfg(test)]
mod testing;

use rayon::prelude::*;

use crate::model::Guidebook;

use chain::{Chain, chains};
use evidence::TestRuns;
use hand_over::{HandOver, hand_overs};
use house_cuts::HouseCuts;
use procedure::ProcedureAnalysis;
use starts::Starts;

/// All that follows from a guidebook.
#[derive(Debug, Clone)]
pub struct Analysis {
    /// One for each entry of `Guidebook::procedures`, in the same order.
    pub procedures: Vec<ProcedureAnalysis>,
    /// One for each starting piece that no procedure gives and that has a house cut.
    pub chains: Vec<Chain>,
    /// House cuts that lead back to themselves: ids of procedures in the order of work.
    pub cycles: Vec<Vec<String>>,
    /// Each piece that one procedure gives and another's house cut starts from, with both weights.
    pub hand_overs: Vec<HandOver>,
    /// Which procedures start from which piece.
    pub starts: Starts,
    /// Which procedure carries on with what another gives.
    pub house_cuts: HouseCuts,
    /// Weighed runs, counted.
    pub test_runs: TestRuns,
}

impl Analysis {
    /// Computes all of it.
    #[must_use]
    pub fn of(guidebook: &Guidebook) -> Self {
        let starts = Starts::of(guidebook);
        let test_runs = TestRuns::of(guidebook);
        let procedures: Vec<ProcedureAnalysis> =
            guidebook.procedures.par_iter().map(|procedure| ProcedureAnalysis::of(guidebook, procedure, &starts, &test_runs)).collect();
        let house_cuts = HouseCuts::of(&procedures, &starts);
        let chains = chains(&procedures, &starts, &house_cuts);
        let hand_overs = hand_overs(guidebook, &procedures, &house_cuts);
        let name = |at: usize| procedures.get(at).map(|procedure| procedure.id.clone());
        let cycles = house_cuts.cycles().into_iter().map(|cycle| cycle.into_iter().filter_map(name).collect()).collect();
        Self { procedures, chains, cycles, hand_overs, starts, house_cuts, test_runs }
    }

    /// What follows from the procedure with this id; procedures stand in the order of their ids.
    #[must_use]
    pub fn procedure(&self, id: &str) -> Option<&ProcedureAnalysis> {
        let at = self.procedures.binary_search_by(|procedure| procedure.id.as_str().cmp(id)).ok()?;
        self.procedures.get(at)
    }
}
