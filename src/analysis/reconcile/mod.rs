//! Whether a published or weighed table adds up, what rounding explains, and which row is the likely slip.
//!
//! `lower` turns cells into a sheet, `sums` holds stated totals against their parts, `base` holds shares against weights,
//! `search` looks for the slip behind what does not close. All of it is data: no file, no text for people.

pub mod base;
pub mod decimal;
pub mod edits;
mod evidence;
pub mod figure;
pub mod lower;
mod odd;
mod search;
pub mod sheet;
pub mod sums;
mod suspects;
#[cfg(test)]
mod testing;
pub mod verdict;

use base::{Base, base};
use decimal::Decimal;
use odd::{looks_like_total, odd_shares, printed_like, subtotals_alone, wrong_base};
use search::explain;
use sheet::{Column, Kind, Sheet};
use sums::{Plan, Stated, Sum, leaves, plans};
use suspects::Suspect;
use verdict::{Loose, Oddity, Reconciled, Unexplained, Why};

/// Holds a table against itself.
#[must_use]
pub fn reconcile(sheet: &Sheet) -> Reconciled {
    let plans = plans(sheet);
    let sums: Vec<Sum> = plans.iter().filter_map(|plan| plan.sum(sheet)).collect();
    let mut mended = sheet.clone();
    let mut oddities = Vec::new();
    let mut unexplained = Vec::new();
    let printed_base = base(sheet, &plans);
    for column in Column::ALL {
        for explained in explain(&mut mended, &plans, column) {
            let rivals = explained.suspects.len();
            oddities.extend(explained.suspects.into_iter().map(|suspect| oddity(sheet, column, suspect, rivals, printed_base.as_ref())));
            // Another base explains the shares; what the sum misses is still in no row.
            let is_other_base = oddities.last().is_some_and(|oddity: &Oddity| matches!(oddity.why, Why::WrongBase { .. }));
            if rivals == 0 || is_other_base {
                let position = |stated: &Stated| sums.iter().position(|sum| sum.plan.column == column && sum.plan.stated == *stated);
                let open = explained.sums.iter().filter_map(position);
                unexplained.extend(open.map(|sum| Unexplained { sum, corrections: explained.crowd }));
            }
        }
    }
    subtotals_alone(sheet, &sums, &mut unexplained, &mut oddities);
    let base = base(&mended, &plans);
    wrong_base(&mended, base.as_ref(), &mut oddities);
    odd_shares(sheet, &mended, &plans, base.as_ref(), &mut oddities);
    looks_like_total(sheet, &plans, &mut oddities);
    let loose = Column::ALL.into_iter().filter_map(|column| loose(sheet, &plans, column)).collect();
    let at_odds = base.as_ref().is_some_and(|base| odd::at_odds(&mended, base));
    Reconciled { sums, oddities, unexplained, loose, base, at_odds }
}

/// The suspect as something to tell.
fn oddity(sheet: &Sheet, column: Column, suspect: Suspect, rivals: usize, base: Option<&Base>) -> Oddity {
    let printed = sheet.figure(suspect.row, column);
    let is_part = sheet.rows.get(suspect.row).is_some_and(|row| row.kind == Kind::Part);
    let expected = match (&suspect.figure, &suspect.why) {
        (Some(figure), why) if is_part || matches!(why, Why::Slip(_)) => Some(figure.value),
        (Some(figure), _) => Some(printed_like(printed, figure.value)),
        (None, Why::CountedTwice) => Some(Decimal::ZERO),
        (None, _) => None,
    };
    // A total that no slip of the pen explains, while the shares are worked on another weight, is no slip at all.
    let other_base = base.filter(|base| column == Column::Weight && base.instead_of == Some(suspect.row));
    let why = match (suspect.why, other_base) {
        (Why::OtherFigure, Some(base)) => Why::WrongBase { origin: base.origin },
        (why, _) => why,
    };
    Oddity { row: suspect.row, column, stated: printed.map(|figure| figure.value), expected, why, rivals }
}

/// The column as one that is held against no total, when it is that.
fn loose(sheet: &Sheet, plans: &[Plan], column: Column) -> Option<Loose> {
    let of_column = || plans.iter().filter(|plan| plan.column == column);
    let is_total = |stated| match stated {
        Stated::Whole => true,
        Stated::Row(at) => sheet.rows.get(at).is_some_and(|row| row.kind == Kind::Total),
    };
    let (members, unstated) = leaves(sheet, column);
    // Where subtotals stand for every row, each group is a whole of its own.
    let is_held = |row: &usize| of_column().any(|plan| plan.members.binary_search(row).is_ok());
    if of_column().any(|plan| is_total(plan.stated)) || members.iter().all(is_held) {
        return None;
    }
    let rows = members.len();
    let gaps = unstated.len();
    let sum = Plan { stated: Stated::Whole, column, members, unstated }.sum(sheet)?;
    Some(Loose { column, found: sum.found, bound: sum.bound, rows, unstated: gaps })
}

#[cfg(test)]
mod tests;
