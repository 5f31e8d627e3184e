//! What steps owe and do not have, gathered once for the checks on cautions and protection.
//!
//! One mistake is one finding: steps that share their tools, and a fish that is eaten raw in every step, are told
//! at the first step that lacks something. Nothing is reported here.

use std::collections::BTreeMap;

use super::nearest::nearest;
use crate::analysis::demands::{Because, Demand, Demands, StepDemands, carries, wear_of};
use crate::finding::Place;
use crate::model::builtin::demands::WearDemand;
use crate::model::{Guidebook, Procedure, Spanned, Step};

/// A step and what it owes.
#[derive(Debug)]
pub(super) struct Owing<'a> {
    /// The step.
    pub step: &'a Step,
    /// What it owes.
    pub demands: StepDemands<'a>,
    /// Demands for protection that contradict each other: nothing that is worn can mend them.
    pub contradicted: Vec<WearDemand>,
}

/// The steps of a procedure whose tools could be read, each with what it owes.
pub(super) fn steps<'a>(book: &'a Guidebook, procedure: &'a Procedure) -> Vec<Owing<'a>> {
    let demands = Demands::of(book, procedure);
    let owing = |step: &'a Step| {
        let demands = demands.of_step(step)?;
        let contradicted = demands.contradictions.iter().map(|found| found.demand.what.clone()).collect();
        Some(Owing { step, demands, contradicted })
    };
    procedure.steps.iter().filter_map(owing).collect()
}

/// Something that a step lacks.
#[derive(Debug, Clone)]
pub(super) struct Lack<'a, T> {
    /// What, and why.
    pub demand: Demand<'a, T>,
    /// How many more steps lack it for the same reason, told here as well.
    pub more: usize,
}

/// A step with all that it lacks.
#[derive(Debug)]
pub(super) struct Lacking<'a, T> {
    /// The step.
    pub step: &'a Step,
    /// What it lacks; never empty.
    pub lacks: Vec<Lack<'a, T>>,
}

/// The cautions that steps owe and that cover them nowhere; `pick` says which demands count.
pub(super) fn cautions<'a>(
    book: &'a Guidebook,
    procedure: &'a Procedure,
    pick: impl for<'d> Fn(&'d StepDemands<'a>) -> &'d Vec<Demand<'a, &'a str>>,
) -> Vec<Lacking<'a, &'a str>> {
    if !procedure.cautions_known {
        return Vec::new();
    }
    let owing = steps(book, procedure).into_iter().filter(|owing| owing.step.cautions_known);
    let lacking = owing.map(|owing| {
        let unmet = |demand: &&Demand<'a, &'a str>| {
            let misspelt = || owing.step.cautions.iter().chain(&procedure.cautions).any(|own| is_meant(book, own, demand.what));
            !carries(procedure, owing.step, demand.what) && !misspelt()
        };
        (owing.step, pick(&owing.demands).clone(), pick(&owing.demands).iter().filter(unmet).cloned().collect())
    });
    gathered(procedure, lacking.collect())
}

/// The protection that steps owe and that is not worn; `pick` says which demands count.
pub(super) fn protection<'a>(
    book: &'a Guidebook,
    procedure: &'a Procedure,
    pick: impl for<'d> Fn(&'d StepDemands<'a>) -> &'d Vec<Demand<'a, WearDemand>>,
) -> Vec<Lacking<'a, WearDemand>> {
    let owing = steps(book, procedure);
    let lacking = owing.iter().filter_map(|owing| {
        let worn = wear_of(procedure, owing.step)?;
        let unmet = |demand: &&Demand<'a, WearDemand>| {
            let met = demand.what.is_met_by(|id| worn.iter().any(|own| own.value == id || is_meant_wear(book, own, id)));
            !met && !owing.contradicted.contains(&demand.what)
        };
        let all = pick(&owing.demands);
        let unmet: Vec<Demand<'a, WearDemand>> = all.iter().filter(unmet).cloned().collect();
        Some((owing.step, all.clone(), strictest(unmet)))
    });
    gathered(procedure, lacking.collect())
}

/// Leaves out demands that are met by whatever meets another one.
fn strictest(unmet: Vec<Demand<'_, WearDemand>>) -> Vec<Demand<'_, WearDemand>> {
    let implies =
        |strict: &WearDemand, loose: &WearDemand| strict.any_of.iter().all(|set| loose.is_met_by(|id| set.iter().any(|own| own == id)));
    let mut kept: Vec<Demand<'_, WearDemand>> = Vec::new();
    for demand in unmet {
        if kept.iter().any(|other| implies(&other.what, &demand.what)) {
            continue;
        }
        kept.retain(|other| !implies(&demand.what, &other.what));
        kept.push(demand);
    }
    kept
}

/// A step, all that it owes, and what of that it lacks.
type Row<'a, T> = (&'a Step, Vec<Demand<'a, T>>, Vec<Demand<'a, T>>);

/// Tells at the first step what all steps lack that share its reason.
fn gathered<'a, T: Clone + Ord>(procedure: &'a Procedure, rows: Vec<Row<'a, T>>) -> Vec<Lacking<'a, T>> {
    // Of each shared demand: how many steps owe it, how many lack it.
    let mut counts: BTreeMap<(T, Because<'a>), (usize, usize)> = BTreeMap::new();
    for (step, owed, lacks) in &rows {
        for demand in owed.iter().filter(|demand| is_shared(procedure, step, &demand.because)) {
            let count = counts.entry((demand.what.clone(), demand.because.clone())).or_default();
            count.0 += 1;
            count.1 += usize::from(lacks.iter().any(|lack| lack.what == demand.what));
        }
    }
    let mut told: Vec<(T, Because<'a>)> = Vec::new();
    let mut lacking = Vec::new();
    for (step, _, lacks) in rows {
        let mut here = Vec::new();
        for demand in lacks {
            let key = (demand.what.clone(), demand.because.clone());
            // What the whole guide lacks is one mistake; what single steps lack is one each.
            let whole = matches!(demand.because, Because::RawFish | Because::Histamine(_));
            let together =
                is_shared(procedure, step, &demand.because) && counts.get(&key).is_some_and(|(owed, lack)| whole || owed == lack);
            if together && told.contains(&key) {
                continue;
            }
            let more = if together { counts.get(&key).map_or(0, |(_, lack)| lack.saturating_sub(1)) } else { 0 };
            told.push(key);
            here.push(Lack { demand, more });
        }
        if !here.is_empty() {
            lacking.push(Lacking { step, lacks: here });
        }
    }
    lacking
}

/// True when the reason is stated once for several steps.
fn is_shared(procedure: &Procedure, step: &Step, because: &Because<'_>) -> bool {
    match because {
        Because::RawFish | Because::Histamine(_) => true,
        Because::Tool(_) => step.tools.is_absent() && !procedure.tools.is_absent(),
        Because::GloveOnRaw => step.wear.is_absent() && !procedure.wear.is_absent(),
        Because::DrawnToBody | Because::Part(_) | Because::Condition => false,
    }
}

/// True when an unknown caution is likely a misspelt one: that is told elsewhere.
fn is_meant(book: &Guidebook, stated: &Spanned<String>, caution: &str) -> bool {
    let known = book.builtin.cautions.contains_key(&stated.value) || book.cautions.contains_key(&stated.value);
    !known && nearest(&stated.value, [caution]).is_some()
}

/// The same for protection.
fn is_meant_wear(book: &Guidebook, stated: &Spanned<String>, wear: &str) -> bool {
    !book.builtin.wear.contains_key(&stated.value) && nearest(&stated.value, [wear]).is_some()
}

/// A caution that stands on another step of the guide.
#[derive(Debug, Clone, Copy)]
pub(super) struct Elsewhere<'a> {
    /// The step.
    pub step: &'a Step,
    /// Where the caution stands.
    pub place: Place,
    /// True when that step comes later and does not owe the caution itself: it was put after the act.
    pub after_act: bool,
}

/// Where else in the guide a caution stands that `lacking` lacks; one that was put after the act before others.
pub(super) fn elsewhere<'a>(procedure: &'a Procedure, owing: &[Owing<'a>], lacking: &Step, caution: &str) -> Option<Elsewhere<'a>> {
    let at = procedure.steps.iter().position(|step| step.id == lacking.id && step.place == lacking.place)?;
    let others = procedure.steps.iter().enumerate().filter(|(position, _)| *position != at);
    let carriers = others.filter_map(|(position, step)| {
        let place = step.cautions.iter().find(|own| own.value == caution)?.place;
        let owes =
            owing.iter().any(|owing| owing.step.place == step.place && owing.demands.cautions.iter().any(|demand| demand.what == caution));
        Some(Elsewhere { step, place, after_act: position > at && !owes })
    });
    let mut carriers: Vec<Elsewhere<'a>> = carriers.collect();
    carriers.sort_by_key(|carrier| !carrier.after_act);
    carriers.first().copied()
}
