//! Declared yields held against the steps, all at once.
//!
//! Each declared share of the start may be reachable alone and still not beside the others. A small linear
//! program over the weights decides: every output between its ends, every step adding up, every declared
//! yield inside its range, each with room to miss at a price of one for one.

use good_lp::{Expression, ProblemVariables, Solution, SolverModel, Variable, constraint, microlp, variable};

use crate::model::Procedure;
use crate::model::quantity::{Range, Share};

use super::flow::Flow;
use super::network::Network;
use super::shares::{ShareRange, Shares};

/// A miss below this is the solver's own rounding.
const TOLERANCE: f64 = 1e-7;

/// One declared yield.
#[derive(Debug, Clone, PartialEq)]
pub struct Declared {
    /// Its position in `Procedure::yields`.
    pub at: usize,
    /// The declared share of the start.
    pub stated: Range<Share>,
    /// What the steps come to; `None` when no step gives the piece.
    pub computed: Option<ShareRange>,
}

impl Declared {
    /// By how much the declared range sticks out of the computed one, below and above; zero where it does not.
    #[must_use]
    pub fn sticks_out(&self) -> (f64, f64) {
        self.computed.map_or((0.0, 0.0), |computed| {
            let size = |miss: f64| if miss > 1e-9 { miss } else { 0.0 };
            (size(computed.low - self.stated.low.fraction()), size(self.stated.high.fraction() - computed.high))
        })
    }

    /// True when it has at least one value in common with the computed range.
    #[must_use]
    pub fn meets(&self) -> bool {
        self.computed
            .is_none_or(|computed| self.stated.low.fraction() <= computed.high + 1e-9 && computed.low <= self.stated.high.fraction() + 1e-9)
    }
}

/// All declared yields of a procedure beside its steps.
#[derive(Debug, Clone, PartialEq)]
pub struct Joint {
    /// Those that could be read, in the order in which they stand.
    pub declared: Vec<Declared>,
    /// The least total by which they miss what the steps can do, as a share of the start; zero when all can
    /// hold at once. `None` when the solver found no answer.
    pub total_miss: Option<f64>,
    /// A smallest set of them that cannot hold together, as positions in `declared`; empty when all can.
    pub conflict: Vec<usize>,
}

impl Joint {
    /// Holds declared yields against the steps; `None` when none are declared.
    #[must_use]
    pub fn of(procedure: &Procedure, network: &Network, shares: &Shares) -> Option<Self> {
        if procedure.yields.is_empty() {
            return None;
        }
        let loss = network.pieces.len();
        let mut declared = Vec::new();
        let mut bounds: Vec<Bound> = Vec::new();
        for (at, stated) in procedure.yields.iter().enumerate() {
            let Some(range) = stated.share.value().copied() else { continue };
            let id = stated.piece.value.as_str();
            let found = network.given().zip(&shares.pieces).find(|((_, piece), _)| piece.id == id);
            let (node, computed) = match found {
                Some(((node, _), piece)) => (Some(node), Some(piece.share)),
                None if id == "loss" => (Some(loss), Some(shares.loss)),
                None => (None, None),
            };
            if let Some(node) = node {
                bounds.push(Bound { declared: declared.len(), node, range: range.map(Share::fraction) });
            }
            declared.push(Declared { at, stated: range, computed });
        }
        if holds_at(&shares.flow().typical_masses(), &bounds) {
            return Some(Self { declared, total_miss: Some(0.0), conflict: Vec::new() });
        }
        let total_miss = least_miss(shares.flow(), &bounds).map(|miss| if miss < TOLERANCE { 0.0 } else { miss });
        let conflict = if total_miss.is_some_and(|miss| miss > 0.0) { smallest_conflict(shares.flow(), bounds) } else { Vec::new() };
        Some(Self { declared, total_miss, conflict })
    }

    /// False when the declared yields cannot hold beside the steps.
    #[must_use]
    pub fn is_possible(&self) -> bool {
        self.conflict.is_empty()
    }
}

/// A declared yield as a bound on the mass at a node.
#[derive(Debug, Clone, Copy)]
struct Bound {
    declared: usize,
    node: usize,
    range: Range<f64>,
}

/// True when all bounds hold for these masses, which spares the solver.
fn holds_at(masses: &[f64], bounds: &[Bound]) -> bool {
    bounds.iter().all(|bound| masses.get(bound.node).is_some_and(|mass| bound.range.contains(*mass)))
}

/// Leaves out each bound without which the others still cannot hold; what stays is a smallest set.
fn smallest_conflict(flow: &Flow, mut bounds: Vec<Bound>) -> Vec<usize> {
    let mut at = 0;
    while at < bounds.len() {
        let mut without = bounds.clone();
        without.remove(at);
        if least_miss(flow, &without).is_some_and(|miss| miss >= TOLERANCE) {
            bounds = without;
        } else {
            at += 1;
        }
    }
    bounds.into_iter().map(|bound| bound.declared).collect()
}

/// The least total by which the masses must miss the bounds; `None` when the solver fails.
fn least_miss(flow: &Flow, bounds: &[Bound]) -> Option<f64> {
    let mut variables = ProblemVariables::new();
    let outputs: Vec<Vec<Variable>> =
        flow.steps().iter().map(|step| step.outputs.iter().map(|_| variables.add(variable().min(0.0))).collect()).collect();
    let misses: Vec<(Variable, Variable)> =
        bounds.iter().map(|_| (variables.add(variable().min(0.0)), variables.add(variable().min(0.0)))).collect();
    let mut masses: Vec<Expression> = vec![Expression::from(0.0); flow.node_count()];
    if let Some(start) = masses.get_mut(flow.start()) {
        *start += 1.0;
    }
    for (step, given) in flow.steps().iter().zip(&outputs) {
        for (output, mass) in step.outputs.iter().zip(given) {
            if let Some(node) = masses.get_mut(output.node) {
                *node += *mass;
            }
        }
    }
    let total: Expression = misses.iter().map(|(under, over)| *under + *over).sum();
    let mut problem = variables.minimise(total.clone()).using(microlp);
    for (step, given) in flow.steps().iter().zip(&outputs) {
        let taken: Expression = step.takes.iter().filter_map(|node| masses.get(*node).cloned()).sum();
        problem = problem.with(constraint!(given.iter().copied().sum::<Expression>() == taken.clone()));
        for (output, mass) in step.outputs.iter().zip(given) {
            problem = problem.with(constraint!(*mass >= output.range.low.fraction() * taken.clone()));
            problem = problem.with(constraint!(*mass <= output.range.high.fraction() * taken.clone()));
        }
    }
    for (bound, (under, over)) in bounds.iter().zip(&misses) {
        let mass = masses.get(bound.node).cloned().unwrap_or_default();
        problem = problem.with(constraint!(mass.clone() + *under >= bound.range.low));
        problem = problem.with(constraint!(mass - *over <= bound.range.high));
    }
    let solution = problem.solve().ok()?;
    Some(misses.iter().map(|(under, over)| solution.value(*under) + solution.value(*over)).sum())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::step_balance::StepBalance;
    use crate::analysis::testing::{given, percent, procedure, spanned};
    use crate::model::procedure::DeclaredYield;

    fn joint(yields: &[(&str, &str)]) -> Joint {
        let steps = ["side -> leg 40-50 | middle 50-60", "middle -> loin 40-60 | belly 40-60"];
        let mut procedure = procedure("p/p", "side", &steps);
        for (piece, range) in yields {
            procedure.yields.push(DeclaredYield { piece: spanned((*piece).to_owned()), share: given(percent(range)) });
        }
        let network = Network::of(&procedure);
        let balances: Vec<_> = procedure.steps.iter().map(StepBalance::of).collect();
        let shares = Shares::of(&network, &balances, &vec![None; network.pieces.len()]).unwrap();
        Joint::of(&procedure, &network, &shares).unwrap()
    }

    #[test]
    fn what_the_steps_can_do_is_possible() {
        assert_eq!(joint(&[("leg", "45"), ("loin", "26-30"), ("middle", "50-60"), ("loss", "0")]).total_miss, Some(0.0));
        // At the very edge: all slack to the leg, all of what is left to the loin.
        assert!(joint(&[("leg", "50"), ("loin", "30")]).is_possible());
    }

    #[test]
    fn each_alone_can_hold_and_both_cannot() {
        let joint = joint(&[("belly", "20-36"), ("leg", "50"), ("loin", "33-36")]);
        assert!(joint.declared.iter().all(Declared::meets));
        // With a leg of 50 the middle is 50, of which the loin is 30 at most: three points short.
        assert!((joint.total_miss.unwrap() - 0.03).abs() < 1e-9);
        assert_eq!(joint.conflict, [1, 2]);
    }

    #[test]
    fn a_range_that_sticks_out_is_told_by_how_much() {
        let joint = joint(&[("leg", "38-52"), ("trotter", "1")]);
        assert!(joint.is_possible());
        let (below, above) = joint.declared[0].sticks_out();
        assert!((below - 0.02).abs() < 1e-12 && (above - 0.02).abs() < 1e-12);
        assert_eq!(joint.declared[1].computed, None);
    }

    #[test]
    fn one_that_no_step_can_reach_conflicts_by_itself() {
        let joint = joint(&[("leg", "45"), ("loin", "37-40")]);
        assert!(!joint.declared[1].meets());
        assert_eq!(joint.conflict, [1]);
    }
}
