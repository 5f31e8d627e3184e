//! Words of fixed lists: the right case, or a finding with the nearest one.

use std::ops::Deref;

use super::context::Context;
use crate::finding::Finding;
use crate::model::age::Age;
use crate::model::names::nearest;
use crate::model::quantity::Range;
use crate::model::quantity::parse::{self, Slip, SlipKind};
use crate::model::stated::{Spanned, Stated};
use crate::model::words::Use;
use crate::source::field::{Field, State};

/// Reads one word of a list; `what` names what the word says, as in "a use".
pub(super) fn word<T: Deref<Target = str>, W: Copy>(
    context: &mut Context<'_>,
    field: &Field<T>,
    what: &str,
    all: &[W],
    spelling: impl Fn(W) -> &'static str,
) -> Stated<W> {
    let place = context.at(field.span);
    match &field.state {
        State::Absent => Stated::Absent,
        State::Broken => Stated::Broken,
        State::Given(text) => {
            let text = text.trim();
            if let Some(found) = all.iter().copied().find(|word| spelling(*word) == text) {
                return Stated::Given(Spanned::new(found, place));
            }
            let words: Vec<&str> = all.iter().map(|word| spelling(*word)).collect();
            let help = nearest(text, words.iter().copied())
                .map_or_else(|| format!("Write one of {}.", words.join(", ")), |near| format!("Write `{near}`."));
            context.report(Finding::fault("unknown-word", place, format!("`{text}` is not {what}")).help(help));
            Stated::Broken
        }
    }
}

/// Reads a use; bare `trim` gets words of its own.
pub(super) fn purpose<T: Deref<Target = str>>(context: &mut Context<'_>, field: &Field<T>) -> Stated<Use> {
    if let Some(text) = field.value()
        && matches!(text.trim(), "trim" | "trimmings" | "trimming")
    {
        let message = format!("`{}` does not say whether it is lean or fat, and they go to different tubs", text.trim());
        context.report(Finding::fault("trim-unsorted", context.at(field.span), message).help("Write `lean-trim` or `fat-trim`."));
        return Stated::Broken;
    }
    word(context, field, "a use", Use::ALL, Use::word)
}

/// Reads an age.
pub(super) fn age<T: Deref<Target = str>>(context: &mut Context<'_>, field: &Field<T>) -> Stated<Age> {
    context.read(field, |text| {
        let text = text.trim();
        let malformed = || {
            let help = "Write `under 12 months`, `12\u{2013}30 months`, `over 30 months` or `unknown`.";
            Slip::new(SlipKind::Malformed, format!("`{text}` is not an age"), help)
        };
        if text == "unknown" {
            return Ok(Age::Unknown);
        }
        let months = text.strip_suffix("months").or_else(|| text.strip_suffix("month")).ok_or_else(malformed)?.trim();
        let one = |text: &str| text.trim().parse::<u32>().map_err(|_| malformed());
        if let Some(rest) = months.strip_prefix("under ") {
            return one(rest).map(Age::Under);
        }
        if let Some(rest) = months.strip_prefix("over ") {
            return one(rest).map(Age::Over);
        }
        let range: Range<u32> = parse::whole(months).map_err(|slip| if slip.kind == SlipKind::Inverted { slip } else { malformed() })?;
        Ok(Age::Between(range))
    })
}
