//! What the guidebook states of itself.

use std::collections::{BTreeMap, BTreeSet};

use super::context::Context;
use super::top;
use super::words::word;
use crate::finding::{FileId, Finding};
use crate::model::builtin::Builtin;
use crate::model::builtin::limits::own_figure;
use crate::model::guidebook::{Guidebook, Off, Stricter};
use crate::model::own_theme::OwnTheme;
use crate::model::stated::Stated;
use crate::model::words::{LimitKind, Units};
use crate::source::documents::guidebook as doc;
use crate::source::field::State;

/// Lowers `guidebook.yaml`.
pub(super) fn lower(stated: &doc::Guidebook, context: &mut Context<'_>) -> Guidebook {
    if let State::Given(over) = &stated.over.state {
        // A house edition changes what its files mean, so reading on without it would check another guidebook.
        let message = format!("a house edition over `{}` cannot be read by this version", over.trim());
        let finding = Finding::fault("edition-unread", context.at(stated.over.span), message);
        context.report(finding.help("Copy the other guidebook's files here and take out `over:`."));
    }
    let mut book = empty(Some(context.file));
    book.place = context.at(stated.title.key);
    book.title = context.text(&stated.title);
    book.publisher = context.text(&stated.publisher);
    book.language = context.text(&stated.language);
    book.also_in = context.list(&stated.also_in);
    book.units = word(context, &stated.units, "a unit system", Units::ALL, Units::word);
    book.region = context.text(&stated.region);
    book.limits = context.text(&stated.limits);
    book.site = context.text(&stated.site);
    book.theme = context.text(&stated.theme);
    for item in stated.stricter.value().into_iter().flatten() {
        if let Some(stricter) = item.value() {
            let limit = word(context, &stricter.limit, "a limit", LimitKind::ALL, LimitKind::word);
            let figure = limit.value().map_or(Stated::Broken, |kind| context.read(&stricter.at_most, |text| own_figure(*kind, text)));
            book.stricter.push(Stricter {
                place: context.at(item.span),
                limit,
                at_most: context.text(&stricter.at_most),
                figure,
                watch: context.text(&stricter.watch),
                every: context.text(&stricter.every),
                if_missed: context.text(&stricter.if_missed),
            });
        }
    }
    for item in stated.off.value().into_iter().flatten() {
        if let Some(off) = item.value() {
            book.off.push(Off { check: context.text(&off.check), reason: context.text(&off.reason) });
        }
    }
    book
}

/// A guidebook whose `guidebook.yaml` could not be read: what it states is unknown, not left out.
pub(super) fn unread(file: Option<FileId>) -> Guidebook {
    let mut book = empty(file);
    book.publisher = Stated::Broken;
    book.language = Stated::Broken;
    book.units = Stated::Broken;
    book.region = Stated::Broken;
    book.limits = Stated::Broken;
    book.site = Stated::Broken;
    book.theme = Stated::Broken;
    book
}

/// A guidebook that states nothing.
fn empty(file: Option<FileId>) -> Guidebook {
    Guidebook {
        place: top(file.unwrap_or(FileId(0))),
        title: Stated::Broken,
        publisher: Stated::Absent,
        language: Stated::Absent,
        also_in: Vec::new(),
        units: Stated::Absent,
        region: Stated::Absent,
        limits: Stated::Absent,
        stricter: Vec::new(),
        site: Stated::Absent,
        theme: Stated::Absent,
        own_theme: OwnTheme::default(),
        off: Vec::new(),
        procedures: Vec::new(),
        broken_procedures: BTreeSet::new(),
        broken_files: BTreeSet::new(),
        cuts: BTreeMap::new(),
        cut_lists: BTreeSet::new(),
        anatomy: BTreeMap::new(),
        anatomy_like: BTreeMap::new(),
        cautions: BTreeMap::new(),
        tools: BTreeMap::new(),
        courses: Vec::new(),
        prices: None,
        cutting_tests: Vec::new(),
        pages: Vec::new(),
        pictures: BTreeMap::new(),
        unshown_pictures: BTreeSet::new(),
        links: Vec::new(),
        builtin: Builtin::get(),
    }
}
