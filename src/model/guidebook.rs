//! A guidebook as it is meant: what it states of itself, its procedures, cut lists, and the rest.

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::Date;

use super::builtin::Builtin;
use super::builtin::limits::OwnFigure;
use super::links::Link;
use super::own_theme::OwnTheme;
use super::procedure::Procedure;
use super::quantity::{Mass, Range, Share};
use super::stated::{Spanned, Stated};
use super::words::{Harm, LimitKind, PartKind, Product, Signal, Tax, Units};
use crate::finding::{FileId, Place};

/// A guidebook.
#[derive(Debug, Clone)]
pub struct Guidebook {
    /// The first line of `guidebook.yaml`.
    pub place: Place,
    /// What it is called.
    pub title: Stated<String>,
    /// Who publishes it.
    pub publisher: Stated<String>,
    /// The language of its texts, `en` unless stated.
    pub language: Stated<String>,
    /// Languages of its translations.
    pub also_in: Vec<Spanned<String>>,
    /// Its unit system; `Absent` means metric.
    pub units: Stated<Units>,
    /// Whose trade names come first.
    pub region: Stated<String>,
    /// The profile of limits.
    pub limits: Stated<String>,
    /// Limits of the shop.
    pub stricter: Vec<Stricter>,
    /// The address at which the site is served.
    pub site: Stated<String>,
    /// The theme: a built-in one, or a folder of the guidebook.
    pub theme: Stated<String>,
    /// What the guidebook has of its own to look different.
    pub own_theme: OwnTheme,
    /// Advice turned off.
    pub off: Vec<Off>,
    /// Procedures by id, in the order of their ids.
    pub procedures: Vec<Procedure>,
    /// Ids of procedures that exist but could not be read.
    pub broken_procedures: BTreeSet<String>,
    /// Paths of all files that exist but could not be read, procedures among them.
    pub broken_files: BTreeSet<String>,
    /// Cuts by piece id, over all species.
    pub cuts: BTreeMap<String, Cut>,
    /// Species that have a cut list.
    pub cut_lists: BTreeSet<String>,
    /// Anatomy that the guidebook adds: species, then part id.
    pub anatomy: BTreeMap<String, BTreeMap<String, AnatomyPart>>,
    /// Species that say whose anatomy they share: `like: round-fish`.
    pub anatomy_like: BTreeMap<String, Spanned<String>>,
    /// The shop's own cautions by id.
    pub cautions: BTreeMap<String, Caution>,
    /// The shop's own tools by id.
    pub tools: BTreeMap<String, Tool>,
    /// Courses by id, in the order of their ids.
    pub courses: Vec<Course>,
    /// Prices.
    pub prices: Option<Prices>,
    /// Cutting tests by procedure id.
    pub cutting_tests: Vec<CuttingTest>,
    /// Free pages: path without the ending, file, Markdown.
    pub pages: Vec<Page>,
    /// Pictures by path.
    pub pictures: BTreeMap<String, PictureFile>,
    /// Paths in `pictures/` of a kind that no browser shows.
    pub unshown_pictures: BTreeSet<String>,
    /// Links and pictures in free text that stay inside the guidebook.
    pub links: Vec<Link>,
    /// What ships inside the program.
    pub builtin: &'static Builtin,
}

impl Guidebook {
    /// The procedure with this id.
    #[must_use]
    pub fn procedure(&self, id: &str) -> Option<&Procedure> {
        let at = self.procedures.binary_search_by(|procedure| procedure.id.as_str().cmp(id)).ok()?;
        self.procedures.get(at)
    }

    /// The unit system that holds.
    #[must_use]
    pub fn units(&self) -> Units {
        self.units.value().copied().unwrap_or(Units::Metric)
    }

    /// What a piece is called: its cut list's name, else its id with spaces.
    #[must_use]
    pub fn piece_name(&self, piece: &str) -> String {
        self.cuts.get(piece).and_then(|cut| cut.name.value().cloned()).unwrap_or_else(|| piece.replace('-', " "))
    }

    /// What a tool is called.
    #[must_use]
    pub fn tool_name(&self, tool: &str) -> String {
        let own = self.tools.get(tool).and_then(|tool| tool.name.value().cloned());
        own.or_else(|| self.builtin.tools.get(tool).map(|tool| tool.name.clone())).unwrap_or_else(|| tool.replace('-', " "))
    }

    /// The class of product whose limits hold for a procedure: stated, else from the species.
    #[must_use]
    pub fn product_of(&self, procedure: &Procedure) -> Option<Product> {
        procedure
            .product
            .value()
            .copied()
            .or_else(|| self.builtin.species.get(procedure.species.value()?.as_str()).map(|species| species.product))
    }

    /// The procedures that start from a piece.
    pub fn starting_from<'a>(&'a self, piece: &'a str) -> impl Iterator<Item = &'a Procedure> {
        self.procedures.iter().filter(move |procedure| procedure.start.piece.value().is_some_and(|start| start == piece))
    }

    /// The house cut of a piece: the procedure that says so of itself.
    #[must_use]
    pub fn house_cut_of(&self, piece: &str) -> Option<&Procedure> {
        self.procedures.iter().find(|procedure| {
            procedure.house_cut.value() == Some(&true) && procedure.start.piece.value().is_some_and(|start| start == piece)
        })
    }

    /// The newest date that stands in the guidebook, which serves as its today.
    #[must_use]
    pub fn newest_date(&self) -> Option<Date> {
        let revisions = self.procedures.iter().filter_map(|procedure| procedure.revision.date.value());
        let prices = self.prices.iter().filter_map(|prices| prices.date.value());
        let tests = self.cutting_tests.iter().flat_map(|test| test.runs.iter()).filter_map(|run| run.date.value());
        revisions.chain(prices).chain(tests).copied().max()
    }
}

/// A limit of the shop.
#[derive(Debug, Clone)]
pub struct Stricter {
    /// Where the mapping begins.
    pub place: Place,
    /// Which limit.
    pub limit: Stated<LimitKind>,
    /// The figure, as text.
    pub at_most: Stated<String>,
    /// The same as a value.
    pub figure: Stated<OwnFigure>,
    /// Who watches it.
    pub watch: Stated<String>,
    /// How often.
    pub every: Stated<String>,
    /// What is done when it is missed.
    pub if_missed: Stated<String>,
}

/// Advice turned off everywhere.
#[derive(Debug, Clone)]
pub struct Off {
    /// The id of the check.
    pub check: Stated<String>,
    /// Why.
    pub reason: Stated<String>,
}

/// A piece of a cut list.
#[derive(Debug, Clone)]
pub struct Cut {
    /// Its id, with the place of its key.
    pub piece: Spanned<String>,
    /// The species whose list holds it.
    pub species: String,
    /// What it is called here.
    pub name: Stated<String>,
    /// Other trade names.
    pub also: Vec<TradeName>,
    /// Codes by system, in the order in which they stand.
    pub codes: Vec<(String, String)>,
    /// The usual weight of one.
    pub weight: Stated<Range<Mass>>,
    /// How many an animal has.
    pub per_animal: Stated<u32>,
    /// The region of the animal.
    pub region: Stated<String>,
    /// Where it lies.
    pub lies: Stated<String>,
    /// Earlier ids.
    pub was: Vec<Spanned<String>>,
}

/// Another trade name, perhaps of one region only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TradeName {
    /// The name.
    pub name: Spanned<String>,
    /// The region in which it is used; `None` for everywhere.
    pub region: Option<String>,
}

/// A bone, muscle, tissue or gland.
#[derive(Debug, Clone)]
pub struct AnatomyPart {
    /// Its id, with the place of its key.
    pub part: Spanned<String>,
    /// What it is called.
    pub name: Stated<String>,
    /// Other names.
    pub also: Vec<String>,
    /// What it is.
    pub kind: Stated<PartKind>,
    /// How many an animal has.
    pub count: Stated<Range<u32>>,
    /// The regions in which it lies.
    pub regions: Vec<Spanned<String>>,
    /// What it does.
    pub does: Stated<String>,
    /// Where it lies.
    pub lies: Stated<String>,
    /// Where the facts come from.
    pub sources: Vec<Spanned<String>>,
}

/// A caution of the shop.
#[derive(Debug, Clone)]
pub struct Caution {
    /// Its id, with the place of its key.
    pub id: Spanned<String>,
    /// A short name.
    pub name: Stated<String>,
    /// The signal word.
    pub signal: Stated<Signal>,
    /// What can hurt.
    pub hazard: Stated<String>,
    /// What it does.
    pub consequence: Stated<String>,
    /// What to do.
    pub avoid: Stated<String>,
    /// What the hazard can do.
    pub harm: Stated<Harm>,
    /// An ISO 7010 code.
    pub sign: Stated<String>,
    /// Where it comes from.
    pub sources: Vec<Spanned<String>>,
}

/// A tool of the shop.
#[derive(Debug, Clone)]
pub struct Tool {
    /// Its id, with the place of its key.
    pub id: Spanned<String>,
    /// What it is called.
    pub name: Stated<String>,
    /// Cautions demanded.
    pub cautions: Vec<Spanned<String>>,
    /// Protection demanded.
    pub wear: Vec<Spanned<String>>,
    /// Protection forbidden.
    pub never: Vec<Spanned<String>>,
}

/// A course.
#[derive(Debug, Clone)]
pub struct Course {
    /// The file's name without the ending.
    pub id: String,
    /// The first line of the file's mapping.
    pub place: Place,
    /// What it is called.
    pub title: Stated<String>,
    /// How many learners.
    pub class_size: Stated<u32>,
    /// The lessons in order.
    pub lessons: Vec<Lesson>,
}

/// One lesson.
#[derive(Debug, Clone)]
pub struct Lesson {
    /// What it is called.
    pub name: Stated<String>,
    /// The guides that it works through.
    pub procedures: Vec<Spanned<String>>,
    /// What the learners take away (Markdown).
    pub aims: Stated<String>,
}

/// Prices of one day.
#[derive(Debug, Clone)]
pub struct Prices {
    /// The currency.
    pub currency: Stated<String>,
    /// The day.
    pub date: Stated<Date>,
    /// Whether tax is in them.
    pub tax: Stated<Tax>,
    /// What pieces cost.
    pub buy: Vec<PiecePrice>,
    /// What a by-product would cost elsewhere.
    pub credit: Vec<PiecePrice>,
    /// What pieces sell for.
    pub sell: Vec<PiecePrice>,
    /// What an hour of work costs, in millionths of the currency unit.
    pub labour: Stated<i64>,
    /// Cooked yields.
    pub cooked: Vec<DeclaredCooked>,
}

/// The price of a piece.
#[derive(Debug, Clone)]
pub struct PiecePrice {
    /// The piece, with the place of its key.
    pub piece: Spanned<String>,
    /// Millionths of the currency unit for `per`.
    pub price: Stated<Price>,
}

/// An amount of money for a weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Price {
    /// Millionths of the currency unit.
    pub millionths: i64,
    /// The weight that it buys.
    pub per: Mass,
}

/// The cooked yield of a piece.
#[derive(Debug, Clone)]
pub struct DeclaredCooked {
    /// The piece, with the place of its key.
    pub piece: Spanned<String>,
    /// Cooked weight over raw weight.
    pub share: Stated<Range<Share>>,
}

/// The weighed results of one procedure.
#[derive(Debug, Clone)]
pub struct CuttingTest {
    /// The procedure's id, from the path.
    pub procedure: String,
    /// The file.
    pub file: FileId,
    /// The first line of the file.
    pub place: Place,
    /// Columns that name pieces, or `loss`, with the place of the heading.
    pub columns: Vec<Spanned<String>>,
    /// The runs.
    pub runs: Vec<Run>,
}

/// One weighed run.
#[derive(Debug, Clone)]
pub struct Run {
    /// Where the row begins.
    pub place: Place,
    /// The day.
    pub date: Stated<Date>,
    /// Who cut.
    pub cutter: String,
    /// The lot.
    pub lot: String,
    /// The starting weight.
    pub start: Stated<Mass>,
    /// The weight under each column of `CuttingTest::columns`; `Absent` was not weighed.
    pub weights: Vec<Stated<Mass>>,
}

/// A free page.
#[derive(Debug, Clone)]
pub struct Page {
    /// Its path below `pages/`, without the ending.
    pub id: String,
    /// The file.
    pub file: FileId,
    /// The text (Markdown).
    pub text: String,
}

/// A photograph or drawing that lies in the guidebook.
#[derive(Debug, Clone)]
pub struct PictureFile {
    /// Its bytes.
    pub bytes: Vec<u8>,
}
