//! Lists by id: cut lists, anatomy, the shop's own cautions and tools.

use std::collections::BTreeMap;

use super::context::{Context, Gathered};
use super::words::word;
use crate::finding::Finding;
use crate::model::guidebook::{AnatomyPart, Caution, Cut, Guidebook, Tool, TradeName};
use crate::model::quantity::parse;
use crate::model::stated::{Spanned, Stated};
use crate::model::words::{Harm, PartKind, Signal};
use crate::source::Documents;
use crate::source::documents::others as doc;
use crate::source::field::{Field, Required};

/// Lowers all lists into `book`.
pub(super) fn lower(documents: &Documents, book: &mut Guidebook, gathered: &mut Gathered<'_>) {
    for document in &documents.cuts {
        let mut context = Context::new(document.file, gathered);
        let species = document.id.trim_start_matches("cuts/").to_owned();
        book.cut_lists.insert(species.clone());
        for (piece, field) in context.entries(&document.value) {
            if !super::output::piece_is_sound(&piece, &mut context) {
                continue;
            }
            if let Some(earlier) = book.cuts.get(&piece.value) {
                let message = format!("`{}` stands in the cut list of {} too", piece.value, earlier.species);
                let finding = Finding::fault("doubled-piece", piece.place, message).also(earlier.piece.place, "the first of them");
                context.report(finding.help("Give one of the two an id of its own: an id is the same piece everywhere."));
                continue;
            }
            if let Some(cut) = cut(&piece, &species, field, &mut context) {
                book.cuts.insert(piece.value, cut);
            }
        }
    }
    for document in &documents.anatomy {
        let mut context = Context::new(document.file, gathered);
        let species = document.id.trim_start_matches("anatomy/").to_owned();
        let mut parts = BTreeMap::new();
        for (part, field) in context.entries(&document.value) {
            match field.value() {
                Some(doc::AnatomyEntry::Like(group)) if part.value == "like" => {
                    book.anatomy_like.insert(species.clone(), Spanned::new(group.trim().to_owned(), context.at(field.span)));
                }
                Some(doc::AnatomyEntry::Like(_)) => {
                    let finding =
                        Finding::fault("wrong-kind", context.at(field.span), "expected a mapping that says what the part is, found text");
                    context.report(finding.help("Write `name:` and `kind:` below it."));
                    parts.insert(part.value.clone(), unread_part(part));
                }
                Some(doc::AnatomyEntry::Part(_)) if !context.id_is_sound(&part, "an anatomical part") => {}
                Some(doc::AnatomyEntry::Part(stated)) => {
                    parts.insert(part.value.clone(), anatomy(part, stated, &mut context));
                }
                // What could not be read is told; the part is known all the same.
                None => {
                    parts.insert(part.value.clone(), unread_part(part));
                }
            }
        }
        book.anatomy.insert(species, parts);
    }
    if let Some(document) = &documents.cautions {
        let mut context = Context::new(document.file, gathered);
        for (id, field) in context.entries(&document.value) {
            let names = names(&id, "a caution", &mut context);
            if let Some(stated) = field.value() {
                let caution = caution(id, stated, &mut context);
                book.cautions.extend(names.into_iter().map(|name| (name, caution.clone())));
            }
        }
    }
    if let Some(document) = &documents.tools {
        let mut context = Context::new(document.file, gathered);
        for (id, field) in context.entries(&document.value) {
            let names = names(&id, "a tool", &mut context);
            if let Some(stated) = field.value() {
                let tool = tool(id, stated, &context);
                book.tools.extend(names.into_iter().map(|name| (name, tool.clone())));
            }
        }
    }
}

/// The id under which an entry is known. One that can't be an id is told, and the entry is known under what it was meant
/// to be as well, so that whoever names it either way is not told again.
fn names(id: &Spanned<String>, what: &str, context: &mut Context<'_>) -> Vec<String> {
    if context.id_is_sound(id, what) { vec![id.value.clone()] } else { vec![id.value.clone(), super::step::hyphenated(&id.value)] }
}

fn cut(piece: &Spanned<String>, species: &str, field: &Field<doc::Cut>, context: &mut Context<'_>) -> Option<Cut> {
    let stated = field.value()?;
    let codes = stated.codes.value().map_or_else(Vec::new, |codes| {
        context.entries(codes).into_iter().filter_map(|(system, code)| Some((system.value, code.value()?.trim().to_owned()))).collect()
    });
    Some(Cut {
        piece: piece.clone(),
        species: species.to_owned(),
        name: context.text(&stated.name),
        also: stated.also.value().map_or_else(Vec::new, |names| names.iter().flat_map(|name| trade_names(name, context)).collect()),
        codes,
        weight: context.read(&stated.weight, |text| parse::mass(text)),
        per_animal: context.whole(&stated.per_animal, 1),
        region: context.text(&stated.region),
        lies: context.text(&stated.lies),
        was: context.list(&stated.was),
    })
}

/// One name, or the names of a `{ name: region }` mapping.
fn trade_names(item: &Required<doc::TradeName>, context: &Context<'_>) -> Vec<TradeName> {
    match item.value() {
        None => Vec::new(),
        Some(doc::TradeName::Everywhere(name)) => {
            vec![TradeName { name: Spanned::new(name.trim().to_owned(), context.at(item.span)), region: None }]
        }
        Some(doc::TradeName::Regional(entries)) => context
            .entries(entries)
            .into_iter()
            .map(|(name, region)| TradeName { name, region: region.value().map(|region| region.trim().to_owned()) })
            .collect(),
    }
}

/// A part of which nothing is known but its id.
const fn unread_part(part: Spanned<String>) -> AnatomyPart {
    AnatomyPart {
        part,
        name: Stated::Broken,
        also: Vec::new(),
        kind: Stated::Broken,
        count: Stated::Broken,
        regions: Vec::new(),
        does: Stated::Broken,
        lies: Stated::Broken,
        sources: Vec::new(),
    }
}

fn anatomy(part: Spanned<String>, stated: &doc::AnatomyPart, context: &mut Context<'_>) -> AnatomyPart {
    AnatomyPart {
        part,
        name: context.text(&stated.name),
        also: context.list(&stated.also).into_iter().map(|name| name.value).collect(),
        kind: word(context, &stated.kind, "a kind of anatomical part", PartKind::ALL, PartKind::word),
        count: context.read(&stated.count, |text| parse::whole(text)),
        regions: context.list(&stated.regions),
        does: context.markdown(&stated.does),
        lies: context.markdown(&stated.lies),
        sources: context.list(&stated.sources),
    }
}

fn caution(id: Spanned<String>, stated: &doc::Caution, context: &mut Context<'_>) -> Caution {
    Caution {
        id,
        name: context.text(&stated.name),
        signal: word(context, &stated.signal, "a signal word", Signal::ALL, Signal::word),
        hazard: context.text(&stated.hazard),
        consequence: context.text(&stated.consequence),
        avoid: context.text(&stated.avoid),
        harm: word(context, &stated.harm, "a degree of harm", Harm::ALL, Harm::word),
        sign: context.text(&stated.sign),
        sources: context.list(&stated.sources),
    }
}

fn tool(id: Spanned<String>, stated: &doc::Tool, context: &Context<'_>) -> Tool {
    Tool {
        id,
        name: context.text(&stated.name),
        cautions: context.list(&stated.cautions),
        wear: context.list(&stated.wear),
        never: context.list(&stated.never),
    }
}
