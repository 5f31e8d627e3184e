//! What speaks against a figure, in a sentence without its last stop: the same words for people and for programs.

use super::numbers::Numbers;
use crate::analysis::reconcile::base::{Base, BaseOrigin};
use crate::analysis::reconcile::decimal::Decimal;
use crate::analysis::reconcile::edits::Slip;
use crate::analysis::reconcile::sheet::{Column, Sheet};
use crate::analysis::reconcile::verdict::{Oddity, Reconciled, Why};

/// Why this figure is odd, with its rivals.
pub(super) fn why(sheet: &Sheet, found: &Reconciled, oddity: &Oddity) -> String {
    let reason = reason(sheet, found, oddity);
    match oddity.rivals {
        0 | 1 => reason,
        rivals => format!("{reason}; one of {rivals} corrections that explain the miss about equally well"),
    }
}

/// Why this figure is odd.
pub(super) fn reason(sheet: &Sheet, found: &Reconciled, oddity: &Oddity) -> String {
    let name = |row: usize| row_name(sheet, row);
    let closing = || closing(sheet, found, oddity);
    match &oddity.why {
        Why::Slip(slip) => format!("{}: {}", slip_words(*slip), closing()),
        Why::OtherFigure => closing(),
        Why::CountedTwice => "this row stands here twice: without it the table adds up".into(),
        Why::SumAmongParts { first } => {
            format!("this is what the rows from {} on come to: marked as `subtotal`, it would not be counted beside them", name(*first))
        }
        Why::TotalLeavesOut { row } => format!("it leaves out {}: {}", name(*row), closing()),
        Why::TotalCountsTwice { row } => format!("it counts {} twice: {}", name(*row), closing()),
        Why::TotalOfSome { first, last } => {
            format!("it is the total of the rows from {} to {} alone: {}", name(*first), name(*last), closing())
        }
        Why::TotalOfGroup { group } => format!("it is the total of the group `{group}` alone: {}", closing()),
        Why::NotStated => format!("nothing is stated here: {}", closing()),
        Why::SubtotalAlone => format!("its rows come to {}, and the total agrees with them", expected(sheet, found, oddity)),
        Why::WrongBase { origin } => {
            format!("the shares are worked on {}, {}, and not on this", expected(sheet, found, oddity), origin_words(sheet, *origin))
        }
        Why::NotOfItsWeight => of_base(sheet, found, oddity).unwrap_or_else(closing),
        Why::Forced => {
            let share = of_base(sheet, found, oddity).unwrap_or_else(closing);
            format!("{share}; as printed it makes the column add up exactly")
        }
        Why::OnOtherBase { row } => {
            let share = of_base(sheet, found, oddity).unwrap_or_else(closing);
            format!("{share}; as printed it is a share of {}", name(*row))
        }
        Why::LooksLikeTotal => "this is what all the other rows come to: if it is their total, mark it as `total`".into(),
    }
}

const fn slip_words(slip: Slip) -> &'static str {
    match slip {
        Slip::Swapped => "two digits look swapped",
        Slip::Point => "the decimal point looks misplaced",
        Slip::Lost => "a digit looks lost",
        Slip::Doubled => "a digit looks doubled",
        Slip::Extra => "a digit looks to be one too many",
        Slip::Misread => "one digit looks wrong",
    }
}

/// What closes with the correction: a share's own weight where it has one, else the column.
fn closing(sheet: &Sheet, found: &Reconciled, oddity: &Oddity) -> String {
    if oddity.column == Column::Share
        && let Some(share) = of_base(sheet, found, oddity)
    {
        return share;
    }
    format!("with {} it adds up", expected(sheet, found, oddity))
}

/// `39.2 lb of 184 lb is 21.3 %`, for a share that stands beside a weight.
fn of_base(sheet: &Sheet, found: &Reconciled, oddity: &Oddity) -> Option<String> {
    let base = found.base.as_ref()?;
    let weight = sheet.figure(oddity.row, Column::Weight)?;
    let numbers = Numbers::of(sheet);
    let weight = numbers.full(weight.value, Column::Weight, weight.step.decimals());
    Some(format!("{weight} of {} is {}", base_weight(sheet, base), expected(sheet, found, oddity)))
}

/// The base as the table prints it, or to one digit more than its weights have.
pub(super) fn base_weight(sheet: &Sheet, base: &Base) -> String {
    let numbers = Numbers::of(sheet);
    let printed = match base.origin {
        BaseOrigin::Total(row) | BaseOrigin::Subtotal(row) => sheet.figure(row, Column::Weight),
        _ => None,
    };
    match printed {
        Some(figure) if (figure.value.float() - base.weight).abs() < 1e-9 => {
            numbers.full(figure.value, Column::Weight, figure.step.decimals())
        }
        _ => {
            let decimals = numbers.decimals(Column::Weight) + 1;
            numbers.full(Decimal::near(base.weight, decimals), Column::Weight, 0)
        }
    }
}

/// What the base is.
pub(super) fn origin_words(sheet: &Sheet, origin: BaseOrigin) -> String {
    match origin {
        BaseOrigin::Total(row) => format!("the stated weight of {}", row_name(sheet, row)),
        BaseOrigin::ShareOfTotal(row) => format!("of which {} is itself only a part", row_name(sheet, row)),
        BaseOrigin::Subtotal(row) => format!("the weight of {}, not the total", row_name(sheet, row)),
        BaseOrigin::Rows => "what the rows come to".into(),
        BaseOrigin::Agreed => "which the table does not state and most rows agree on".into(),
    }
}

/// What should stand there, written as the table would.
pub(super) fn expected(sheet: &Sheet, found: &Reconciled, oddity: &Oddity) -> String {
    let Some(value) = oddity.expected else { return "nothing".into() };
    let numbers = Numbers::of(sheet);
    let own = sheet.figure(oddity.row, oddity.column).map_or_else(|| numbers.decimals(oddity.column), |figure| figure.step.decimals());
    // A share that is worked from its weight has a digit more than the table prints.
    let worked = oddity.column == Column::Share && found.base.is_some() && sheet.figure(oddity.row, Column::Weight).is_some();
    numbers.full(value, oddity.column, own + u32::from(worked))
}

/// The row's item, or its kind where it has none.
pub(super) fn row_name(sheet: &Sheet, row: usize) -> String {
    use crate::analysis::reconcile::sheet::Kind;
    let Some(row) = sheet.rows.get(row) else { return "a row".into() };
    match (row.item.as_str(), row.kind, &row.group) {
        ("", Kind::Total, _) => "the total".into(),
        ("", _, Some(group)) => format!("the subtotal of `{group}`"),
        ("", _, None) => "the subtotal".into(),
        (item, ..) => format!("`{item}`"),
    }
}
