//! One step: its texts, what it takes and gives, and the lists that belong to it.

use super::context::Context;
use super::output;
use super::words::word;
use crate::finding::{Finding, Place, Span};
pub(super) use crate::model::names::hyphenated;
use crate::model::procedure::{After, BackToCold, Output, Picture, PictureLine, Question, Step, ToolChoice};
use crate::model::quantity::parse;
use crate::model::stated::{Spanned, Stated};
use crate::model::words::Side;
use crate::source::documents::procedure as doc;
use crate::source::documents::shared::{AnyOf, OneOrMany, Picture as PictureDoc, Question as QuestionDoc, ToolChoice as ToolDoc};
use crate::source::field::{Field, Required, State};

/// Lowers one step; `span` is where its mapping begins.
pub(super) fn lower(stated: &doc::Step, span: Span, context: &mut Context<'_>) -> Step {
    let place = context.at(span);
    let name = context.text(&stated.name);
    let id = match stated.id.value() {
        Some(id) => {
            // A step whose id can't be read may be any that is named elsewhere; an empty id says so.
            let id = Spanned::new(id.trim().to_owned(), context.at(stated.id.span));
            if context.id_is_sound(&id, "a step") { id.value } else { String::new() }
        }
        None => name.value().map_or_else(String::new, |name| hyphenated(name)),
    };
    let (take, take_known) = take(&stated.take, context);
    let (give, give_known) = give(&stated.give, context);
    let loss = match &stated.loss.state {
        State::Absent => Stated::Absent,
        State::Broken => Stated::Broken,
        State::Given(_) => {
            let key = Spanned::new("loss".to_owned(), context.at(stated.loss.key));
            let loss = output::lower(key, &stated.loss, context);
            if loss.share.is_broken() { Stated::Broken } else { Stated::Given(Spanned::new(loss, context.at(stated.loss.span))) }
        }
    };
    Step {
        id,
        place,
        take,
        take_known,
        instruction: context.markdown(&stated.instruction),
        hold: context.markdown(&stated.hold),
        draws_toward_body: draws(stated, context),
        tools: tools(&stated.tools, context),
        tools_key: if stated.tools.is_absent() { context.at(first_line(stated, span)) } else { context.at(stated.tools.key) },
        cautions: context.list(&stated.cautions),
        cautions_known: context.is_whole(&stated.cautions),
        wear: context.stated_list(&stated.wear),
        minutes: context.read(&stated.minutes, |text| parse::minutes(text)),
        landmark: context.markdown(&stated.landmark),
        anatomy: context.list(&stated.anatomy),
        anatomy_note: context.markdown(&stated.anatomy_note),
        good: context.markdown(&stated.good),
        mistakes: context.markdown(&stated.mistakes),
        pictures: stated.pictures.value().map_or_else(Vec::new, |pictures| pictures.iter().filter_map(|p| picture(p, context)).collect()),
        ask: stated.ask.value().map_or_else(Vec::new, |asked| asked.iter().filter_map(|q| question(q, context)).collect()),
        give,
        give_key: context.at(stated.give.key),
        give_known,
        loss,
        after: stated.after.value().map_or_else(Vec::new, |list| list.iter().filter_map(|item| after(item, context)).collect()),
        at_once: context.whole(&stated.at_once, 1),
        back_to_cold: back_to_cold(&stated.back_to_cold, context),
        cuts_through: context.list(&stated.cuts_through),
        side: word(context, &stated.side, "a side", Side::ALL, Side::word),
        sources: context.list(&stated.sources),
        name,
    }
}

/// The first line of the step's mapping: its name, or wherever the mapping begins.
fn first_line(stated: &doc::Step, span: Span) -> Span {
    if stated.name.is_broken() { span } else { stated.name.key }
}

fn draws(stated: &doc::Step, context: &mut Context<'_>) -> Stated<bool> {
    word(context, &stated.draws, "a way to draw the blade", &[true], |_| "toward-body")
}

fn take(field: &Field<OneOrMany>, context: &mut Context<'_>) -> (Vec<Spanned<String>>, bool) {
    let (pieces, known) = ids(field, context);
    if pieces.is_empty() && known {
        let finding = Finding::fault("step-takes-nothing", context.at(field.key), "the step takes no piece");
        context.report(finding.help("Name the piece that is cut, as in `take: pork-loin`."));
        return (pieces, false);
    }
    (pieces, known)
}

/// One id or several, and whether all could be read.
fn ids(field: &Field<OneOrMany>, context: &Context<'_>) -> (Vec<Spanned<String>>, bool) {
    match field.value() {
        None => (Vec::new(), false),
        Some(OneOrMany::One(id)) => (vec![Spanned::new(id.trim().to_owned(), context.at(field.span))], true),
        Some(OneOrMany::Many(items)) => (context.items(items), items.iter().all(|item| !item.is_broken())),
    }
}

fn give(field: &Field<crate::source::field::Entries<doc::Output>>, context: &mut Context<'_>) -> (Vec<Output>, bool) {
    let Some(entries) = field.value() else { return (Vec::new(), false) };
    let mut known = true;
    let mut outputs = Vec::new();
    for (piece, value) in context.entries(entries) {
        let sound = output::piece_is_sound(&piece, context);
        known &= sound && !value.is_broken();
        if sound {
            outputs.push(output::lower(piece, value, context));
        }
    }
    if outputs.is_empty() && known {
        let finding = Finding::fault("step-gives-nothing", context.at(field.key), "the step gives no piece");
        context.report(finding.help("Name each piece that comes off, with its share."));
        known = false;
    }
    (outputs, known)
}

/// Tools, each one id or a choice of ids.
pub(super) fn tools(field: &Field<Vec<Required<ToolDoc>>>, context: &mut Context<'_>) -> Stated<Vec<Spanned<ToolChoice>>> {
    let place = context.at(field.span);
    match &field.state {
        State::Absent => Stated::Absent,
        State::Broken => Stated::Broken,
        State::Given(items) => {
            let choices = items
                .iter()
                .filter_map(|item| {
                    let at = context.at(item.span);
                    let any_of = match item.value()? {
                        ToolDoc::One(id) => vec![Spanned::new(id.trim().to_owned(), at)],
                        ToolDoc::Any(choice) => choice_of(choice, context),
                    };
                    (!any_of.is_empty()).then(|| Spanned::new(ToolChoice { any_of }, at))
                })
                .collect();
            Stated::Given(Spanned::new(choices, place))
        }
    }
}

fn choice_of(choice: &AnyOf, context: &mut Context<'_>) -> Vec<Spanned<String>> {
    if choice.any_of.value().is_some_and(Vec::is_empty) {
        let finding = Finding::fault("empty-value", context.at(choice.any_of.key), "`any-of` names no tool");
        context.report(finding.help("Name the tools of which any serves, as in `[band-saw, hand-saw]`."));
    }
    context.list(&choice.any_of)
}

fn picture(item: &Required<PictureDoc>, context: &mut Context<'_>) -> Option<Picture> {
    let stated = item.value()?;
    let file = context.text(&stated.file);
    if let Some(path) = file.given()
        && leaves_the_guidebook(&path.value)
    {
        let finding = Finding::fault("link-leaves-guidebook", path.place, format!("`{}` leads out of the guidebook", path.value));
        context.report(finding.help("Copy the picture into `pictures/` and name it from there."));
        return None;
    }
    let lines = stated.lines.value().map_or_else(Vec::new, |lines| lines.iter().filter_map(|line| picture_line(line, context)).collect());
    Some(Picture {
        place: context.at(item.span),
        file,
        alt: context.text(&stated.alt),
        caption: context.text(&stated.caption),
        side: word(context, &stated.side, "a side", Side::ALL, Side::word),
        lines,
    })
}

/// True for a path that is absolute or climbs above the guidebook.
pub(super) fn leaves_the_guidebook(path: &str) -> bool {
    let mut depth = 0_i32;
    if path.starts_with('/') || path.contains('\\') || path.contains(':') {
        return true;
    }
    path.split('/').any(|part| {
        depth += match part {
            ".." => -1,
            "" | "." => 0,
            _ => 1,
        };
        depth < 0
    })
}

fn picture_line(item: &Required<crate::source::documents::shared::PictureLine>, context: &mut Context<'_>) -> Option<PictureLine> {
    let stated = item.value()?;
    let mut points = Vec::new();
    for point in stated.points.value()? {
        let numbers: Vec<f64> = point.value()?.iter().filter_map(|number| fraction(number, context)).collect();
        let [x, y] = numbers.as_slice() else {
            let finding = Finding::fault("value-malformed", context.at(point.span), "a point has two numbers");
            context.report(finding.help("Write it as `[0.12, 0.40]`: parts of the width and of the height."));
            return None;
        };
        points.push((*x, *y));
    }
    if points.len() < 2 {
        let finding = Finding::fault("value-malformed", context.at(stated.points.span), "a line has two points or more");
        context.report(finding.help("Write it as `[[0.12, 0.40], [0.85, 0.44]]`."));
        return None;
    }
    Some(PictureLine { label: stated.label.value()?.trim().to_owned(), points })
}

fn fraction(field: &Required<crate::source::documents::texts::Line>, context: &mut Context<'_>) -> Option<f64> {
    let text = field.value()?.trim();
    match text.parse::<f64>() {
        Ok(value) if (0.0..=1.0).contains(&value) => Some(value),
        _ => {
            let finding = Finding::fault(
                "value-out-of-bounds",
                context.at(field.span),
                format!("expected a part of the picture from 0 to 1, found `{text}`"),
            );
            context.report(finding.help("Write a number from 0 to 1."));
            Some(0.0)
        }
    }
}

fn question(item: &Required<QuestionDoc>, context: &mut Context<'_>) -> Option<Question> {
    let stated = item.value()?;
    Some(Question { place: context.at(item.span), question: context.text(&stated.question), answer: context.markdown(&stated.answer) })
}

fn after(item: &Required<doc::After>, context: &Context<'_>) -> Option<After> {
    let stated = item.value()?;
    let step = Spanned::new(stated.step.value()?.trim().to_owned(), context.at(stated.step.span));
    Some(After { step, why: stated.why.value().map_or_else(String::new, |why| why.trim().to_owned()) })
}

fn back_to_cold(field: &Field<OneOrMany>, context: &Context<'_>) -> Stated<BackToCold> {
    let place: Place = context.at(field.span);
    match &field.state {
        State::Absent => Stated::Absent,
        State::Broken => Stated::Broken,
        State::Given(_) => {
            let (pieces, _) = ids(field, context);
            let all = matches!(pieces.as_slice(), [only] if only.value == "all");
            Stated::Given(Spanned::new(if all { BackToCold::All } else { BackToCold::Pieces(pieces) }, place))
        }
    }
}
