//! A whole procedure: its texts, its control block, and what one part of it demands of another.

use super::context::Context;
use super::words::{age, word};
use super::{output, step, top};
use crate::finding::{Finding, Span};
use crate::model::procedure::{Output, Procedure, Revision, Start, Step, Waiver};
use crate::model::quantity::parse;
use crate::model::stated::{Spanned, Stated};
use crate::model::words::{Parasites, Product, Side, State as RevisionState};
use crate::source::documents::procedure as doc;
use crate::source::field::{Required, State};

/// Lowers the procedure `id`.
pub(super) fn lower(id: &str, stated: &doc::Procedure, context: &mut Context<'_>) -> Procedure {
    let place = first_key(stated, context);
    let mut procedure = Procedure {
        id: id.to_owned(),
        file: context.file,
        place,
        title: context.text(&stated.title),
        species: species(id, stated, context),
        house_cut: context.truth(&stated.house_cut),
        revision: revision(stated, context),
        start: start(stated, context),
        steps: Vec::new(),
        steps_from_yields: false,
        yields: Vec::new(),
        purpose: context.markdown(&stated.purpose),
        level: context.text(&stated.level),
        needs: context.list(&stated.needs),
        product: word(context, &stated.product, "a class of product", Product::ALL, Product::word),
        served_raw: context.truth(&stated.served_raw),
        parasites: word(context, &stated.parasites, "a way to deal with parasites", Parasites::ALL, Parasites::word),
        allergens: context.list(&stated.allergens),
        age: age(context, &stated.age),
        tools: step::tools(&stated.tools, context),
        wear: context.stated_list(&stated.wear),
        cautions: context.list(&stated.cautions),
        cautions_known: context.is_whole(&stated.cautions),
        set_up_minutes: context.read(&stated.set_up_minutes, |text| parse::minutes(text)),
        clean_minutes: context.read(&stated.clean_minutes, |text| parse::minutes(text)),
        after_work: context.markdown(&stated.after_work),
        sources: context.list(&stated.sources),
        waivers: stated.waivers.value().map_or_else(Vec::new, |list| list.iter().filter_map(|item| waiver(item, context)).collect()),
        was: context.list(&stated.was),
        complete: true,
    };
    steps(&mut procedure, stated, context);
    procedure
}

fn first_key(stated: &doc::Procedure, context: &Context<'_>) -> crate::finding::Place {
    // A field that is absent points at the first key of the mapping, and of these keys one is always absent or present.
    let keys = [stated.title.key, stated.species.key, stated.revision.key, stated.start.key];
    keys.into_iter().min().map_or_else(|| top(context.file), |span| context.at(span))
}

fn species(id: &str, stated: &doc::Procedure, context: &mut Context<'_>) -> Stated<String> {
    let species = context.text(&stated.species);
    let folder = id.split('/').next().unwrap_or(id);
    if let Some(given) = species.given()
        && given.value != folder
    {
        let message = format!("the species is `{}`, but the file lies in `{folder}/`", given.value);
        context.report(
            Finding::fault("species-not-folder", given.place, message).help(format!("Write `species: {folder}`, or move the file.")),
        );
        return Stated::Broken;
    }
    species
}

fn revision(procedure: &doc::Procedure, context: &mut Context<'_>) -> Revision {
    let Some(stated) = procedure.revision.value() else { return broken_revision(context.at(procedure.revision.span)) };
    let revision = Revision {
        place: context.at(procedure.revision.span),
        number: context.whole(&stated.number, 1),
        date: context.date(&stated.date),
        author: context.text(&stated.author),
        owner: context.text(&stated.owner),
        approved_by: context.text(&stated.approved_by),
        review_by: context.date(&stated.review_by),
        change: context.markdown(&stated.change),
        state: word(context, &stated.state, "a state of a revision", RevisionState::ALL, RevisionState::word),
    };
    if !revision.state.is_broken() && revision.state() == RevisionState::InForce {
        let why = ": a revision in force names it";
        if stated.approved_by.is_absent() {
            context.missing(&stated.approved_by, "approved-by", why);
        }
        if stated.review_by.is_absent() {
            context.missing(&stated.review_by, "review-by", why);
        }
    }
    if stated.change.is_absent() && revision.number.value().is_some_and(|number| *number > 1) {
        context.missing(&stated.change, "change", ": from revision 2 on a guide says what changed");
    }
    revision
}

fn broken_revision(place: crate::finding::Place) -> Revision {
    Revision {
        place,
        number: Stated::Broken,
        date: Stated::Broken,
        author: Stated::Broken,
        owner: Stated::Broken,
        approved_by: Stated::Broken,
        review_by: Stated::Broken,
        change: Stated::Broken,
        state: Stated::Broken,
    }
}

fn start(procedure: &doc::Procedure, context: &mut Context<'_>) -> Start {
    let place = context.at(procedure.start.span);
    let Some(stated) = procedure.start.value() else {
        return Start {
            place,
            piece: Stated::Broken,
            weight: Stated::Broken,
            typical: Stated::Broken,
            basis: Stated::Broken,
            temperature: Stated::Broken,
            side: Stated::Broken,
            sources: Vec::new(),
        };
    };
    let mut piece = context.text(&stated.piece);
    if let Stated::Given(given) = &piece
        && !output::piece_is_sound(given, context)
    {
        piece = Stated::Broken;
    }
    Start {
        place,
        piece,
        weight: context.read(&stated.weight, |text| parse::mass(text)),
        typical: context.single(&stated.typical, parse::mass),
        basis: context.text(&stated.basis),
        temperature: context.read(&stated.temperature, |text| parse::temperature(text)),
        side: word(context, &stated.side, "a side", Side::ALL, Side::word),
        sources: context.list(&stated.sources),
    }
}

fn steps(procedure: &mut Procedure, stated: &doc::Procedure, context: &mut Context<'_>) {
    match &stated.steps.state {
        State::Given(items) => {
            for item in items {
                match item.value() {
                    Some(value) => procedure.steps.push(step::lower(value, item.span, context)),
                    None => procedure.complete = false,
                }
            }
            procedure.yields = stated.yields.value().map_or_else(Vec::new, |entries| output::yields(entries, context));
            if items.is_empty() {
                let finding = Finding::fault("missing-key", context.at(stated.steps.key), "`steps` holds no step");
                context.report(finding.help("Add a step: `- name:`, `take:`, `do:`, `give:`."));
                procedure.complete = false;
            }
            doubled_ids(procedure, items, context);
        }
        State::Broken => procedure.complete = false,
        State::Absent if stated.yields.is_absent() => {
            let finding =
                Finding::fault("missing-key", context.at(stated.steps.key), "neither `steps` nor `yields` says what comes of the start");
            context.report(finding.help("Add `steps:` with the work, or `yields:` with the shares of the start."));
            procedure.complete = false;
        }
        State::Absent => {
            procedure.steps_from_yields = true;
            match stated.yields.value() {
                None => procedure.complete = false,
                Some(entries) => {
                    let (outputs, known) = output::alone(entries, context);
                    procedure.steps.push(step_from_yields(procedure, stated.yields.key, outputs, known, context));
                }
            }
        }
    }
}

/// `yields` alone are read as one step that takes the start.
fn step_from_yields(procedure: &Procedure, key: Span, mut outputs: Vec<Output>, known: bool, context: &mut Context<'_>) -> Step {
    let place = context.at(key);
    let take: Vec<Spanned<String>> = procedure.start.piece.given().cloned().into_iter().collect();
    let loss = outputs.iter().position(|output| output.piece.value == "loss").map(|at| outputs.remove(at));
    if outputs.is_empty() && known {
        let finding = Finding::fault("step-gives-nothing", place, "`yields` names no piece");
        context.report(finding.help("Name each piece that comes of the start, with its share."));
    }
    Step {
        id: "yields".to_owned(),
        place,
        name: procedure.title.clone(),
        take_known: !take.is_empty(),
        take,
        instruction: Stated::Absent,
        hold: Stated::Absent,
        draws_toward_body: Stated::Absent,
        tools: Stated::Absent,
        tools_key: place,
        cautions: Vec::new(),
        cautions_known: true,
        wear: Stated::Absent,
        minutes: Stated::Absent,
        landmark: Stated::Absent,
        anatomy: Vec::new(),
        anatomy_note: Stated::Absent,
        good: Stated::Absent,
        mistakes: Stated::Absent,
        pictures: Vec::new(),
        ask: Vec::new(),
        give_known: known && !outputs.is_empty(),
        give: outputs,
        give_key: place,
        loss: loss.map_or(Stated::Absent, |loss| {
            let at = loss.piece.place;
            if loss.share.is_broken() { Stated::Broken } else { Stated::Given(Spanned::new(loss, at)) }
        }),
        after: Vec::new(),
        at_once: Stated::Absent,
        back_to_cold: Stated::Absent,
        cuts_through: Vec::new(),
        side: Stated::Absent,
        sources: Vec::new(),
    }
}

/// Tells of a step id that an earlier step has already, and empties it: some other id was meant.
fn doubled_ids(procedure: &mut Procedure, items: &[Required<doc::Step>], context: &mut Context<'_>) {
    let values = items.iter().filter_map(|item| item.value());
    let mut seen: Vec<(String, crate::finding::Place)> = Vec::new();
    for (step, stated) in procedure.steps.iter_mut().zip(values) {
        let span = if stated.id.is_absent() { stated.name.span } else { stated.id.span };
        let place = context.at(span);
        if step.id.is_empty() {
            continue;
        }
        match seen.iter().find(|(id, _)| *id == step.id) {
            Some((id, first)) => {
                let finding = Finding::fault("doubled-step-id", place, format!("two steps have the id `{id}`"));
                let finding = finding.also(*first, "the first of them");
                context.report(finding.help(format!("Add `id: {id}-2` to this step, or give it another name.")));
                step.id.clear();
            }
            None => seen.push((step.id.clone(), place)),
        }
    }
}

fn waiver(item: &Required<doc::Waiver>, context: &mut Context<'_>) -> Option<Waiver> {
    let stated = item.value()?;
    Some(Waiver {
        place: context.at(item.span),
        check: context.text(&stated.check),
        target: context.text(&stated.place),
        reason: context.text(&stated.reason),
        by: context.text(&stated.by),
        until: context.date(&stated.until),
    })
}
