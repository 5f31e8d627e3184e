//! The parts in which a site is kept, and which file belongs to which of them.

use std::collections::{BTreeMap, BTreeSet};

use crate::analysis::Analysis;
use crate::model::Guidebook;
use crate::model::links::{Destination, destination};

use super::super::page::{Page, TableOf, folder_of, species_of};

/// A part of the site that is kept or removed as one.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// What is about a species and its guides.
    Species(String),
    /// The guides of a course, by its position in the guidebook; they are in the parts of their species too.
    Course(usize),
    /// What belongs to no species and no guide: pages of the owner, lists of tables, the manual of checks.
    Rest,
}

impl Part {
    /// Its name among all parts, which is also the name of its list.
    pub(in crate::site) fn id(&self, book: &Guidebook) -> String {
        match self {
            Self::Species(species) => format!("species/{species}"),
            Self::Course(at) => format!("courses/{}", book.courses.get(*at).map_or("", |course| course.id.as_str())),
            Self::Rest => "rest".to_owned(),
        }
    }
}

/// All parts of a guidebook: species by id, courses by id, the rest.
pub(in crate::site) fn all(book: &Guidebook) -> Vec<Part> {
    let species = species_of(book).into_iter().map(|species| Part::Species(species.to_owned()));
    species.chain((0..book.courses.len()).map(Part::Course)).chain([Part::Rest]).collect()
}

/// What a page is about, as far as keeping it goes.
enum About<'a> {
    /// What every reader needs first: home, courses, search, pieces, this very matter.
    Shell,
    /// A procedure by its position.
    Guide(usize),
    /// A species.
    Species(&'a str),
    /// A picture by its path.
    Picture(&'a str),
    /// Nothing of these.
    Rest,
}

/// Which files belong to which part.
pub(in crate::site) struct Parts {
    /// Pictures with the procedures that show them, by position.
    pictures: BTreeMap<String, BTreeSet<usize>>,
    /// The species of each procedure.
    species: Vec<String>,
    /// The species of each chain: that of its first guide.
    chains: Vec<String>,
    /// The procedures of each course.
    courses: Vec<BTreeSet<usize>>,
}

impl Parts {
    /// Looks through a guidebook.
    pub(in crate::site) fn of(book: &Guidebook, analysis: &Analysis) -> Self {
        let position = |id: &str| book.procedures.binary_search_by(|procedure| procedure.id.as_str().cmp(id)).ok();
        let courses = book.courses.iter().map(|course| {
            let named = course.lessons.iter().flat_map(|lesson| &lesson.procedures);
            named.filter_map(|id| position(&id.value)).collect()
        });
        let chain = |procedures: &[String]| procedures.first().map_or_else(String::new, |first| folder_of(first).to_owned());
        Self {
            pictures: pictures(book),
            species: book.procedures.iter().map(|procedure| folder_of(&procedure.id).to_owned()).collect(),
            chains: analysis.chains.iter().map(|found| chain(&found.procedures)).collect(),
            courses: courses.collect(),
        }
    }

    /// Whether every reader keeps a page, whatever else is chosen.
    pub(in crate::site) fn is_shell(&self, page: &Page) -> bool {
        matches!(self.about(page), About::Shell)
    }

    /// Whether a page belongs to a part. Each page outside the shell belongs to one at least.
    pub(in crate::site) fn holds(&self, part: &Part, page: &Page) -> bool {
        match (self.about(page), part) {
            (About::Guide(at), _) => self.has_guide(part, at),
            (About::Species(one), Part::Species(other)) => one == other,
            (About::Picture(path), part) => match (self.pictures.get(path), part) {
                (None, part) => *part == Part::Rest,
                (Some(shown), part) => shown.iter().any(|at| self.has_guide(part, *at)),
            },
            (About::Rest, part) => *part == Part::Rest,
            (About::Shell, _) | (About::Species(_), Part::Course(_) | Part::Rest) => false,
        }
    }

    /// How many guides a part has.
    pub(in crate::site) fn guides(&self, part: &Part) -> usize {
        (0..self.species.len()).filter(|at| self.has_guide(part, *at)).count()
    }

    fn has_guide(&self, part: &Part, at: usize) -> bool {
        match part {
            Part::Species(species) => self.species.get(at) == Some(species),
            Part::Course(course) => self.courses.get(*course).is_some_and(|own| own.contains(&at)),
            Part::Rest => false,
        }
    }

    /// What a page is about. No page is left to chance: a new kind of page is given its place here.
    fn about<'a>(&'a self, page: &'a Page) -> About<'a> {
        let chain = |at: usize| self.chains.get(at).map_or(About::Rest, |species| About::Species(species));
        match page {
            Page::Home
            | Page::Course(_)
            | Page::Pieces
            | Page::Limits
            | Page::SearchScript(_)
            | Page::Asset(_)
            | Page::Manifest
            | Page::Revisions
            | Page::Offline
            | Page::PartFiles(_)
            | Page::ServiceWorker => About::Shell,
            Page::Guide(at)
            | Page::Bench(at)
            | Page::Room(at)
            | Page::Card(at)
            | Page::ClassSheet(at)
            | Page::ColdClock(at)
            | Page::ColdDrawing(at)
            | Page::GuideTable(at)
            | Page::Source(at)
            | Page::GuideData(at)
            | Page::FlowDrawing(at)
            | Page::TableFile(TableOf::Guide(at), _) => About::Guide(*at),
            Page::Species(species)
            | Page::SpeciesPieces(species)
            | Page::Anatomy(species)
            | Page::CutMap(species)
            | Page::CutMapDrawing(species)
            | Page::SpeciesTable(species)
            | Page::TableFile(TableOf::Species(species), _) => About::Species(species),
            Page::ChainTable(at) | Page::TableFile(TableOf::Chain(at), _) => chain(*at),
            Page::Picture(path) => About::Picture(path),
            Page::Tables | Page::Free(_) | Page::Checks | Page::Sitemap | Page::Feed => About::Rest,
        }
    }
}

/// Every picture that a procedure shows in a step or in a text.
fn pictures(book: &Guidebook) -> BTreeMap<String, BTreeSet<usize>> {
    let mut found: BTreeMap<String, BTreeSet<usize>> = BTreeMap::new();
    let mut files = BTreeMap::new();
    for (at, procedure) in book.procedures.iter().enumerate() {
        files.insert(procedure.file, at);
        for picture in procedure.steps.iter().flat_map(|step| &step.pictures) {
            if let Some(path) = picture.file.value() {
                found.entry(path.clone()).or_default().insert(at);
            }
        }
    }
    for link in &book.links {
        let Some(at) = files.get(&link.place.file) else { continue };
        if let Some(Destination::Picture(path)) = destination(book, &link.folder, &link.target) {
            found.entry(path).or_default().insert(*at);
        }
    }
    found
}
