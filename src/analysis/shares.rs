//! Shares of the start for one sound procedure: each piece, the loss, each use, and any weighted total.

use crate::model::quantity::Range;
use crate::model::words::Use;

use super::flow::{Flow, FlowOutput, FlowStep};
use super::network::Network;
use super::step_balance::{Slot, StepBalance};
use super::typicals::Typicals;
use super::uses::by_use;

/// A share of the start, as fractions of 1: least, typical, greatest.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ShareRange {
    /// The least that can occur.
    pub low: f64,
    /// The typical value.
    pub typical: f64,
    /// The greatest that can occur.
    pub high: f64,
}

impl ShareRange {
    /// Least and greatest, without the typical value.
    #[must_use]
    pub const fn range(self) -> Range<f64> {
        Range { low: self.low, high: self.high }
    }

    /// The same with each value changed: to kilograms, to percent.
    #[must_use]
    pub fn map(self, change: impl Fn(f64) -> f64) -> Self {
        Self { low: change(self.low), typical: change(self.typical), high: change(self.high) }
    }
}

/// A piece's share of the start.
#[derive(Debug, Clone, PartialEq)]
pub struct PieceShare {
    /// The piece.
    pub piece: String,
    /// True when no later step takes it.
    pub is_final: bool,
    /// What becomes of a final piece; `None` for others.
    pub purpose: Option<Use>,
    /// Its share of the start.
    pub share: ShareRange,
}

/// What all pieces of one use come to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UseShare {
    /// The use.
    pub purpose: Use,
    /// The share of the start.
    pub share: ShareRange,
}

/// Shares of the start of a sound procedure or chain.
#[derive(Debug, Clone, PartialEq)]
pub struct Shares {
    /// Every piece once, in the order of first giving, without the start.
    pub pieces: Vec<PieceShare>,
    /// The loss of all steps together.
    pub loss: ShareRange,
    /// Each use that occurs, in the order of first giving.
    pub uses: Vec<UseShare>,
    flow: Flow,
    /// The nodes that make up each entry of `pieces`.
    nodes: Vec<Vec<usize>>,
    masses: Vec<f64>,
}

/// A piece that is to stand in the list, with the nodes that make it up.
pub(super) struct Listed {
    pub piece: String,
    pub is_final: bool,
    pub purpose: Option<Use>,
    pub nodes: Vec<usize>,
}

impl Shares {
    /// The shares over a flow; `loss` is the node to which all losses go.
    pub(super) fn over(flow: Flow, listed: Vec<Listed>, loss: usize) -> Self {
        let masses = flow.typical_masses();
        let share = |nodes: &[usize]| {
            let Range { low, high } = flow.range(nodes.iter().map(|node| (*node, 1.0)));
            let typical = nodes.iter().filter_map(|node| masses.get(*node)).sum();
            ShareRange { low, typical, high }
        };
        let loss = share(&[loss]);
        let final_nodes = listed.iter().filter(|entry| entry.is_final);
        let groups = by_use(final_nodes.flat_map(|entry| entry.nodes.iter().map(|node| (*node, entry.purpose))));
        let uses = groups.into_iter().map(|(purpose, nodes)| UseShare { purpose, share: share(&nodes) }).collect();
        let mut pieces = Vec::with_capacity(listed.len());
        let mut nodes = Vec::with_capacity(listed.len());
        for entry in listed {
            let purpose = entry.purpose.filter(|_| entry.is_final);
            pieces.push(PieceShare { share: share(&entry.nodes), piece: entry.piece, is_final: entry.is_final, purpose });
            nodes.push(entry.nodes);
        }
        Self { pieces, loss, uses, flow, nodes, masses }
    }

    /// The shares of one procedure, or `None` unless its order and every step are sound.
    #[must_use]
    pub fn of(network: &Network, balances: &[Option<StepBalance>], purposes: &[Option<Use>]) -> Option<Self> {
        let loss = network.pieces.len();
        let nodes: Vec<usize> = (0..loss).collect();
        let steps = flow_steps(network, balances, &nodes, loss)?;
        let flow = Flow::new(loss + 1, 0, steps);
        let listed = network.given().map(|(at, piece)| Listed {
            piece: piece.id.clone(),
            is_final: piece.is_final(),
            purpose: purposes.get(at).copied().flatten(),
            nodes: vec![at],
        });
        let listed = listed.collect();
        Some(Self::over(flow, listed, loss))
    }

    /// The least, typical and greatest of a weighted total of the **final** pieces, for a start of mass 1.
    ///
    /// `weight` is what one unit of mass of a piece counts: 1 for weight, a price for money. `loss` is what
    /// a unit of loss counts, most often 0.
    #[must_use]
    pub fn weighted(&self, weight: impl Fn(&PieceShare) -> f64, loss: f64) -> ShareRange {
        let finals = self.pieces.iter().zip(&self.nodes).filter(|(piece, _)| piece.is_final);
        let mut weights: Vec<(usize, f64)> = Vec::new();
        for (piece, nodes) in finals {
            let worth = weight(piece);
            weights.extend(nodes.iter().map(|node| (*node, worth)));
        }
        weights.push((self.flow.node_count() - 1, loss));
        let typical = weights.iter().filter_map(|(node, worth)| Some(self.masses.get(*node)? * worth)).sum();
        let Range { low, high } = self.flow.range(weights);
        ShareRange { low, typical, high }
    }

    /// The entry of a piece.
    #[must_use]
    pub fn piece(&self, id: &str) -> Option<&PieceShare> {
        self.pieces.iter().find(|piece| piece.piece == id)
    }

    /// The flow of weight behind the figures; its last node is the loss.
    #[must_use]
    pub const fn flow(&self) -> &Flow {
        &self.flow
    }
}

/// The steps of a network as steps of a flow, or `None` when the order or a step is not sound.
///
/// `nodes` says for each piece of the network which node of the flow it is.
pub(super) fn flow_steps(network: &Network, balances: &[Option<StepBalance>], nodes: &[usize], loss: usize) -> Option<Vec<FlowStep>> {
    if !network.is_sound() || balances.len() != network.steps.len() {
        return None;
    }
    let mut steps = Vec::with_capacity(network.steps.len());
    for (step, balance) in network.steps.iter().zip(balances) {
        let balance = balance.as_ref().filter(|balance| balance.is_sound())?;
        let Typicals::Found(typicals) = &balance.typicals else { return None };
        let mut outputs = Vec::with_capacity(balance.outputs.len());
        for (output, typical) in balance.outputs.iter().zip(typicals) {
            let node = match output.slot {
                Slot::Give(at) => *nodes.get(*step.gives.get(at)?)?,
                Slot::Loss => loss,
            };
            outputs.push(FlowOutput { node, range: output.stated, typical: typical.number() });
        }
        let takes = step.takes.iter().map(|piece| nodes.get((*piece)?).copied()).collect::<Option<Vec<usize>>>()?;
        steps.push(FlowStep { takes, outputs });
    }
    Some(steps)
}
