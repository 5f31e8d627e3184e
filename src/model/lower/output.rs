//! Outputs of a step, short form and long form, and declared yields.

use std::ops::Deref;

use super::context::Context;
use super::words::{purpose, word};
use crate::finding::{Finding, Place};
use crate::model::procedure::{Count, CountSpec, DeclaredYield, Output, Portions, ShareSpec};
use crate::model::quantity::parse::{self, Slip, SlipKind};
use crate::model::stated::{Spanned, Stated};
use crate::model::words::Side;
use crate::source::documents::procedure as doc;
use crate::source::documents::texts::ShareText;
use crate::source::field::{Entries, Field};

/// Names that mean something else in a cutting test or in a step, so that no piece can have them.
const RESERVED: &[&str] = &["start", "loss", "rest", "date", "cutter", "lot", "unit", "shop", "revision", "minutes", "received", "note"];

/// Lowers one output; `piece` is its key.
pub(super) fn lower(piece: Spanned<String>, field: &Field<doc::Output>, context: &mut Context<'_>) -> Output {
    let place = context.at(field.span);
    let mut output = blank(piece, place);
    match field.value() {
        None => output.share = Stated::Broken,
        Some(doc::Output::Short(text)) => output.share = share(context, text, place),
        Some(doc::Output::Long(long)) => fill(&mut output, long, context),
    }
    output
}

/// True when the key can be the id of a piece; tells when it cannot.
pub(super) fn piece_is_sound(piece: &Spanned<String>, context: &mut Context<'_>) -> bool {
    if RESERVED.contains(&piece.value.as_str()) {
        let help = if piece.value == "loss" {
            "Write `loss:` beside `give:`, at the same depth."
        } else if piece.value == "rest" {
            "Write `rest` as the share of a piece: `name-of-the-piece: rest`."
        } else {
            "Give the piece a name of its own."
        };
        context.report(Finding::fault("name-reserved", piece.place, format!("`{}` cannot be the id of a piece", piece.value)).help(help));
        return false;
    }
    context.id_is_sound(piece, "a piece")
}

/// Yields declared beside steps.
pub(super) fn yields(entries: &Entries<ShareText>, context: &mut Context<'_>) -> Vec<DeclaredYield> {
    let mut declared = Vec::new();
    for (piece, field) in context.entries(entries) {
        if piece.value == "loss" || piece_is_sound(&piece, context) {
            let share = context.read(field, |text| {
                if text.trim() == "rest" {
                    let message = "`rest` says nothing of a yield that stands beside steps";
                    return Err(Slip::new(SlipKind::Malformed, message, "Write the share of the starting weight, as in `5\u{2013}7 %`."));
                }
                parse::share(text)
            });
            declared.push(DeclaredYield { piece, share });
        }
    }
    declared
}

/// The outputs that `yields` alone stand for, the loss among them, and whether all could be read.
pub(super) fn alone(entries: &Entries<ShareText>, context: &mut Context<'_>) -> (Vec<Output>, bool) {
    let (mut outputs, mut known) = (Vec::new(), true);
    for (piece, field) in context.entries(entries) {
        let sound = piece.value == "loss" || piece_is_sound(&piece, context);
        known &= sound && !field.is_broken();
        if sound {
            let place = context.at(field.span);
            let mut output = blank(piece, place);
            output.share = field.value().map_or(Stated::Broken, |text| share(context, text, place));
            outputs.push(output);
        }
    }
    (outputs, known)
}

fn blank(piece: Spanned<String>, place: Place) -> Output {
    Output {
        piece,
        place,
        share: Stated::Absent,
        typical: Stated::Absent,
        pieces: Stated::Absent,
        counts: Vec::new(),
        holds: Vec::new(),
        purpose: Stated::Absent,
        portions: Stated::Absent,
        side: Stated::Absent,
        sources: Vec::new(),
        long: false,
    }
}

fn fill(output: &mut Output, long: &doc::LongOutput, context: &mut Context<'_>) {
    output.long = true;
    output.share = match &long.share.state {
        crate::source::field::State::Given(text) => share(context, text, context.at(long.share.span)),
        _ => Stated::Broken,
    };
    output.typical = context.single(&long.typical, parse::share);
    output.pieces = context.whole(&long.pieces, 1);
    output.counts = long.counts.value().map_or_else(Vec::new, |counts| lower_counts(counts, context));
    output.holds = context.list(&long.holds);
    output.purpose = purpose(context, &long.purpose);
    output.portions = portions(&long.portions, context);
    output.side = word(context, &long.side, "a side", Side::ALL, Side::word);
    output.sources = context.list(&long.sources);
}

fn share(context: &mut Context<'_>, text: &str, place: Place) -> Stated<ShareSpec> {
    if text.trim() == "rest" {
        return Stated::Given(Spanned::new(ShareSpec::Rest, place));
    }
    match parse::share(text) {
        Ok(range) => Stated::Given(Spanned::new(ShareSpec::Between(range), place)),
        Err(slip) => {
            context.slip(place, slip);
            Stated::Broken
        }
    }
}

fn lower_counts<T: Deref<Target = str>>(counts: &Entries<T>, context: &mut Context<'_>) -> Vec<Count> {
    let mut list = Vec::new();
    for (part, field) in context.entries(counts) {
        let number = context.read(field, |text| {
            if text.trim() == "rest" {
                return Ok(CountSpec::Rest);
            }
            parse::whole(text).map(CountSpec::Between)
        });
        list.push(Count { part, number });
    }
    list
}

fn portions(field: &Field<doc::Portions>, context: &mut Context<'_>) -> Stated<Portions> {
    if field.is_broken() {
        return Stated::Broken;
    }
    let Some(stated) = field.value() else { return Stated::Absent };
    let portions = Portions {
        weight: context.read(&stated.weight, |text| parse::mass(text)),
        thickness: context.read(&stated.thickness, |text| parse::length(text)),
        count: context.read(&stated.count, |text| parse::whole(text)),
    };
    if stated.weight.is_absent() && stated.thickness.is_absent() {
        let finding =
            Finding::fault("missing-key", context.at(field.span), "`weight` or `thickness` is missing: portions are cut to one of them");
        context.report(finding.help("Add `weight:` here, as in `weight: 155\u{2013}165 g`."));
        return Stated::Broken;
    }
    if !stated.weight.is_absent() && !stated.thickness.is_absent() {
        let message = "portions are cut to a weight or to a thickness, and both stand here";
        context.report(
            Finding::fault("portions-cut-twice", context.at(stated.thickness.key), message).help("Take out `weight:` or `thickness:`."),
        );
        return Stated::Broken;
    }
    Stated::Given(Spanned::new(portions, context.at(field.span)))
}
