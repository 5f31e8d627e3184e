//! All that follows from one procedure by itself.

use crate::model::quantity::{Range, Share};
use crate::model::words::Use;
use crate::model::{Guidebook, Procedure};

use super::clock::ColdClock;
use super::counts::Counts;
use super::evidence::{Evidence, TestRuns, evidence_of};
use super::facts::PieceFacts;
use super::joint::Joint;
use super::minutes::MinuteTotals;
use super::network::Network;
use super::portions::{PortionFit, portion_fits};
use super::shares::Shares;
use super::starts::Starts;
use super::step_balance::StepBalance;
use super::uses::FinalUse;

/// What follows from one procedure. Lists beside `network.pieces` have one entry for each of its pieces.
#[derive(Debug, Clone)]
pub struct ProcedureAnalysis {
    /// The procedure's id.
    pub id: String,
    /// The piece that it starts from.
    pub start: Option<String>,
    /// One for each step; `None` where a share could not be read.
    pub balances: Vec<Option<StepBalance>>,
    /// Pieces, steps and what is wrong with their order.
    pub network: Network,
    /// What the outputs of each piece say together, beside `network.pieces`.
    pub facts: Vec<PieceFacts>,
    /// The use of each final piece, beside `network.pieces`; `None` for pieces that are taken and the start.
    pub uses: Vec<Option<FinalUse>>,
    /// Where the figures of each final piece come from, beside `network.pieces`; `None` as above.
    pub evidence: Vec<Option<Evidence>>,
    /// Shares of the start; `None` unless order and balance are sound.
    pub shares: Option<Shares>,
    /// Minutes of all steps.
    pub minutes: MinuteTotals,
    /// Time out of the cold; `None` unless the order is sound and every `back-to-cold` could be read.
    pub cold: Option<ColdClock>,
    /// Counted parts.
    pub counts: Counts,
    /// How portions fit their pieces, in the order of first giving.
    pub portions: Vec<PortionFit>,
    /// Declared yields held against the steps; `None` when none are declared, or the shares are not known.
    pub joint: Option<Joint>,
}

impl ProcedureAnalysis {
    /// Computes everything for one procedure.
    pub(super) fn of(guidebook: &Guidebook, procedure: &Procedure, starts: &Starts, runs: &TestRuns) -> Self {
        let balances: Vec<Option<StepBalance>> = procedure.steps.iter().map(StepBalance::of).collect();
        let network = Network::of(procedure);
        let facts: Vec<PieceFacts> = network.pieces.iter().map(|piece| PieceFacts::of(procedure, piece)).collect();
        let mut uses = Vec::with_capacity(facts.len());
        let mut evidence = Vec::with_capacity(facts.len());
        for (piece, facts) in network.pieces.iter().zip(&facts) {
            let counts = piece.is_final() && !piece.is_start;
            let goes_on = || starts.another_starts_from(&piece.id, procedure, guidebook);
            uses.push(counts.then(|| FinalUse::of(facts, goes_on())));
            evidence.push(counts.then(|| evidence_of(procedure, piece, runs)));
        }
        let purposes: Vec<Option<Use>> = uses.iter().map(|entry| entry.and_then(FinalUse::purpose)).collect();
        let shares = Shares::of(&network, &balances, &purposes);
        let portions = shares.as_ref().map(|shares| portion_fits(procedure, &network, &facts, shares)).unwrap_or_default();
        let joint = shares.as_ref().and_then(|shares| Joint::of(procedure, &network, shares));
        Self {
            id: procedure.id.clone(),
            start: procedure.start.piece.value().cloned(),
            minutes: MinuteTotals::of(procedure),
            cold: ColdClock::of(procedure, &network),
            counts: Counts::of(procedure, &network),
            balances,
            facts,
            uses,
            evidence,
            shares,
            portions,
            joint,
            network,
        }
    }

    /// True when order and balance are sound, so that there are figures.
    #[must_use]
    pub const fn is_sound(&self) -> bool {
        self.shares.is_some()
    }

    /// The stated range of an output as a share of what its step takes, with `rest` resolved.
    #[must_use]
    pub fn stated_range(&self, step: usize, output: usize) -> Option<Range<Share>> {
        Some(self.balances.get(step)?.as_ref()?.outputs.get(output)?.stated)
    }
}
