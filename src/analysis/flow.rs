//! Weights through a network of steps: the least, the typical and the greatest total of any weighted set.
//!
//! The outputs of a step compete, so separate extremes must not be added or multiplied. Every step chooses
//! freely of the others, hence backward induction is exact: from the last step back, the worth of one unit
//! of what a step takes is that of its low shares, and the slack goes to the best (or worst) outputs first.
//! A tub or a join needs nothing more, because its worth per unit is one number.
//!
//! Accuracy: shares are whole billionths, worths are `f64`; each step adds about one unit in the last
//! binary digit, so a total through a hundred steps is right to about 1e-14 of its size.

use std::collections::BTreeMap;

use crate::model::quantity::{Range, Share};

/// One output of a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlowOutput {
    /// The node that it adds to.
    pub node: usize,
    /// The stated range, `rest` resolved, as a share of what the step takes.
    pub range: Range<Share>,
    /// The typical share of what the step takes.
    pub typical: f64,
}

/// A step that is possible: its low ends add up to 1 at most, its high ends to 1 at least.
#[derive(Debug, Clone, PartialEq)]
pub struct FlowStep {
    /// The nodes that it takes, all of each.
    pub takes: Vec<usize>,
    /// What it gives, loss included.
    pub outputs: Vec<FlowOutput>,
}

/// Nodes that hold weight, and steps in an order in which each takes only what earlier ones have given.
#[derive(Debug, Clone, PartialEq)]
pub struct Flow {
    start: usize,
    nodes: usize,
    steps: Vec<FlowStep>,
    /// For each node, the step and the output of each giving.
    givers: Vec<Vec<(usize, usize)>>,
    /// For each step, what its low ends leave of the whole, and the widths of all its outputs together.
    rooms: Vec<(i64, i64)>,
}

/// The least and the greatest worth of one unit of weight.
type Worth = (f64, f64);

/// Nodes whose worth is known to differ from nothing, and the outputs that give to them.
struct Known {
    worth: BTreeMap<usize, Worth>,
    open: BTreeMap<usize, Vec<usize>>,
}

impl Flow {
    /// A network of `nodes` nodes; all weight begins at `start`.
    #[must_use]
    pub fn new(nodes: usize, start: usize, steps: Vec<FlowStep>) -> Self {
        let mut givers = vec![Vec::new(); nodes];
        let mut rooms = Vec::with_capacity(steps.len());
        for (at, step) in steps.iter().enumerate() {
            let (mut slack, mut widths) = (Share::WHOLE.billionths(), 0_i64);
            for (output_at, output) in step.outputs.iter().enumerate() {
                if let Some(list) = givers.get_mut(output.node) {
                    list.push((at, output_at));
                }
                let (low, width) = low_and_width(output);
                slack = slack.saturating_sub(low);
                widths = widths.saturating_add(width);
            }
            rooms.push((slack, widths));
        }
        Self { start, nodes, steps, givers, rooms }
    }

    /// The steps, in order.
    #[must_use]
    pub fn steps(&self) -> &[FlowStep] {
        &self.steps
    }

    /// The node at which all weight begins.
    #[must_use]
    pub const fn start(&self) -> usize {
        self.start
    }

    /// How many nodes there are.
    #[must_use]
    pub const fn node_count(&self) -> usize {
        self.nodes
    }

    /// The least and the greatest of Σ weight · mass over the given nodes, for a start of mass 1.
    ///
    /// Only what lies upstream of the given nodes is visited. A node named twice counts with both weights.
    #[must_use]
    pub fn range(&self, weights: impl IntoIterator<Item = (usize, f64)>) -> Range<f64> {
        let mut known = Known { worth: BTreeMap::new(), open: BTreeMap::new() };
        for (node, weight) in weights {
            self.count(&mut known, node, (weight, weight));
        }
        while let Some((at, outputs)) = known.open.pop_last() {
            let (Some(step), Some(room)) = (self.steps.get(at), self.rooms.get(at)) else { continue };
            let worth = step_worth(step, *room, &outputs, &known.worth);
            for node in &step.takes {
                self.count(&mut known, *node, worth);
            }
        }
        let (low, high) = known.worth.get(&self.start).copied().unwrap_or_default();
        Range { low, high }
    }

    /// Adds to the worth of a node; at first, the outputs that give to it are to be visited.
    fn count(&self, known: &mut Known, node: usize, more: Worth) {
        let before = known.worth.get(&node).copied();
        if before.is_none() {
            for (step, output) in self.givers.get(node).into_iter().flatten() {
                known.open.entry(*step).or_default().push(*output);
            }
        }
        let (low, high) = before.unwrap_or_default();
        known.worth.insert(node, (low + more.0, high + more.1));
    }

    /// The typical mass at each node, for a start of mass 1: all that is ever given to it.
    #[must_use]
    pub fn typical_masses(&self) -> Vec<f64> {
        let mut masses = vec![0.0; self.nodes];
        if let Some(start) = masses.get_mut(self.start) {
            *start = 1.0;
        }
        for step in &self.steps {
            let taken: f64 = step.takes.iter().filter_map(|node| masses.get(*node)).sum();
            for output in &step.outputs {
                if let Some(mass) = masses.get_mut(output.node) {
                    *mass += taken * output.typical;
                }
            }
        }
        masses
    }
}

/// The low end of an output and what lies between its ends, in billionths.
fn low_and_width(output: &FlowOutput) -> (i64, i64) {
    (output.range.low.billionths(), (output.range.high - output.range.low).billionths())
}

/// The least and the greatest worth of one unit of what a step takes. `outputs` are those whose worth is
/// known; all others are worth nothing and stand together as one row that can only take up slack.
fn step_worth(step: &FlowStep, (slack, widths): (i64, i64), outputs: &[usize], worth: &BTreeMap<usize, Worth>) -> Worth {
    let mut rows: Vec<(Worth, i64, i64)> = Vec::with_capacity(outputs.len() + 1);
    let mut idle = widths;
    for output in outputs.iter().filter_map(|at| step.outputs.get(*at)) {
        let (low, width) = low_and_width(output);
        idle -= width;
        rows.push((worth.get(&output.node).copied().unwrap_or_default(), low, width));
    }
    rows.push(((0.0, 0.0), 0, idle));
    rows.sort_by(|one, other| one.0.0.total_cmp(&other.0.0));
    let least = fill(rows.iter().map(|(worth, low, width)| (worth.0, *low, *width)), slack);
    rows.sort_by(|one, other| other.0.1.total_cmp(&one.0.1));
    let greatest = fill(rows.iter().map(|(worth, low, width)| (worth.1, *low, *width)), slack);
    (least, greatest)
}

/// The worth when the slack goes to the rows in their order, each up to its width. Shares are billionths.
fn fill(rows: impl Iterator<Item = (f64, i64, i64)>, mut slack: i64) -> f64 {
    let mut total = 0.0;
    for (worth, low, width) in rows {
        let more = slack.min(width);
        slack -= more;
        total += worth * (low + more) as f64;
    }
    total / Share::WHOLE.billionths() as f64
}
