//! The control block of a guide, and the limits against which it was held.

use super::Views;
use super::targets::FromPage;
use crate::finding::FileId;
use crate::model::{Procedure, Stated};
use crate::site::context::guide::{Control, Limits, Stricter};
use crate::site::escape::keep_units;
use crate::site::markdown::{self, Layout};
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// The control block.
    pub(super) fn control(&self, page: &str, procedure: &Procedure) -> Result<Control, ThemeError> {
        let revision = &procedure.revision;
        let date = |stated: &Stated<jiff::civil::Date>| stated.value().map_or_else(|| Ok(String::new()), |date| self.date(*date));
        let iso = |stated: &Stated<jiff::civil::Date>| stated.value().map_or_else(String::new, ToString::to_string);
        let author = text(&revision.author);
        Ok(Control {
            number: revision.number.value().copied().unwrap_or(0),
            state: revision.state().word(),
            date: date(&revision.date)?,
            date_iso: iso(&revision.date),
            owner: revision.owner.value().cloned().unwrap_or_else(|| author.clone()),
            author,
            approved_by: text(&revision.approved_by),
            review_by: date(&revision.review_by)?,
            review_by_iso: iso(&revision.review_by),
            change_html: self.inline(page, &revision.change),
            change: revision.change.value().map_or_else(String::new, |change| markdown::first_line(change)),
        })
    }

    /// The profile of limits.
    pub(super) fn limits(&self) -> Limits {
        let profile = self.book.limits.value().and_then(|id| self.book.builtin.profiles.get(id));
        let stricter = self.book.stricter.iter().map(|stricter| Stricter {
            limit: stricter.limit.value().map_or("", |limit| limit.word()),
            at_most: keep_units(&text(&stricter.at_most)),
            watch: keep_units(&text(&stricter.watch)),
            every: keep_units(&text(&stricter.every)),
            if_missed: keep_units(&text(&stricter.if_missed)),
        });
        Limits {
            name: profile.map_or_else(String::new, |profile| profile.name.clone()),
            jurisdiction: profile.map_or_else(String::new, |profile| profile.jurisdiction.clone()),
            edition: profile.map_or_else(String::new, |profile| keep_units(profile.edition.trim())),
            about: profile.map_or_else(String::new, |profile| keep_units(profile.about.trim())),
            stricter: stricter.collect(),
        }
    }

    /// An authored text as HTML blocks below a heading of the third level.
    pub(super) fn blocks(&self, page: &str, stated: &Stated<String>) -> String {
        self.laid_out(page, stated, Layout { top_heading: 4, lines: false })
    }

    /// An authored text as HTML, without an element around a single paragraph.
    pub(super) fn inline(&self, page: &str, stated: &Stated<String>) -> String {
        let layout = Layout { top_heading: 4, lines: false };
        stated.given().map_or_else(String::new, |text| markdown::inline(&text.value, layout, &self.targets(page, text.place.file)))
    }

    /// An authored text as HTML blocks.
    pub(super) fn laid_out(&self, page: &str, stated: &Stated<String>, layout: Layout) -> String {
        stated.given().map_or_else(String::new, |text| markdown::blocks(&text.value, layout, &self.targets(page, text.place.file)))
    }

    /// Where the links of a text lead.
    pub(super) const fn targets<'a>(&'a self, page: &'a str, file: FileId) -> FromPage<'a> {
        FromPage { views: self, page, file }
    }
}

/// The text, or nothing.
pub(super) fn text(stated: &Stated<String>) -> String {
    stated.value().map_or_else(String::new, |text| text.trim().to_owned())
}
