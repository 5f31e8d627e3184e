//! The answer for programs: JSON as the format promises it, with every number as the table would print it.

use serde::Serialize;
use serde_json::Number;

use super::numbers::TIE;
use super::why::why;
use crate::analysis::reconcile::decimal::Decimal;
use crate::analysis::reconcile::sheet::Sheet;
use crate::analysis::reconcile::sums::Sum;
use crate::analysis::reconcile::verdict::{Oddity, Reconciled};

#[derive(Serialize)]
struct Answer<'a> {
    closes: bool,
    sums: Vec<SumAnswer<'a>>,
    rows: Vec<RowAnswer<'a>>,
}

#[derive(Serialize)]
struct SumAnswer<'a> {
    group: Option<&'a str>,
    column: &'static str,
    stated: Option<Number>,
    found: Option<Number>,
    miss: Option<Number>,
    bound: Option<Number>,
    rounding: bool,
}

#[derive(Serialize)]
struct RowAnswer<'a> {
    item: &'a str,
    column: &'static str,
    stated: Option<Number>,
    expected: Option<Number>,
    why: String,
}

/// The answer, with a line end.
pub(super) fn json(sheet: &Sheet, found: &Reconciled) -> String {
    let answer = Answer {
        closes: found.closes(),
        sums: found.sums.iter().map(sum).collect(),
        rows: found.oddities.iter().map(|oddity| row(sheet, found, oddity)).collect(),
    };
    // Plain values always serialize; should they not, an empty answer is invalid JSON and no panic.
    serde_json::to_string_pretty(&answer).unwrap_or_default() + "\n"
}

fn sum(sum: &Sum) -> SumAnswer<'_> {
    SumAnswer {
        group: sum.group.as_deref(),
        column: sum.plan.column.word(),
        stated: number(sum.stated),
        found: number(sum.found),
        miss: number(sum.miss),
        bound: number(sum.bound),
        rounding: sum.is_rounding(),
    }
}

fn row<'a>(sheet: &'a Sheet, found: &Reconciled, oddity: &Oddity) -> RowAnswer<'a> {
    RowAnswer {
        item: sheet.rows.get(oddity.row).map_or("", |row| row.item.as_str()),
        column: oddity.column.word(),
        stated: oddity.stated.and_then(number),
        expected: oddity.expected.and_then(number),
        why: why(sheet, found, oddity).replace(TIE, " "),
    }
}

/// Whole numbers without a point; others as the shortest text that is this number.
fn number(value: Decimal) -> Option<Number> {
    value.whole().map(Number::from).or_else(|| Number::from_f64(value.float()))
}
