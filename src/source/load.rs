//! All files of a guidebook to its documents, in parallel, in an order that does not depend on the reading.

use rayon::prelude::*;
use serde::de::DeserializeOwned;

use super::documents::guidebook::Guidebook;
use super::documents::others::{AnatomyEntry, Caution, Course, Cut, Prices, Tool};
use super::documents::procedure::Procedure;
use super::field::Entries;
use super::layout::{Role, Stray, role, without_ending};
use super::outline::outline;
use super::picture::{PictureFile, picture};
use super::theme::{self, ThemeFile};
use super::yaml::Node;
use super::{Document, Documents, Entry, Files, Table, bytes, decode, table, yaml};
use crate::finding::{FileId, Finding, Level, Part, Place, Span, order};

pub(super) const GUIDEBOOK: &str = "guidebook.yaml";

/// Reads every file. Files get their ids in the order of their paths; findings are sorted.
#[must_use]
pub fn load(files: Files) -> (Documents, Vec<Finding>) {
    let missing = !files.contains_key(GUIDEBOOK);
    let theme = theme::own(&files);
    let (theme_folders, other_folders) = theme::folders(&files);
    let mut kept: Vec<(String, Role, Option<Entry>)> = files
        .into_iter()
        .map(|(path, entry)| (role(&path, theme.as_deref()), path, entry))
        .filter(|(role, _, entry)| match role {
            Role::Ignored => false,
            Role::Other => matches!(entry, Entry::LinkOutside { .. } | Entry::Unreadable { .. }),
            _ => true,
        })
        .map(|(role, path, entry)| (path, role, Some(entry)))
        .collect();
    if missing {
        let at = kept.partition_point(|(path, ..)| path.as_str() < GUIDEBOOK);
        kept.insert(at, (GUIDEBOOK.to_owned(), Role::Guidebook, None));
    }
    let read: Vec<Reading> = kept
        .into_par_iter()
        .enumerate()
        .map(|(at, (path, role, entry))| {
            let file = FileId(u32::try_from(at).unwrap_or(u32::MAX));
            let marked = matches!(&entry, Some(Entry::File(bytes)) if bytes.starts_with(bytes::MARK));
            let (text, findings, outcome) = read_one(&path, &role, entry, file);
            Reading { path, role, text, marked, findings, outcome }
        })
        .collect();
    let mut documents = Documents { theme_folders, other_folders, ..Documents::default() };
    let mut findings = Vec::new();
    for reading in read {
        findings.extend(reading.findings);
        let file = documents.sources.add(reading.path.clone(), reading.text);
        if reading.marked {
            documents.sources.set_mark(file, bytes::MARK.len() as u32);
        }
        let path = match (&reading.role, &theme) {
            (Role::Theme, Some(folder)) => reading.path.get(folder.len() + 1..).unwrap_or_default().to_owned(),
            _ => reading.path,
        };
        documents.put(path, &reading.role, file, reading.outcome);
    }
    order::sort(&mut findings, &documents.sources);
    (documents, findings)
}

/// A file after reading.
struct Reading {
    path: String,
    role: Role,
    text: String,
    /// Whether a byte order mark stands before the text.
    marked: bool,
    findings: Vec<Finding>,
    outcome: Outcome,
}

/// What came of it.
enum Outcome {
    Guidebook(Box<Guidebook>),
    Procedure(Box<Procedure>, Vec<Part>),
    Cuts(Entries<Cut>),
    Anatomy(Entries<AnatomyEntry>),
    Cautions(Entries<Caution>),
    Tools(Entries<Tool>),
    Course(Course),
    Prices(Box<Prices>),
    Table(Table),
    Page,
    Picture(PictureFile),
    /// A file of the theme that is no text.
    Theme(Vec<u8>),
    /// A text of the theme: it stands among the sources.
    ThemeText,
    /// A picture of a kind that no browser shows.
    Unshown,
    /// Nothing to keep.
    Nothing,
    /// It exists and could not be read.
    Broken,
}

fn read_one(path: &str, role: &Role, entry: Option<Entry>, file: FileId) -> (String, Vec<Finding>, Outcome) {
    let place = Place::new(file, Span::new(0, 0));
    let failed = |finding: Finding| (String::new(), vec![finding], Outcome::Broken);
    let bytes = match entry {
        Some(Entry::File(bytes)) => bytes,
        None => {
            let message = "this folder holds no `guidebook.yaml`, which every guidebook begins with";
            return failed(Finding::fault("guidebook-missing", place, message).help("write one that holds at least `title: …`"));
        }
        Some(Entry::LinkOutside { target }) => {
            let message = format!("this link leads out of the guidebook, to `{target}`");
            return failed(Finding::fault("link-leaves-guidebook", place, message).help("put the file itself here"));
        }
        Some(Entry::Unreadable { reason }) => {
            let message = format!("this file can't be read: {reason}");
            return failed(
                Finding::fault("file-unreadable", place, message).help("let the one who runs this read it, or take it out of the folder"),
            );
        }
        Some(Entry::TooLarge { bytes }) => {
            let message = format!("this file holds {bytes} bytes, more than are read");
            return failed(Finding::fault("too-large", place, message).help("make it smaller, or take it out of the folder"));
        }
    };
    match role {
        Role::Picture => {
            let (picture, finding) = picture(path, file, bytes);
            // Without a finding it is of a kind that no browser shows: told where it is named, if it is.
            let other = if finding.is_some() { Outcome::Broken } else { Outcome::Unshown };
            (String::new(), finding.into_iter().collect(), picture.map_or(other, Outcome::Picture))
        }
        Role::Theme if !theme::is_text(path) => (String::new(), Vec::new(), Outcome::Theme(bytes)),
        Role::Stray(Stray { level, message, help, .. }) => {
            let finding = match level {
                Level::Fault => Finding::fault("file-ending", place, message.clone()),
                Level::Advice => Finding::advice("file-out-of-place", place, message.clone()),
            };
            (String::new(), vec![finding.help(help.clone())], Outcome::Nothing)
        }
        _ => match bytes::text_of(bytes) {
            Ok(text) => {
                let (outcome, findings) = read_text(role, &text, file);
                (text, findings, outcome)
            }
            Err(refusal) => {
                let finding = Finding::fault(refusal.check, Place::new(file, refusal.span), refusal.message).help(refusal.help);
                (refusal.text, vec![finding], Outcome::Broken)
            }
        },
    }
}

fn read_text(role: &Role, text: &str, file: FileId) -> (Outcome, Vec<Finding>) {
    match role {
        Role::Guidebook => document(text, file, true, |value, _| Outcome::Guidebook(Box::new(value))),
        Role::Procedure => document(text, file, true, |value, node| Outcome::Procedure(Box::new(value), outline(node))),
        Role::Cuts => document(text, file, false, |value, _| Outcome::Cuts(value)),
        Role::Anatomy => document(text, file, false, |value, _| Outcome::Anatomy(value)),
        Role::Cautions => document(text, file, false, |value, _| Outcome::Cautions(value)),
        Role::Tools => document(text, file, false, |value, _| Outcome::Tools(value)),
        Role::Course => document(text, file, true, |value, _| Outcome::Course(value)),
        Role::Prices => document(text, file, false, |value, _| Outcome::Prices(Box::new(value))),
        Role::CuttingTest => {
            let (table, findings) = table::read(text, file);
            (table.map_or(Outcome::Broken, Outcome::Table), findings)
        }
        Role::Page => (Outcome::Page, Vec::new()),
        Role::Theme => (Outcome::ThemeText, Vec::new()),
        Role::Picture | Role::Translation | Role::Other | Role::Ignored | Role::Stray(_) => (Outcome::Nothing, Vec::new()),
    }
}

/// Reads a document. Where it is not `needed`, an empty file is advice: one may keep a list with nothing in it yet.
fn document<T: DeserializeOwned>(text: &str, file: FileId, needed: bool, make: impl Fn(T, &Node) -> Outcome) -> (Outcome, Vec<Finding>) {
    let (node, mut findings) = yaml::parse(text, file);
    let Some(node) = node else {
        let empty = findings.iter_mut().find(|finding| finding.check == "empty-file").filter(|_| !needed);
        return match empty {
            Some(finding) => {
                *finding =
                    Finding::advice("empty-list", finding.place, "nothing is listed in this file").help("delete it, or list something");
                (Outcome::Nothing, findings)
            }
            None => (Outcome::Broken, findings),
        };
    };
    let (value, more) = decode::decode(&node, file);
    findings.extend(more);
    (value.map_or(Outcome::Broken, |value| make(value, &node)), findings)
}

impl Documents {
    fn put(&mut self, path: String, role: &Role, file: FileId, outcome: Outcome) {
        let id = without_ending(&path).to_owned();
        match outcome {
            Outcome::Guidebook(value) => self.guidebook = Some(Document { file, id, value: *value }),
            Outcome::Procedure(value, parts) => {
                self.sources.name_parts(file, parts);
                self.procedures.push(Document { file, id, value: *value });
            }
            Outcome::Cuts(value) => self.cuts.push(Document { file, id, value }),
            Outcome::Anatomy(value) => self.anatomy.push(Document { file, id, value }),
            Outcome::Cautions(value) => self.cautions = Some(Document { file, id, value }),
            Outcome::Tools(value) => self.tools = Some(Document { file, id, value }),
            Outcome::Course(value) => self.courses.push(Document { file, id, value }),
            Outcome::Prices(value) => self.prices = Some(Document { file, id, value: *value }),
            Outcome::Table(value) => self.cutting_tests.push(Document { file, id, value }),
            Outcome::Page => {
                let value = self.sources.get(file).map_or_else(String::new, |source| source.text().to_owned());
                self.pages.push(Document { file, id, value });
            }
            Outcome::Picture(picture) => {
                self.pictures.insert(path, picture);
            }
            Outcome::Theme(bytes) => {
                self.theme.insert(path, ThemeFile { file, bytes });
            }
            Outcome::ThemeText => {
                let bytes = self.sources.get(file).map_or_else(Vec::new, |source| source.text().as_bytes().to_vec());
                self.theme.insert(path, ThemeFile { file, bytes });
            }
            Outcome::Unshown => self.unshown.push(path),
            Outcome::Broken => self.broken.push(path),
            Outcome::Nothing => match role {
                Role::Translation => self.translations.push(path),
                Role::Stray(Stray { meant: Some(meant), .. }) => self.broken.push(meant.clone()),
                _ => {}
            },
        }
    }
}

#[cfg(test)]
mod tests;
