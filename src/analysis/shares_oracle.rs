//! Shares held against a general solver, and against themselves, on random networks.

use std::collections::BTreeMap;

use good_lp::{Expression, ProblemVariables, Solution, SolverModel, constraint, microlp, variable};
use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;

use super::random_networks::{build, draws, ids, weight_of};
use super::shares::Shares;
use super::step_balance::StepBalance;
use super::typicals::Typicals;
use super::{Analysis, network::Network};
use crate::analysis::testing::{guidebook, house_cut};
use crate::model::quantity::{Range, Share};
use crate::model::{Procedure, ShareSpec};

/// The range of one output as the format states it, worked out apart from the code under test.
fn range(step: &crate::model::Step, spec: ShareSpec) -> (f64, f64) {
    let stated = |spec: ShareSpec| if let ShareSpec::Between(range) = spec { Some(range) } else { None };
    let all = step.give.iter().chain(step.loss.value());
    let others: Vec<Range<Share>> = all.filter_map(|output| stated(*output.share.value().unwrap())).collect();
    stated(spec).map_or_else(
        || {
            let low: f64 = others.iter().map(|range| range.low.fraction()).sum();
            let high: f64 = others.iter().map(|range| range.high.fraction()).sum();
            ((1.0 - high).max(0.0), 1.0 - low)
        },
        |range| (range.low.fraction(), range.high.fraction()),
    )
}

/// The least or greatest weighted total by linear programming over all masses. `loss` is the loss's weight.
fn solve(procedure: &Procedure, weight: &dyn Fn(&str) -> f64, loss: f64, greatest: bool) -> f64 {
    let ids = ids(procedure);
    let mut variables = ProblemVariables::new();
    let mut masses: Vec<Expression> = vec![Expression::from(0.0); ids.len()];
    masses[ids[procedure.start.piece.value().unwrap()]] += 1.0;
    let mut objective = Expression::from(0.0);
    let mut rows = Vec::new();
    for step in &procedure.steps {
        let mut row = Vec::new();
        for output in step.give.iter().chain(step.loss.value()) {
            let mass = variables.add(variable().min(0.0));
            let id = output.piece.value.as_str();
            objective += mass * if id == "loss" { loss } else { weight(id) };
            if let Some(at) = ids.get(id) {
                masses[*at] += mass;
            }
            row.push((mass, range(step, *output.share.value().unwrap())));
        }
        rows.push(row);
    }
    let mut problem = if greatest { variables.maximise(objective.clone()) } else { variables.minimise(objective.clone()) }.using(microlp);
    for (step, row) in procedure.steps.iter().zip(rows) {
        let taken: Expression = step.take.iter().map(|piece| masses[ids[&piece.value]].clone()).sum();
        problem = problem.with(constraint!(row.iter().map(|(mass, _)| *mass).sum::<Expression>() == taken.clone()));
        for (mass, (low, high)) in row {
            problem = problem.with(constraint!(mass >= low * taken.clone()));
            problem = problem.with(constraint!(mass <= high * taken.clone()));
        }
    }
    problem.solve().unwrap().eval(&objective)
}

fn shares(procedure: &Procedure) -> Shares {
    let network = Network::of(procedure);
    assert!(network.is_sound(), "{:?}", network.faults);
    let balances: Vec<Option<StepBalance>> = procedure.steps.iter().map(StepBalance::of).collect();
    Shares::of(&network, &balances, &vec![None; network.pieces.len()]).unwrap()
}

fn piece_name(number: usize) -> String {
    format!("piece-{number}")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/shares.txt"))), ..ProptestConfig::default() })]

    #[test]
    fn weighted_totals_are_those_of_a_linear_program(draws in draws(9), seed in any::<u64>()) {
        let procedure = build("p/p", "start", &draws, piece_name);
        let shares = shares(&procedure);
        let is_final = |id: &str| shares.piece(id).is_some_and(|piece| piece.is_final);
        let weight = |id: &str| if is_final(id) { weight_of(id, seed) } else { 0.0 };
        let loss = weight_of("loss", seed);
        let total = shares.weighted(|piece| weight(&piece.piece), loss);
        prop_assert!((total.low - solve(&procedure, &weight, loss, false)).abs() < 1e-7);
        prop_assert!((total.high - solve(&procedure, &weight, loss, true)).abs() < 1e-7);
        prop_assert!(total.low - 1e-9 <= total.typical && total.typical <= total.high + 1e-9);
    }

    /// Weights on pieces that are cut further count as well: a price for the work on each.
    #[test]
    fn weights_may_lie_on_every_piece(draws in draws(7), seed in any::<u64>()) {
        let procedure = build("p/p", "start", &draws, piece_name);
        let network = Network::of(&procedure);
        let weight = |id: &str| if id == "start" { 0.0 } else { weight_of(id, seed) };
        let nodes = network.given().map(|(at, piece)| (at, weight(&piece.id)));
        let total = shares(&procedure).flow().range(nodes);
        prop_assert!((total.low - solve(&procedure, &weight, 0.0, false)).abs() < 1e-7);
        prop_assert!((total.high - solve(&procedure, &weight, 0.0, true)).abs() < 1e-7);
    }

    #[test]
    fn each_piece_is_bounded_as_a_linear_program_says(draws in draws(6)) {
        let procedure = build("p/p", "start", &draws, piece_name);
        let shares = shares(&procedure);
        for piece in &shares.pieces {
            let weight = |id: &str| if id == piece.piece { 1.0 } else { 0.0 };
            prop_assert!((piece.share.low - solve(&procedure, &weight, 0.0, false)).abs() < 1e-7);
            prop_assert!((piece.share.high - solve(&procedure, &weight, 0.0, true)).abs() < 1e-7);
            prop_assert!(piece.share.low - 1e-9 <= piece.share.typical && piece.share.typical <= piece.share.high + 1e-9);
        }
        prop_assert!((shares.loss.high - solve(&procedure, &|_| 0.0, 1.0, true)).abs() < 1e-7);
    }

    #[test]
    fn final_pieces_and_losses_are_the_whole(draws in draws(12)) {
        let procedure = build("p/p", "start", &draws, piece_name);
        let whole = shares(&procedure).weighted(|_| 1.0, 1.0);
        for value in [whole.low, whole.typical, whole.high] {
            prop_assert!((value - 1.0).abs() < 1e-12);
        }
        for step in &procedure.steps {
            let balance = StepBalance::of(step).unwrap();
            let Typicals::Found(typicals) = &balance.typicals else { panic!("{:?}", balance.typicals) };
            let sum: f64 = typicals.iter().map(|typical| typical.number()).sum();
            prop_assert!((sum - 1.0).abs() < 1e-14);
            for (typical, output) in typicals.iter().zip(&balance.outputs) {
                prop_assert!(output.stated.low.fraction() - 1e-15 <= typical.number() && typical.number() <= output.stated.high.fraction() + 1e-15);
                prop_assert!(output.stated.low <= output.tight.low && output.tight.low <= output.tight.high && output.tight.high <= output.stated.high);
            }
        }
    }

    /// Each end of a tight range occurs: the linear program over one step reaches it.
    #[test]
    fn tight_ranges_are_those_of_a_linear_program(draws in draws(1)) {
        let procedure = build("p/p", "start", &draws, piece_name);
        let step = &procedure.steps[0];
        let balance = StepBalance::of(step).unwrap();
        for (output, tight) in step.give.iter().zip(balance.outputs.iter().map(|output| output.tight)) {
            let weight = |id: &str| if id == output.piece.value { 1.0 } else { 0.0 };
            prop_assert!((tight.low.fraction() - solve(&procedure, &weight, 0.0, false)).abs() < 1e-9);
            prop_assert!((tight.high.fraction() - solve(&procedure, &weight, 0.0, true)).abs() < 1e-9);
        }
    }

    /// A chain equals one long procedure in which each procedure's own pieces have names of their own.
    #[test]
    fn a_chain_is_one_long_procedure(first in draws(5), second in draws(3), third in draws(3), seed in any::<u64>()) {
        // Both later procedures draw on the same names, so that tubs and equal inner names occur.
        let root = build("a/a", "start", &first, |number| format!("piece-{number}"));
        let finals: Vec<String> = shares(&root).pieces.iter().filter(|piece| piece.is_final).map(|piece| piece.piece.clone()).collect();
        let pool = |number: usize| format!("part-{number}");
        let mut members = vec![house_cut("a/a", "start", &[])];
        members[0].steps = root.steps;
        for (at, draws) in [second, third].iter().enumerate() {
            if let Some(start) = finals.get(at) {
                let mut member = build(&format!("b/{at}"), start, draws, pool);
                member.house_cut = members[0].house_cut.clone();
                members.push(member);
            }
        }
        let mut long = members[0].clone();
        for member in members.iter().skip(1) {
            let network = Network::of(member);
            let own: BTreeMap<&str, bool> =
                network.pieces.iter().map(|piece| (piece.id.as_str(), !piece.is_start && !piece.is_final())).collect();
            let rename = |id: &mut String| if own.get(id.as_str()) == Some(&true) { *id = format!("{}.{id}", member.id) };
            for step in &member.steps {
                let mut step = step.clone();
                step.take.iter_mut().for_each(|piece| rename(&mut piece.value));
                step.give.iter_mut().for_each(|output| rename(&mut output.piece.value));
                long.steps.push(step);
            }
        }
        let expected = shares(&long);
        let analysis = Analysis::of(&guidebook(members));
        prop_assert_eq!(analysis.chains.len(), 1);
        let found = analysis.chains[0].shares.as_ref().unwrap();
        for piece in found.pieces.iter().filter(|piece| piece.is_final) {
            let long = expected.piece(&piece.piece).unwrap();
            prop_assert!(long.is_final);
            for (one, other) in [(piece.share.low, long.share.low), (piece.share.typical, long.share.typical), (piece.share.high, long.share.high)] {
                prop_assert!((one - other).abs() < 1e-12);
            }
        }
        prop_assert_eq!(found.pieces.iter().filter(|piece| piece.is_final).count(), expected.pieces.iter().filter(|piece| piece.is_final).count());
        let (one, other) = (found.weighted(|piece| weight_of(&piece.piece, seed), 0.5), expected.weighted(|piece| weight_of(&piece.piece, seed), 0.5));
        prop_assert!((one.low - other.low).abs() < 1e-9 && (one.high - other.high).abs() < 1e-9);
        let mut listed: Vec<&str> = found.pieces.iter().map(|piece| piece.piece.as_str()).collect();
        listed.sort_unstable();
        let all = listed.len();
        listed.dedup();
        prop_assert_eq!(all, listed.len());
    }
}
