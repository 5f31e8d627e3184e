//! Documents into the model: the only place that sees both.
//!
//! Nothing stops here: what cannot be understood becomes `Stated::Broken` and one finding of the form group.

mod builtin;
mod context;
mod guidebook;
mod lists;
mod output;
mod procedure;
mod records;
mod step;
mod words;

use std::collections::{BTreeMap, BTreeSet};

use super::builtin::Builtin;
use super::guidebook::{Guidebook, PictureFile};
use crate::finding::{Finding, Place, Span};
use crate::source::Documents;
pub(crate) use builtin::load as builtin;
use context::Context;

/// Turns all documents of a guidebook into the model, with the findings made on the way.
#[must_use]
pub fn lower(documents: &mut Documents) -> (Guidebook, Vec<Finding>) {
    let mut findings = Vec::new();
    let mut book = match &documents.guidebook {
        Some(document) => {
            let mut context = Context::new(document.file, &mut findings);
            guidebook::lower(&document.value, &mut context)
        }
        None => guidebook::empty(documents.sources.find("guidebook.yaml")),
    };
    for document in &documents.procedures {
        let mut context = Context::new(document.file, &mut findings);
        book.procedures.push(procedure::lower(&document.id, &document.value, &mut context));
    }
    book.procedures.sort_by(|a, b| a.id.cmp(&b.id));
    book.broken_procedures = documents.broken.iter().cloned().collect::<BTreeSet<_>>();
    lists::lower(documents, &mut book, &mut findings);
    records::lower(documents, &mut book, &mut findings);
    book.pictures = std::mem::take(&mut documents.pictures)
        .into_iter()
        .map(|(path, picture)| (path, PictureFile { bytes: picture.bytes }))
        .collect::<BTreeMap<_, _>>();
    book.builtin = Builtin::get();
    (book, findings)
}

/// A place at the beginning of a file.
fn top(file: crate::finding::FileId) -> Place {
    Place::new(file, Span::new(0, 0))
}
