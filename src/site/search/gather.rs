//! Everything in a guidebook that search can lead to: pieces, parts of the animal, guides, steps, courses, pages.
//!
//! A piece leads to the step that gives it, by house cut first; a starting piece to the guide that starts from it.

mod leads;
mod parts;
mod pieces;
mod steps;

use super::plain::{first_heading, plain};
use super::record::{Kind, Record};
use super::token::words;
use crate::analysis::Analysis;
use crate::model::words::State;
use crate::model::{Guidebook, Stated};
use leads::Leads;
use parts::Parts;

/// Makes the address of each page, from the root of the site, with the place on it where there is one.
pub trait UrlMaker {
    /// The guide of a procedure.
    fn guide(&self, procedure: &str) -> String;
    /// A step on the guide of a procedure.
    fn step(&self, procedure: &str, step: &str) -> String;
    /// Where a piece stands that no guide gives or starts from; `None` when it stands nowhere.
    fn piece(&self, species: &str, piece: &str) -> Option<String>;
    /// A course; `None` when it has no page.
    fn course(&self, course: &str) -> Option<String>;
    /// A free page; `None` when it is not published.
    fn page(&self, page: &str) -> Option<String>;
}

/// All records of a guidebook, in the order of kinds; guides and their steps in the order of ids and of work.
#[must_use]
pub fn records(book: &Guidebook, analysis: &Analysis, urls: &impl UrlMaker) -> Vec<Record> {
    let leads = Leads::of(book, analysis);
    let mut records = pieces::records(book, &leads, urls);
    let known = Parts::of(book);
    records.extend(parts::records(book, &known, &records, urls));
    records.extend(steps::records(book, analysis, &known, urls));
    records.extend(courses(book, urls));
    records.extend(pages(book, urls));
    records
}

fn courses<'a>(book: &'a Guidebook, urls: &'a impl UrlMaker) -> impl Iterator<Item = Record> + 'a {
    book.courses.iter().filter_map(|course| {
        let lessons = course.lessons.iter().flat_map(|lesson| [text(&lesson.name), text(&lesson.aims)]);
        let lessons = joined(lessons);
        Some(bare(Kind::Course, titled(&course.title, &course.id), urls.course(&course.id)?, lessons))
    })
}

fn pages<'a>(book: &'a Guidebook, urls: &'a impl UrlMaker) -> impl Iterator<Item = Record> + 'a {
    book.pages.iter().filter_map(|page| {
        let title = first_heading(&page.text).unwrap_or_else(|| readable(&page.id));
        Some(bare(Kind::Page, title, urls.page(&page.id)?, plain(&page.text)))
    })
}

/// A record that belongs to no species and no guide.
fn bare(kind: Kind, title: String, url: String, text: String) -> Record {
    let (names, notes, species_name) = (Vec::new(), String::new(), String::new());
    Record {
        kind,
        species: None,
        species_name,
        title,
        named: false,
        step: None,
        context: String::new(),
        state: State::InForce,
        url,
        names,
        text,
        notes,
    }
}

/// What a species is called; its id as well where that is another word.
fn species_name(book: &Guidebook, species: &str) -> String {
    let id = readable(species);
    match book.builtin.species.get(species) {
        Some(entry) if words(&entry.name) != words(&id) => format!("{} {id}", entry.name),
        _ => id,
    }
}

/// A title, or the end of an id made readable.
fn titled(stated: &Stated<String>, id: &str) -> String {
    stated.value().cloned().unwrap_or_else(|| readable(id.rsplit('/').next().unwrap_or(id)))
}

fn readable(id: &str) -> String {
    id.replace(['-', '/'], " ")
}

/// The words of a stated text, without Markdown.
fn text(stated: &Stated<String>) -> String {
    stated.value().map_or_else(String::new, |text| plain(text))
}

/// Texts with a space between them; empty ones leave no trace.
fn joined(texts: impl IntoIterator<Item = String>) -> String {
    texts.into_iter().filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" ")
}
