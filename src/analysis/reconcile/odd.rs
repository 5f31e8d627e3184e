//! Figures that are odd by themselves: shares that do not follow from their weights, a subtotal alone against the rest, a
//! total that is not marked as one.
//!
//! None of it changes whether a table closes.

use super::base::{Base, BaseOrigin, pairs};
use super::decimal::Decimal;
use super::edits::{Slip, edits};
use super::figure::Figure;
use super::sheet::{Column, Kind, Sheet};
use super::sums::{Plan, Stated, Sum, leaves};
use super::verdict::{Oddity, Unexplained, Why};

/// A share is called forced when it is off by so many of its last digits at most.
const FORCED_STEPS: f64 = 3.0;
/// A range of bases wider than this part of itself fits too many rows to mean anything.
const WIDEST_BASE: f64 = 0.1;

/// A subtotal that misses while the total agrees with the same rows: mending any of the rows would break the total, so
/// the subtotal is the odd one.
pub(super) fn subtotals_alone(sheet: &Sheet, sums: &[Sum], unexplained: &mut Vec<Unexplained>, oddities: &mut Vec<Oddity>) {
    unexplained.retain(|open| {
        let Some(sum) = sums.get(open.sum) else { return true };
        let Stated::Row(row) = sum.plan.stated else { return true };
        let agrees = |other: &&Sum| {
            let covers =
                other.plan.column == sum.plan.column && sum.plan.members.iter().all(|row| other.plan.members.binary_search(row).is_ok());
            covers && other.plan.stated != sum.plan.stated && other.closes() && (other.miss - sum.miss).abs() > other.bound
        };
        let alone = sums.iter().find(agrees).is_some();
        if alone {
            let (stated, expected) = (Some(sum.stated), Some(printed_like(sheet.figure(row, sum.plan.column), sum.found)));
            oddities.push(Oddity { row, column: sum.plan.column, stated, expected, why: Why::SubtotalAlone, rivals: 1 });
        }
        !alone
    });
}

/// What the rows come to, with the last digit that the stated figure has.
pub(super) fn printed_like(figure: Option<&Figure>, found: Decimal) -> Decimal {
    figure.map_or(found, |figure| found.rounded_to(figure.step))
}

/// Shares that are worked on another weight than the stated total; told once, at the total.
///
/// A total that was found odd already, and by the same weight, gets this reason instead.
pub(super) fn wrong_base(sheet: &Sheet, base: Option<&Base>, oddities: &mut Vec<Oddity>) {
    let Some((base, total)) = base.and_then(|base| Some((base, base.instead_of?))) else { return };
    let Some(figure) = sheet.figure(total, Column::Weight) else { return };
    if oddities.iter().any(|oddity| oddity.row == total && oddity.column == Column::Weight) {
        return;
    }
    let expected = Some(Decimal::near(base.weight, figure.value.decimals().max(figure.step.decimals()) + 1));
    let why = Why::WrongBase { origin: base.origin };
    oddities.push(Oddity { row: total, column: Column::Weight, stated: Some(figure.value), expected, why, rivals: 1 });
}

/// Shares that are not those of their weights. A share that was corrected already in `sheet` gets its exact expectation,
/// and its base where it is `printed` on another.
pub(super) fn odd_shares(printed: &Sheet, sheet: &Sheet, plans: &[Plan], base: Option<&Base>, oddities: &mut Vec<Oddity>) {
    let Some(base) = base else { return };
    let decimals = pairs(sheet).flat_map(|(_, _, share)| &share.printed).map(|printed| printed.decimals).max().unwrap_or(0);
    let at_odds = at_odds(sheet, base);
    for (row, weight, share) in pairs(sheet) {
        let exact = base.share_of(weight.value.float());
        let expected = Decimal::near(exact, share.step.decimals() + 1);
        let known = oddities.iter_mut().find(|oddity| oddity.row == row && oddity.column == Column::Share);
        if base.fits(weight, share) {
            if let Some(known) = known.filter(|known| known.expected == Some(share.value)) {
                known.expected = Some(expected);
                let other = printed.figure(row, Column::Share).and_then(|share| other_base(sheet, row, weight, share, base));
                if let (Why::OtherFigure, Some(row)) = (&known.why, other) {
                    known.why = Why::OnOtherBase { row };
                }
            }
            continue;
        }
        if known.is_some() {
            continue;
        }
        let why = if at_odds {
            Why::NotOfItsWeight
        } else if is_forced(sheet, plans, row, share, exact) {
            Why::Forced
        } else if let Some(slip) = slip(weight, share, base, decimals) {
            Why::Slip(slip)
        } else if let Some(other) = other_base(sheet, row, weight, share, base) {
            Why::OnOtherBase { row: other }
        } else {
            Why::NotOfItsWeight
        };
        oddities.push(Oddity { row, column: Column::Share, stated: Some(share.value), expected: Some(expected), why, rivals: 1 });
    }
}

/// True when most shares are not those of their weights: then the two do not come from one source, and it would be idle
/// to look for a slip in each.
pub(super) fn at_odds(sheet: &Sheet, base: &Base) -> bool {
    let odd = pairs(sheet).filter(|(_, weight, share)| !base.fits(weight, share)).count();
    odd >= 3 && 2 * odd > pairs(sheet).count()
}

/// True when the column adds up exactly with this share, and would not with the right one at its own last digit.
fn is_forced(sheet: &Sheet, plans: &[Plan], row: usize, share: &Figure, exact: f64) -> bool {
    let step = share.step.float();
    let right = (exact / step).round() * step;
    if (right - share.value.float()).abs() < step / 2.0 || (share.value.float() - exact).abs() > FORCED_STEPS * step {
        return false;
    }
    let mut of_whole = plans.iter().filter(|plan| plan.column == Column::Share && plan.members.binary_search(&row).is_ok());
    of_whole.any(|plan| plan.sum(sheet).is_some_and(|sum| sum.is_exact() && sum.stated == Decimal::HUNDRED))
        || (!plans.iter().any(|plan| plan.column == Column::Share) && comes_to_hundred(sheet))
}

/// True when the shares of a table that states no total for them come to 100 exactly.
fn comes_to_hundred(sheet: &Sheet) -> bool {
    let (members, unstated) = leaves(sheet, Column::Share);
    Plan { stated: Stated::Whole, column: Column::Share, members, unstated }.sum(sheet).is_some_and(|sum| sum.is_exact())
}

/// The likeliest slip among the digits that turns the right share into this one. Any small share is one wrong digit away
/// from another, so a misread digit is no explanation here.
fn slip(weight: &Figure, share: &Figure, base: &Base, decimals: u32) -> Option<Slip> {
    let fits = |value: Decimal, step: Decimal| base.fits(weight, &Figure { step, ..share.corrected(value) });
    edits(share, decimals)
        .into_iter()
        .filter(|edit| fits(edit.value, edit.step.min(share.step)))
        .map(|edit| edit.slip)
        .filter(|slip| !matches!(slip, Slip::Misread | Slip::Extra))
        .min()
}

/// The other row on whose weight this share is worked, when there is only one such weight.
fn other_base(sheet: &Sheet, row: usize, weight: &Figure, share: &Figure, base: &Base) -> Option<usize> {
    let (w, s, half) = (weight.value.float(), share.value.float(), share.step.float() / 2.0);
    if s <= half || 2.0 * half / s > WIDEST_BASE {
        return None;
    }
    let (low, high) = (100.0 * w / (s + half), 100.0 * w / (s - half));
    let weights = sheet.rows.iter().enumerate().filter(|(at, _)| *at != row && base.origin != BaseOrigin::Total(*at));
    let mut fitting = weights.filter(|(_, other)| other.weight.as_ref().is_some_and(|figure| (low..=high).contains(&figure.value.float())));
    let (at, _) = fitting.next()?;
    fitting.next().is_none().then_some(at)
}

/// In a column without a stated total: a last row that comes to what all rows above it do.
pub(super) fn looks_like_total(sheet: &Sheet, plans: &[Plan], oddities: &mut Vec<Oddity>) {
    for column in Column::ALL {
        let is_total = |plan: &Plan| {
            plan.column == column
                && !matches!(plan.stated, Stated::Row(at) if sheet.rows.get(at).is_some_and(|row| row.kind != Kind::Total))
        };
        let (members, _) = leaves(sheet, column);
        let (Some((last, rows)), false) = (members.split_last(), plans.iter().any(is_total)) else { continue };
        let Some(figure) = sheet.figure(*last, column) else { continue };
        let figures = || rows.iter().filter_map(|row| sheet.figure(*row, column));
        let sum: Decimal = figures().map(|figure| figure.value).sum();
        let steps: Decimal = figures().map(|figure| figure.step).sum();
        if rows.len() >= 3 && (sum - figure.value).abs() <= (steps + figure.step).half() {
            let stated = Some(figure.value);
            oddities.push(Oddity { row: *last, column, stated, expected: None, why: Why::LooksLikeTotal, rivals: 1 });
        }
    }
}
