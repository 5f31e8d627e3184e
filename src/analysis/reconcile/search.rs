//! Which single slip explains the sums of a column that do not close: the likeliest first, its equals beside it.
//!
//! One slip is looked for at a time; once it is found, the table is weighed anew as if it were mended, so that one mistake
//! is told once, even when a subtotal and a total both miss by it.

use std::collections::BTreeSet;

use super::base::base;
use super::evidence::{Shares, Weighed};
use super::sheet::{Column, Sheet};
use super::sums::{Plan, Stated};
use super::suspects::{Court, Suspect};
use super::verdict::Why;

/// A suspect must be this much likelier than "nothing that can be told": twice.
const MARGIN: f64 = std::f64::consts::LN_2;
/// Suspects within a factor of five of the best explain the miss about equally well: measured in `tests/reconcile_slips.rs`,
/// a smaller one names wrong rows alone, and a larger one names fewer right ones.
const EQUAL: f64 = 1.6;
/// With more equals than this, no row stands out and none is named.
const MOST_RIVALS: usize = 6;

/// So many slips are looked for in a column; a table with more has another trouble than slips.
const MOST_SLIPS: usize = 20;

/// Sums that do not close, and what explains them.
#[derive(Debug)]
pub(super) struct Explained {
    /// What they are held against.
    pub(super) sums: Vec<Stated>,
    /// The suspects, the likeliest first; empty when none stands out.
    pub(super) suspects: Vec<Suspect>,
    /// How many there were when too many were equal.
    pub(super) crowd: usize,
}

/// Explains the sums of one column, and puts the likeliest corrections into `sheet`.
pub(super) fn explain(sheet: &mut Sheet, plans: &[Plan], column: Column) -> Vec<Explained> {
    let mut explained = Vec::new();
    let mut settled: BTreeSet<Stated> = BTreeSet::new();
    loop {
        let court = court(sheet, plans, column);
        let is_open = |sum: &Weighed| !sum.closes && !settled.contains(&sum.plan.stated);
        let open: Vec<usize> = court.sums.iter().enumerate().filter(|(_, sum)| is_open(sum)).map(|(at, _)| at).collect();
        if open.is_empty() {
            return explained;
        }
        let stated = |at: &usize| court.sums.get(*at).map(|sum| sum.plan.stated);
        let suspects = court.suspects(&open);
        let rivals = if explained.len() < MOST_SLIPS { rivals(&suspects) } else { Vec::new() };
        let Some(best) = rivals.first().cloned() else {
            for at in open {
                explained.extend(court.sums.get(at).map(|sum| Explained {
                    sums: vec![sum.plan.stated],
                    suspects: corrections_of_few(sum, at, &suspects),
                    crowd: 0,
                }));
            }
            return explained;
        };
        let sums: Vec<Stated> = best.closes.iter().filter(|at| open.contains(at)).filter_map(stated).collect();
        settled.extend(&sums);
        if rivals.len() > MOST_RIVALS {
            explained.push(Explained { sums, suspects: Vec::new(), crowd: rivals.len() });
            continue;
        }
        explained.push(Explained { sums, suspects: rivals, crowd: 0 });
        sheet.set(best.row, column, best.figure);
    }
}

/// Where a sum has three figures or fewer, the figure that would close it is told for each of them, though none is likely.
/// Those that would break another sum are left out.
fn corrections_of_few(sum: &Weighed, at: usize, suspects: &[Suspect]) -> Vec<Suspect> {
    if sum.plan.members.len() > 2 || !sum.plan.unstated.is_empty() {
        return Vec::new();
    }
    let closing = |suspect: &&Suspect| suspect.closes.contains(&at) && suspect.breaks == 0 && suspect.why == Why::OtherFigure;
    suspects.iter().filter(closing).cloned().collect()
}

fn court<'a>(sheet: &'a Sheet, plans: &[Plan], column: Column) -> Court<'a> {
    let sums: Vec<Weighed> = plans.iter().filter(|plan| plan.column == column).filter_map(|plan| Weighed::of(plan, sheet)).collect();
    let mut sums_of = vec![Vec::new(); sheet.rows.len()];
    for (at, sum) in sums.iter().enumerate() {
        let stated = match sum.plan.stated {
            Stated::Row(row) => Some(row),
            Stated::Whole => None,
        };
        for row in sum.plan.members.iter().copied().chain(stated) {
            if let Some(sums) = sums_of.get_mut(row) {
                sums.push(at);
            }
        }
    }
    let figures = || sheet.rows.iter().filter_map(|row| row.figure(column));
    let decimals = figures().flat_map(|figure| &figure.printed).map(|printed| printed.decimals).max().unwrap_or(0);
    let shares = base(sheet, plans).map(|base| Shares::new(base, sheet));
    let count = u32::try_from(figures().count()).unwrap_or(u32::MAX);
    Court { sheet, column, sums, sums_of, shares, figures: f64::from(count), decimals }
}

/// The likeliest suspect, when it is likely enough, and those about as likely that explain a sum that it explains; each
/// correction once.
fn rivals(suspects: &[Suspect]) -> Vec<Suspect> {
    let mut suspects: Vec<&Suspect> = suspects.iter().collect();
    suspects.sort_by(|left, right| right.score.total_cmp(&left.score).then(left.row.cmp(&right.row)));
    let Some(best) = suspects.first().copied().filter(|best| best.score >= MARGIN) else { return Vec::new() };
    let mut rivals: Vec<Suspect> = Vec::new();
    for suspect in suspects.into_iter().take_while(|suspect| suspect.score >= best.score - EQUAL) {
        let value = |suspect: &Suspect| suspect.figure.as_ref().map(|figure| figure.value);
        let known = rivals.iter().any(|rival| rival.row == suspect.row && value(rival) == value(suspect));
        if !known && suspect.closes.iter().any(|sum| best.closes.contains(sum)) {
            rivals.push(suspect.clone());
        }
    }
    rivals
}
