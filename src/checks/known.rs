//! What a guidebook names and what it knows, gathered for checks that hold one against the other.
//!
//! Nothing is reported here.

use std::collections::BTreeSet;

use crate::model::Guidebook;
use crate::model::procedure::{Picture, Procedure, ToolChoice};
use crate::model::stated::{Spanned, Stated};

/// All pieces that some procedure starts from or gives.
///
/// It is `None` when a procedure could not be read in full: a piece that seems unknown may have stood there.
pub(super) fn pieces(book: &Guidebook) -> Option<BTreeSet<&str>> {
    if !book.broken_procedures.is_empty() {
        return None;
    }
    let mut known = BTreeSet::new();
    for procedure in &book.procedures {
        known.insert(procedure.start.piece.value()?.as_str());
        known.extend(given_by(procedure)?);
    }
    Some(known)
}

/// All pieces that the steps of a procedure give; `None` when some could not be read.
pub(super) fn given_by(procedure: &Procedure) -> Option<BTreeSet<&str>> {
    let whole = procedure.complete && procedure.steps.iter().all(|step| step.give_known);
    whole.then(|| procedure.steps.iter().flat_map(|step| &step.give).map(|output| output.piece.value.as_str()).collect())
}

/// Every tool that is named, beside steps and on them.
pub(super) fn named_tools(book: &Guidebook) -> impl Iterator<Item = &Spanned<String>> {
    fn choices(tools: &Stated<Vec<Spanned<ToolChoice>>>) -> impl Iterator<Item = &Spanned<String>> {
        tools.value().into_iter().flatten().flat_map(|choice| &choice.value.any_of)
    }
    book.procedures
        .iter()
        .flat_map(|procedure| choices(&procedure.tools).chain(procedure.steps.iter().flat_map(|step| choices(&step.tools))))
}

/// Every protection that is named, also by the shop's own tools.
pub(super) fn named_wear(book: &Guidebook) -> impl Iterator<Item = &Spanned<String>> {
    let of_procedures = book.procedures.iter().flat_map(|procedure| {
        procedure.wear.value().into_iter().chain(procedure.steps.iter().filter_map(|step| step.wear.value())).flatten()
    });
    of_procedures.chain(book.tools.values().flat_map(|tool| tool.wear.iter().chain(&tool.never)))
}

/// Every caution that is named, also by the shop's own tools.
pub(super) fn named_cautions(book: &Guidebook) -> impl Iterator<Item = &Spanned<String>> {
    let of_procedures = book
        .procedures
        .iter()
        .flat_map(|procedure| procedure.cautions.iter().chain(procedure.steps.iter().flat_map(|step| &step.cautions)));
    of_procedures.chain(book.tools.values().flat_map(|tool| &tool.cautions))
}

/// Every picture of every step.
pub(super) fn pictures(book: &Guidebook) -> impl Iterator<Item = &Picture> {
    book.procedures.iter().flat_map(|procedure| &procedure.steps).flat_map(|step| &step.pictures)
}

/// True when a file of this path is there and could not be read.
pub(super) fn is_broken(book: &Guidebook, path: &str) -> bool {
    book.broken_files.contains(path)
}
