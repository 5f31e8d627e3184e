//! Records of guides and of their steps.

use super::parts::{Parts, carried, worked_at};
use super::{UrlMaker, joined, readable, species_name, text, titled};
use crate::analysis::Analysis;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::model::{Guidebook, Procedure, Step};
use crate::site::search::record::{Kind, Record};

/// Each guide, then its steps in the order of work.
pub(super) fn records(book: &Guidebook, analysis: &Analysis, parts: &Parts<'_>, urls: &impl UrlMaker) -> Vec<Record> {
    let mut records = Vec::new();
    for (procedure, computed) in book.procedures.iter().zip(&analysis.procedures) {
        records.push(guide(book, procedure, computed, urls));
        if !procedure.steps_from_yields {
            records.extend((1..).zip(&procedure.steps).map(|(number, step)| one_step(book, procedure, (number, step), parts, urls)));
        }
    }
    records
}

fn guide(book: &Guidebook, procedure: &Procedure, computed: &ProcedureAnalysis, urls: &impl UrlMaker) -> Record {
    let species = species(procedure);
    let start = procedure.start.piece.value().map_or_else(String::new, |piece| book.piece_name(piece));
    let pieces = computed.network.pieces.iter().filter(|piece| piece.is_final()).map(|piece| book.piece_name(&piece.id));
    let made = joined(pieces);
    Record {
        kind: Kind::Guide,
        species: Some(species.to_owned()),
        species_name: species_name(book, species),
        title: titled(&procedure.title, &procedure.id),
        named: true,
        step: None,
        context: start.clone(),
        state: procedure.revision.state(),
        url: urls.guide(&procedure.id),
        names: Vec::new(),
        text: joined([start, text(&procedure.purpose), made, text(&procedure.start.basis)]),
        notes: joined([text(&procedure.level), text(&procedure.after_work), readable(&procedure.id)]),
    }
}

fn one_step<'a>(
    book: &'a Guidebook,
    procedure: &'a Procedure,
    (number, step): (usize, &'a Step),
    parts: &Parts<'a>,
    urls: &impl UrlMaker,
) -> Record {
    let species = species(procedure);
    let given = step.give.iter().map(|output| book.piece_name(&output.piece.value));
    let names = |named: Vec<&'a str>| named.into_iter().map(|part| parts.names_of(species, part)).collect::<Vec<_>>();
    let said = [&step.instruction, &step.hold, &step.landmark, &step.good].map(text);
    let asked = step.ask.iter().flat_map(|ask| [text(&ask.question), text(&ask.answer)]);
    let captions = step.pictures.iter().map(|picture| text(&picture.caption));
    let tools =
        step.tools.value().into_iter().flatten().flat_map(|choice| choice.value.any_of.iter()).map(|tool| book.tool_name(&tool.value));
    Record {
        kind: Kind::Step,
        species: Some(species.to_owned()),
        species_name: species_name(book, species),
        title: titled(&step.name, &step.id),
        named: false,
        step: Some(number),
        context: titled(&procedure.title, &procedure.id),
        state: procedure.revision.state(),
        url: urls.step(&procedure.id, &step.id),
        names: Vec::new(),
        text: joined(said.into_iter().chain(given).chain(names(worked_at(step)))),
        notes: joined(
            [text(&step.mistakes), text(&step.anatomy_note)]
                .into_iter()
                .chain(asked)
                .chain(captions)
                .chain(tools)
                .chain(names(carried(step))),
        ),
    }
}

fn species(procedure: &Procedure) -> &str {
    procedure.species.value().map_or("", String::as_str)
}
