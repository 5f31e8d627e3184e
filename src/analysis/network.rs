//! A procedure as a network: pieces, and the steps that give and take them.
//!
//! Built from whatever could be read; `complete` says whether something may be missing. What is wrong with
//! the order is found in `order.rs` and kept here as data.

use std::collections::BTreeMap;

use crate::model::Procedure;

use super::order::{OrderFault, order_faults};

/// An output of a step, by positions in `Procedure::steps` and `Step::give`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Giving {
    /// The step.
    pub step: usize,
    /// The output within it.
    pub output: usize,
}

/// A piece that a step takes, by positions in `Procedure::steps` and `Step::take`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Taking {
    /// The step.
    pub step: usize,
    /// The name within its `take`.
    pub take: usize,
}

/// A piece of the network.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NetworkPiece {
    /// Its id.
    pub id: String,
    /// True for what the work starts from.
    pub is_start: bool,
    /// The outputs that give it, in the order of work; several for a tub.
    pub given_by: Vec<Giving>,
    /// The first step that takes it.
    pub taken_by: Option<Taking>,
}

impl NetworkPiece {
    /// True when a step gives it and none takes it.
    #[must_use]
    pub const fn is_final(&self) -> bool {
        self.taken_by.is_none() && !self.given_by.is_empty()
    }

    /// True when several steps give it.
    #[must_use]
    pub fn is_tub(&self) -> bool {
        self.given_by.first().map(|giving| giving.step) != self.given_by.last().map(|giving| giving.step)
    }
}

/// The ends of one step, as positions in `Network::pieces`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NetworkStep {
    /// One for each name in `Step::take`; `None` for a piece that nothing gives.
    pub takes: Vec<Option<usize>>,
    /// One for each output in `Step::give`.
    pub gives: Vec<usize>,
}

/// A procedure's pieces and steps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Network {
    /// The start first when it is known, then pieces in the order of first giving.
    pub pieces: Vec<NetworkPiece>,
    /// One for each step.
    pub steps: Vec<NetworkStep>,
    /// What is wrong with the order, step by step.
    pub faults: Vec<OrderFault>,
    /// False when the start, a step, a `take` or a `give` could not be read in full.
    pub complete: bool,
}

impl Network {
    /// The network of a procedure.
    #[must_use]
    pub fn of(procedure: &Procedure) -> Self {
        let mut index: BTreeMap<&str, usize> = BTreeMap::new();
        let mut pieces: Vec<NetworkPiece> = Vec::new();
        if let Some(start) = procedure.start.piece.value() {
            index.insert(start, 0);
            pieces.push(NetworkPiece { id: start.clone(), is_start: true, given_by: Vec::new(), taken_by: None });
        }
        let mut steps: Vec<NetworkStep> = Vec::with_capacity(procedure.steps.len());
        for (step_at, step) in procedure.steps.iter().enumerate() {
            let mut gives = Vec::with_capacity(step.give.len());
            for (output_at, output) in step.give.iter().enumerate() {
                let id = output.piece.value.as_str();
                let piece = *index.entry(id).or_insert_with(|| {
                    pieces.push(NetworkPiece { id: id.to_owned(), is_start: false, given_by: Vec::new(), taken_by: None });
                    pieces.len() - 1
                });
                gives.push(piece);
                if let Some(node) = pieces.get_mut(piece) {
                    node.given_by.push(Giving { step: step_at, output: output_at });
                }
            }
            steps.push(NetworkStep { takes: Vec::new(), gives });
        }
        for (step_at, (step, ends)) in procedure.steps.iter().zip(&mut steps).enumerate() {
            for (take_at, name) in step.take.iter().enumerate() {
                let piece = index.get(name.value.as_str()).copied();
                if let Some(node) = piece.and_then(|piece| pieces.get_mut(piece)) {
                    node.taken_by.get_or_insert(Taking { step: step_at, take: take_at });
                }
                ends.takes.push(piece);
            }
        }
        let complete = procedure.complete
            && procedure.start.piece.value().is_some()
            && !procedure.steps.is_empty()
            && procedure.steps.iter().all(|step| step.take_known && step.give_known && !step.take.is_empty() && !step.give.is_empty());
        let faults = order_faults(&pieces, &steps, complete);
        Self { pieces, steps, faults, complete }
    }

    /// True when everything was read and the order holds, so that weights can be followed.
    #[must_use]
    pub const fn is_sound(&self) -> bool {
        self.complete && self.faults.is_empty()
    }

    /// True when it is certain which pieces are final: no `take` is missing or names an unknown piece.
    #[must_use]
    pub fn finals_are_certain(&self) -> bool {
        self.complete && !self.faults.iter().any(|fault| matches!(fault, OrderFault::UnknownTake { .. }))
    }

    /// Positions of the pieces that steps give, in the order of first giving.
    pub fn given(&self) -> impl Iterator<Item = (usize, &NetworkPiece)> {
        self.pieces.iter().enumerate().filter(|(_, piece)| !piece.is_start)
    }

    /// Positions of the final pieces, in the order of first giving.
    pub fn finals(&self) -> impl Iterator<Item = (usize, &NetworkPiece)> {
        self.given().filter(|(_, piece)| piece.is_final())
    }
}
