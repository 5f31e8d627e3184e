//! Documents into the model: the only place that sees both.
//!
//! Nothing stops here: what cannot be understood becomes `Stated::Broken` and one finding of the form group.

mod builtin;
mod context;
mod free_text;
mod guidebook;
mod lists;
mod output;
mod procedure;
mod records;
mod step;
mod words;

use std::collections::BTreeMap;

use super::builtin::Builtin;
use super::guidebook::{Guidebook, PictureFile};
use super::own_theme::{OwnTheme, ThemeFile};
use crate::finding::{Finding, Place, Span};
use crate::source::Documents;
pub(crate) use builtin::load as builtin;
use context::{Context, Gathered};

/// Turns all documents of a guidebook into the model, with the findings made on the way.
#[must_use]
pub fn lower(documents: &mut Documents) -> (Guidebook, Vec<Finding>) {
    let mut gathered = Gathered { sources: &documents.sources, findings: Vec::new(), links: Vec::new() };
    let mut book = match &documents.guidebook {
        Some(document) => guidebook::lower(&document.value, &mut Context::new(document.file, &mut gathered)),
        None => guidebook::unread(documents.sources.find("guidebook.yaml")),
    };
    for document in &documents.procedures {
        let mut context = Context::new(document.file, &mut gathered);
        book.procedures.push(procedure::lower(&document.id, &document.value, &mut context));
    }
    book.procedures.sort_by(|a, b| a.id.cmp(&b.id));
    lists::lower(documents, &mut book, &mut gathered);
    records::lower(documents, &mut book, &mut gathered);
    unread(documents, &mut gathered.findings);
    let Gathered { findings, links, .. } = gathered;
    book.links = links;
    book.unshown_pictures = documents.unshown.iter().cloned().collect();
    book.broken_files = documents.broken.iter().cloned().collect();
    book.broken_procedures = documents.broken.iter().filter_map(|path| path.strip_suffix(".yaml").map(str::to_owned)).collect();
    book.pictures = std::mem::take(&mut documents.pictures)
        .into_iter()
        .map(|(path, picture)| (path, PictureFile { bytes: picture.bytes }))
        .collect::<BTreeMap<_, _>>();
    let files = std::mem::take(&mut documents.theme).into_iter();
    book.own_theme = OwnTheme {
        files: files.map(|(path, held)| (path, ThemeFile { file: held.file, bytes: held.bytes })).collect(),
        folders: std::mem::take(&mut documents.theme_folders),
        other_folders: std::mem::take(&mut documents.other_folders),
    };
    book.builtin = Builtin::get();
    (book, findings)
}

/// Tells of translations, which stand in the guidebook and are not read.
fn unread(documents: &Documents, findings: &mut Vec<Finding>) {
    for path in &documents.translations {
        let Some(file) = documents.sources.find(path) else { continue };
        let finding =
            Finding::advice("translation-unread", top(file), "translations are not read by this version, so the original is shown");
        findings.push(finding.help("Keep it for later: nothing is lost."));
    }
}

/// A place at the beginning of a file.
fn top(file: crate::finding::FileId) -> Place {
    Place::new(file, Span::new(0, 0))
}
