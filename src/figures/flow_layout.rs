//! Where each part of the weight-flow drawing lies: the start at the left, steps in columns, pieces at the right.
//!
//! Thickness is weight everywhere. Pieces that are worked for stand on top in the order of the work; by-products and
//! what is lost are gathered below them. It computes numbers alone; `flow_drawing` writes them.

use crate::analysis::flow::Flow;

/// Space between two blocks.
const GAP: f64 = 12.0;

/// A piece at the right edge.
#[derive(Debug, Clone, PartialEq)]
pub struct Terminal {
    /// The node of the flow.
    pub node: usize,
    /// The least height that its words need.
    pub words: f64,
    /// The top of its block.
    pub top: f64,
    /// The thickness of its block.
    pub thickness: f64,
    /// The middle of the space that it and its words have.
    pub middle: f64,
}

/// A step.
#[derive(Debug, Clone, PartialEq)]
pub struct StepBlock {
    /// The column, from 0.
    pub column: usize,
    /// The top of its block.
    pub top: f64,
    /// The thickness of its block.
    pub thickness: f64,
}

/// A band of weight from a step, or from the start, to a step or to a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Band {
    /// The step that it comes from; `None` for the start.
    pub from: Option<usize>,
    /// Where it goes.
    pub to: End,
    /// The thickness.
    pub thickness: f64,
    /// Its top where it begins.
    pub from_top: f64,
    /// Its top where it ends.
    pub to_top: f64,
}

/// Where a band ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// At a step.
    Step(usize),
    /// At a piece, by its position among the terminals.
    Terminal(usize),
}

/// All parts in their places.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Pieces from top to bottom.
    pub terminals: Vec<Terminal>,
    /// One for each step.
    pub steps: Vec<StepBlock>,
    /// All bands.
    pub bands: Vec<Band>,
    /// How many columns the steps take.
    pub columns: usize,
    /// The top of the start.
    pub start_top: f64,
    /// The thickness of the start, which is that of the whole.
    pub start_thickness: f64,
    /// The height of all.
    pub height: f64,
}

impl Layout {
    /// Lays out a flow. `terminals` are nodes with the height of their words, from top to bottom; the whole is
    /// `whole` thick.
    #[must_use]
    pub fn of(flow: &Flow, terminals: &[(usize, f64)], whole: f64) -> Self {
        let masses = flow.typical_masses();
        let mass = |node: usize| masses.get(node).copied().unwrap_or(0.0);
        let mut top = 0.0;
        let mut blocks = Vec::with_capacity(terminals.len());
        for (node, words) in terminals {
            let thickness = mass(*node) * whole;
            let space = thickness.max(*words);
            let middle = top + space / 2.0;
            blocks.push(Terminal { node: *node, words: *words, top: middle - thickness / 2.0, thickness, middle });
            top += space + GAP;
        }
        let mut bands = bands(flow, &blocks, whole, &mass);
        let (columns, mut steps) = columns(flow, whole, &mass);
        let height = (top - GAP).max(whole);
        place_steps(&mut steps, &blocks, &bands, columns, height);
        let mut layout = Self { start_top: 0.0, start_thickness: whole, terminals: blocks, steps, bands: Vec::new(), columns, height };
        let firsts: Vec<f64> = bands.iter().filter(|band| band.from.is_none()).map(|band| layout.middle(band.to)).collect();
        let middle = firsts.iter().sum::<f64>() / (firsts.len().max(1)) as f64;
        layout.start_top = (middle - whole / 2.0).clamp(0.0, (height - whole).max(0.0));
        layout.stack(&mut bands);
        layout.bands = bands;
        layout
    }

    fn middle(&self, end: End) -> f64 {
        match end {
            End::Step(at) => self.steps.get(at).map_or(0.0, |step| step.top + step.thickness / 2.0),
            End::Terminal(at) => self.terminals.get(at).map_or(0.0, |block| block.middle),
        }
    }

    /// Gives each band its place on both sides, so that bands of one block lie beside each other and do not cross there.
    fn stack(&self, bands: &mut [Band]) {
        let mut order: Vec<usize> = (0..bands.len()).collect();
        let begins = |band: &Band| band.from.map_or(self.start_top, |at| self.steps.get(at).map_or(0.0, |step| step.top));
        let mut leaving: Vec<(Option<usize>, f64)> = Vec::new();
        order.sort_by(|one, other| {
            let middle = |at: &usize| bands.get(*at).map_or(0.0, |band| self.middle(band.to));
            middle(one).total_cmp(&middle(other))
        });
        for at in &order {
            let Some(band) = bands.get_mut(*at) else { continue };
            let base = begins(band);
            let used = offset(&mut leaving, band.from, band.thickness);
            band.from_top = base + used;
        }
        let mut arriving: Vec<(End, f64)> = Vec::new();
        order.sort_by(|one, other| {
            let top = |at: &usize| bands.get(*at).map_or(0.0, |band| band.from_top);
            top(one).total_cmp(&top(other))
        });
        for at in &order {
            let Some(band) = bands.get_mut(*at) else { continue };
            let base = match band.to {
                End::Step(at) => self.steps.get(at).map_or(0.0, |step| step.top),
                End::Terminal(at) => self.terminals.get(at).map_or(0.0, |block| block.top),
            };
            band.to_top = base + offset(&mut arriving, band.to, band.thickness);
        }
    }
}

/// How much of a block is used already; adds to it.
fn offset<K: PartialEq>(used: &mut Vec<(K, f64)>, key: K, thickness: f64) -> f64 {
    if let Some((_, sum)) = used.iter_mut().find(|(known, _)| *known == key) {
        let before = *sum;
        *sum += thickness;
        return before;
    }
    used.push((key, thickness));
    0.0
}

/// All bands, without their places.
fn bands(flow: &Flow, terminals: &[Terminal], whole: f64, mass: &impl Fn(usize) -> f64) -> Vec<Band> {
    let taker = |node: usize| flow.steps().iter().position(|step| step.takes.contains(&node));
    let end = |node: usize| match taker(node) {
        Some(step) => Some(End::Step(step)),
        None => terminals.iter().position(|block| block.node == node).map(End::Terminal),
    };
    let band = |from, to, thickness| Band { from, to, thickness, from_top: 0.0, to_top: 0.0 };
    let mut bands = Vec::new();
    if let Some(first) = flow.steps().iter().position(|step| step.takes.contains(&0)) {
        bands.push(band(None, End::Step(first), whole));
    }
    for (at, step) in flow.steps().iter().enumerate() {
        let taken: f64 = step.takes.iter().map(|node| mass(*node)).sum();
        for output in &step.outputs {
            let thickness = taken * output.typical * whole;
            if let (Some(to), true) = (end(output.node), thickness > 0.0) {
                bands.push(band(Some(at), to, thickness));
            }
        }
    }
    bands
}

/// The column of each step, one to the right of the last step that gives to it.
fn columns(flow: &Flow, whole: f64, mass: &impl Fn(usize) -> f64) -> (usize, Vec<StepBlock>) {
    let mut steps: Vec<StepBlock> = Vec::with_capacity(flow.steps().len());
    for step in flow.steps() {
        let givers =
            flow.steps().iter().zip(&steps).filter(|(giver, _)| giver.outputs.iter().any(|output| step.takes.contains(&output.node)));
        let column = givers.map(|(_, block)| block.column + 1).max().unwrap_or(0);
        let taken: f64 = step.takes.iter().map(|node| mass(*node)).sum();
        steps.push(StepBlock { column, top: 0.0, thickness: taken * whole });
    }
    (steps.iter().map(|step| step.column + 1).max().unwrap_or(1), steps)
}

/// Each step at the middle of where its weight goes, from the last back; steps of one column are kept apart.
fn place_steps(steps: &mut [StepBlock], terminals: &[Terminal], bands: &[Band], columns: usize, height: f64) {
    for at in (0..steps.len()).rev() {
        let (mut moment, mut weight) = (0.0, 0.0);
        for band in bands.iter().filter(|band| band.from == Some(at)) {
            let middle = match band.to {
                End::Step(to) => steps.get(to).map_or(0.0, |step| step.top + step.thickness / 2.0),
                End::Terminal(to) => terminals.get(to).map_or(0.0, |block| block.middle),
            };
            moment += middle * band.thickness;
            weight += band.thickness;
        }
        if let Some(step) = steps.get_mut(at) {
            let middle = if weight > 0.0 { moment / weight } else { 0.0 };
            step.top = (middle - step.thickness / 2.0).max(0.0);
        }
    }
    for column in 0..columns {
        let mut own: Vec<usize> = (0..steps.len()).filter(|at| steps.get(*at).is_some_and(|step| step.column == column)).collect();
        own.sort_by(|one, other| {
            let top = |at: &usize| steps.get(*at).map_or(0.0, |step| step.top);
            top(one).total_cmp(&top(other))
        });
        let mut free = 0.0;
        for at in &own {
            if let Some(step) = steps.get_mut(*at) {
                step.top = step.top.max(free);
                // The number of a thin step needs room of its own.
                free = step.top + step.thickness.max(2.0 * GAP) + GAP;
            }
        }
        let mut floor = height;
        for at in own.iter().rev() {
            if let Some(step) = steps.get_mut(*at) {
                step.top = step.top.min((floor - step.thickness).max(0.0));
                floor = step.top - GAP;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::flow::{FlowOutput, FlowStep};
    use crate::model::quantity::{Range, Share};

    fn output(node: usize, typical: f64) -> FlowOutput {
        FlowOutput { node, range: Range::single(Share::from_billionths((typical * 1e9) as i64)), typical }
    }

    /// 0 is parted into 1 (taken by the second step), 2 and a tub 3; 1 into 4, the tub, and what is lost, 5.
    fn layout() -> Layout {
        let steps = vec![
            FlowStep { takes: vec![0], outputs: vec![output(1, 0.6), output(2, 0.3), output(3, 0.1)] },
            FlowStep { takes: vec![1], outputs: vec![output(4, 0.5), output(3, 0.4), output(5, 0.1)] },
        ];
        Layout::of(&Flow::new(6, 0, steps), &[(4, 38.0), (2, 38.0), (3, 38.0), (5, 19.0)], 200.0)
    }

    #[test]
    fn thickness_is_weight_and_none_is_lost_on_the_way() {
        let layout = layout();
        let leaving = |from| layout.bands.iter().filter(|band| band.from == from).map(|band| band.thickness).sum::<f64>();
        assert!((leaving(None) - 200.0).abs() < 1e-9);
        for (at, step) in layout.steps.iter().enumerate() {
            assert!((leaving(Some(at)) - step.thickness).abs() < 1e-9);
        }
        for (at, block) in layout.terminals.iter().enumerate() {
            let arriving: f64 = layout.bands.iter().filter(|band| band.to == End::Terminal(at)).map(|band| band.thickness).sum();
            assert!((arriving - block.thickness).abs() < 1e-9, "{at}");
        }
    }

    #[test]
    fn pieces_keep_their_order_and_room_for_their_words() {
        let layout = layout();
        assert_eq!(layout.terminals.iter().map(|block| block.node).collect::<Vec<_>>(), [4, 2, 3, 5]);
        for pair in layout.terminals.windows(2) {
            let [above, below] = pair else { unreachable!() };
            let needed = above.words.max(above.thickness) / 2.0 + below.words.max(below.thickness) / 2.0;
            assert!(below.middle - above.middle >= needed, "{above:?} {below:?}");
        }
        assert_eq!((layout.columns, layout.steps[1].column), (2, 1));
    }

    #[test]
    fn bands_of_one_block_lie_beside_each_other_inside_the_drawing() {
        let layout = layout();
        for (at, one) in layout.bands.iter().enumerate() {
            for edge in [one.from_top, one.to_top, one.from_top + one.thickness, one.to_top + one.thickness] {
                assert!((-1e-9..=layout.height + 1e-9).contains(&edge), "{one:?}");
            }
            for other in layout.bands.iter().skip(at + 1) {
                let apart = |a: f64, b: f64| a + one.thickness <= b + 1e-9 || b + other.thickness <= a + 1e-9;
                assert!(one.from != other.from || apart(one.from_top, other.from_top), "{one:?} {other:?}");
                assert!(one.to != other.to || apart(one.to_top, other.to_top), "{one:?} {other:?}");
            }
        }
    }
}
