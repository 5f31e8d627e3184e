//! Random procedures for property tests: splits, tubs, joins, losses and `rest`, always possible.
//!
//! Each step is drawn around a hidden true composition, so that the ranges surely allow one.

use std::collections::BTreeMap;

use proptest::prelude::*;

use super::testing::procedure;
use crate::model::Procedure;

/// The raw numbers behind one step.
#[derive(Debug, Clone)]
pub(super) struct StepDraw {
    takes: Vec<usize>,
    outputs: Vec<OutputDraw>,
    rest: Option<usize>,
    loss: Option<(u32, u32, u32)>,
    all_typical: bool,
    one_typical: Option<usize>,
}

#[derive(Debug, Clone)]
struct OutputDraw {
    part: u32,
    below: u32,
    above: u32,
    tub: Option<usize>,
}

fn output_draw() -> impl Strategy<Value = OutputDraw> {
    (1_u32..100, 0_u32..120, 0_u32..120, prop::option::weighted(0.3, 0_usize..50)).prop_map(|(part, below, above, tub)| OutputDraw {
        part,
        below,
        above,
        tub,
    })
}

fn step_draw() -> impl Strategy<Value = StepDraw> {
    (
        prop::collection::vec(0_usize..50, 1..3),
        prop::collection::vec(output_draw(), 1..5),
        prop::option::weighted(0.3, 0_usize..4),
        prop::option::of((1_u32..20, 0_u32..20, 0_u32..20)),
        prop::bool::weighted(0.2),
        prop::option::weighted(0.3, 0_usize..4),
    )
        .prop_map(|(takes, outputs, rest, loss, all_typical, one_typical)| StepDraw {
            takes,
            outputs,
            rest,
            loss,
            all_typical,
            one_typical,
        })
}

/// Up to `steps` steps.
pub(super) fn draws(steps: usize) -> impl Strategy<Value = Vec<StepDraw>> {
    prop::collection::vec(step_draw(), 1..=steps)
}

/// The procedure behind the numbers. New pieces are named by `name`, from their running number.
pub(super) fn build(id: &str, start: &str, draws: &[StepDraw], name: impl Fn(usize) -> String) -> Procedure {
    let lines = lines(start, draws, name);
    procedure(id, start, &lines.iter().map(String::as_str).collect::<Vec<_>>())
}

fn lines(start: &str, draws: &[StepDraw], name: impl Fn(usize) -> String) -> Vec<String> {
    let mut open: Vec<String> = vec![start.to_owned()];
    let mut made = 0;
    let mut lines = Vec::new();
    for draw in draws {
        let mut taken: Vec<String> = Vec::new();
        for pick in &draw.takes {
            if !open.is_empty() {
                taken.push(open.remove(pick % open.len()));
            }
        }
        if taken.is_empty() {
            break;
        }
        let mut names: Vec<String> = Vec::new();
        for output in &draw.outputs {
            let tub = output
                .tub
                .and_then(|at| open.get(at % open.len().max(1)))
                .filter(|piece| piece.as_str() != start && !names.contains(piece));
            let piece = tub.cloned().unwrap_or_else(|| {
                made += 1;
                name(made)
            });
            names.push(piece);
        }
        for piece in &names {
            if !open.contains(piece) {
                open.push(piece.clone());
            }
        }
        lines.push(format!("{} -> {}", taken.join(", "), outputs(draw, &names)));
    }
    lines
}

/// The outputs of a step as text. Parts are hundred-thousandths of the whole, so that sums are exact.
fn outputs(draw: &StepDraw, names: &[String]) -> String {
    const WHOLE: u32 = 100_000;
    let loss_part = draw.loss.map_or(0, |(part, _, _)| part * 100);
    let sum: u32 = draw.outputs.iter().map(|output| output.part).sum();
    let mut parts: Vec<u32> = draw.outputs.iter().map(|output| output.part * (WHOLE - loss_part) / sum).collect();
    *parts.first_mut().unwrap() += WHOLE - loss_part - parts.iter().sum::<u32>();
    let percent = |part: u32| format!("{}", f64::from(part) / 1000.0);
    let range = |part: u32, below: u32, above: u32| {
        let (low, high) = (part.saturating_sub(below * 50), (part + above * 50).min(WHOLE));
        format!("{}-{}", percent(low), percent(high))
    };
    let mut texts = Vec::new();
    for (at, ((output, part), name)) in draw.outputs.iter().zip(&parts).zip(names).enumerate() {
        let typical = if draw.all_typical || draw.one_typical == Some(at) { format!(" ~{}", percent(*part)) } else { String::new() };
        let share = if draw.rest == Some(at) { "rest".to_owned() } else { range(*part, output.below, output.above) };
        texts.push(format!("{name} {share}{typical}"));
    }
    if let Some((_, below, above)) = draw.loss {
        let typical = if draw.all_typical { format!(" ~{}", percent(loss_part)) } else { String::new() };
        texts.push(format!("loss {}{typical}", range(loss_part, below, above)));
    }
    texts.join(" | ")
}

/// A weight for each piece, from a number that stands for the whole draw.
pub(super) fn weight_of(piece: &str, seed: u64) -> f64 {
    let mut hash = seed ^ 0x9e37_79b9_7f4a_7c15;
    for byte in piece.bytes() {
        hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    }
    (hash >> 40) as f64 / 2_f64.powi(24) * 20.0 - 5.0
}

/// All ids of a procedure with its loss: position by id.
pub(super) fn ids(procedure: &Procedure) -> BTreeMap<String, usize> {
    let given = procedure.steps.iter().flat_map(|step| step.give.iter().map(|output| output.piece.value.clone()));
    let all: std::collections::BTreeSet<String> = given.chain(procedure.start.piece.value().cloned()).collect();
    all.into_iter().enumerate().map(|(at, id)| (id, at)).collect()
}
