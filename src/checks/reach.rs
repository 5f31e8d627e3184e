//! What the `where` of a waiver covers.
//!
//! - A step id covers the step: all from its first key to its end.
//! - A piece id covers the piece's entries in `give` and `yields`, and its name in `take` and in `start.piece`.
//! - A key path covers a key and its value: `start.weight` from the top of the file; `legs-off.give` from a step.
//!   An item of a list is named by its position, from 1: `legs-off.pictures.2`.
//!
//! Where one word is several of these, a step goes before a piece, and a piece before a key. An advice about a key
//! that is not there stands at the mapping that lacks it, so that mapping is named. Nothing is reported here.

use crate::finding::{Part, SourceMap, Span};
use crate::model::Procedure;
use crate::model::procedure::Step;

/// The bytes of the procedure's file that `named` covers; none where it names nothing of the file.
pub(super) fn reach(procedure: &Procedure, sources: &SourceMap, named: &str) -> Vec<Span> {
    let parts = sources.get(procedure.file).map_or(&[][..], |source| source.parts());
    let (head, below) = named.split_once('.').map_or((named, None), |(head, below)| (head, Some(below)));
    let step = procedure.steps.iter().find(|step| !step.id.is_empty() && step.id == head);
    if let Some(path) = step.and_then(|step| step_path(step, parts)) {
        let spans = at_path(parts, &below.map_or_else(|| path.to_owned(), |below| format!("{path}.{below}")));
        if !spans.is_empty() {
            return spans;
        }
    }
    let of_piece = if below.is_none() { of_piece(procedure, parts, named) } else { Vec::new() };
    if of_piece.is_empty() { at_path(parts, named) } else { of_piece }
}

/// Words that `reach` understands in this procedure, to offer the nearest.
pub(super) fn names<'a>(procedure: &'a Procedure, sources: &'a SourceMap) -> impl Iterator<Item = &'a str> {
    let parts = sources.get(procedure.file).map_or(&[][..], |source| source.parts());
    let steps = procedure.steps.iter().map(|step| step.id.as_str());
    let pieces = procedure.steps.iter().flat_map(|step| &step.give).map(|output| output.piece.value.as_str());
    let keys = parts.iter().map(|part| part.path.as_str()).filter(|path| !path.starts_with("steps.") && !path.starts_with("waivers"));
    steps.chain(pieces).chain(keys).filter(|name| !name.is_empty())
}

fn at_path(parts: &[Part], path: &str) -> Vec<Span> {
    parts.iter().filter(|part| part.path == path).map(|part| part.span).collect()
}

/// The name of a step's part: `steps.3`. A step whose reading failed is in the file and not in the model, so the
/// place tells which it is, not the position.
fn step_path<'a>(step: &Step, parts: &'a [Part]) -> Option<&'a str> {
    let is_item = |path: &str| path.strip_prefix("steps.").is_some_and(|item| !item.contains('.'));
    let part = parts.iter().find(|part| part.span.start == step.place.span.start && is_item(&part.path));
    part.map(|part| part.path.as_str())
}

fn of_piece(procedure: &Procedure, parts: &[Part], piece: &str) -> Vec<Span> {
    let mut spans = at_path(parts, &format!("yields.{piece}"));
    for step in &procedure.steps {
        if let Some(path) = step_path(step, parts) {
            spans.extend(at_path(parts, &format!("{path}.give.{piece}")));
        }
        spans.extend(step.take.iter().filter(|taken| taken.value == piece).map(|taken| taken.place.span));
    }
    spans.extend(procedure.start.piece.given().filter(|start| start.value == piece).map(|start| start.place.span));
    spans
}
