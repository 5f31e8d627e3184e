//! The words for a table that cannot be read.

use crate::analysis::reconcile::figure::FigureFault;
use crate::analysis::reconcile::lower::{COLUMNS, KINDS, TableFault, TableFaultKind as Kind};
use crate::analysis::reconcile::sheet::Column;
use crate::finding::{FileId, Finding, Place};

/// The fault as a finding.
pub(super) fn finding(fault: &TableFault, file: FileId) -> Finding {
    let text = &fault.text;
    let (message, help) = match fault.kind {
        Kind::UnknownColumn => (format!("`{text}` is no column of such a table"), offer(text, &COLUMNS)),
        Kind::NoItemColumn => ("this table has no column `item`".into(), "name the column that says what was weighed `item`".into()),
        Kind::NoFigures => (
            "this table has no figures: no row has a weight or a share".into(),
            "fill in the column `weight`, or `share` in percent".into(),
        ),
        Kind::NoParts => {
            ("every row of this table is a total, so nothing adds up".into(), "leave `kind` empty in the rows that are added up".into())
        }
        Kind::PartWithoutItem => ("this row has no item".into(), "write what was weighed".into()),
        Kind::UnknownKind => (format!("`{text}` is no kind of row"), offer(text, &KINDS)),
        Kind::NoFigure(column, figure) => no_figure(column, figure, text),
        Kind::BareAmongUnits => (
            format!("`{text}` has no unit, and other weights of this table have one"),
            format!("write the unit here too, as in `{text} lb`, or leave it out everywhere"),
        ),
    };
    let check = match fault.kind {
        Kind::UnknownColumn => "unknown-key",
        _ => "table-malformed",
    };
    Finding::fault(check, Place::new(file, fault.span), message).help(help)
}

/// The nearest known word, or all of them.
fn offer(text: &str, known: &[&str]) -> String {
    let near = known.iter().map(|word| (strsim::damerau_levenshtein(&text.to_lowercase(), word), *word)).min();
    match near {
        Some((distance, word)) if distance <= 2 => format!("write `{word}`"),
        _ => {
            let all: Vec<String> = known.iter().map(|word| format!("`{word}`")).collect();
            format!("write one of {}", all.join(", "))
        }
    }
}

fn no_figure(column: Column, fault: FigureFault, text: &str) -> (String, String) {
    let what = match column {
        Column::Weight => "a weight",
        Column::Share => "a share",
    };
    let expected = format!("expected {what}, found `{text}`");
    match (fault, column) {
        (FigureFault::Comma, _) => (
            expected,
            format!("write a decimal point, or thousands without a comma: `{}` or `{}`", text.replace(',', "."), text.replace(',', "")),
        ),
        (FigureFault::Range, _) => (expected, "write one figure: a range does not add up".into()),
        (FigureFault::NoNumber, _) => (expected, "write a number, or leave the cell empty where nothing was stated".into()),
        (FigureFault::TooLong, _) => {
            (format!("`{text}` has more digits than a scale shows"), "write at most nine digits before the point and nine behind it".into())
        }
        (FigureFault::Unit, Column::Weight) => {
            (expected, "write the weight in kg, g, lb or oz, as in `2.5 kg` or `18 lb 10 oz`, or without a unit".into())
        }
        (FigureFault::Unit, Column::Share) => (expected, "write the share in percent, as in `24.5`".into()),
    }
}
