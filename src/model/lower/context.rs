//! Helpers of lowering: a field becomes a stated value, a slip becomes a finding at the field's place.

use std::ops::Deref;

use jiff::civil::Date;

use super::free_text;
use crate::finding::{FileId, Finding, Place, SourceMap, Span};
use crate::model::links::Link;
use crate::model::quantity::Range;
use crate::model::quantity::parse::{self, Slip, SlipKind};
use crate::model::stated::{Spanned, Stated};
use crate::source::documents::texts::Markdown;
use crate::source::field::{Entries, Field, Required, State};

/// What all files share: their texts, and what gathers while they are lowered.
pub(super) struct Gathered<'s> {
    /// The texts, to find exact places inside a value.
    pub(super) sources: &'s SourceMap,
    /// Findings so far.
    pub(super) findings: Vec<Finding>,
    /// Links in free text so far.
    pub(super) links: Vec<Link>,
}

/// The file that is being lowered, and where its findings go.
pub(super) struct Context<'a> {
    /// The file.
    pub(super) file: FileId,
    source: &'a str,
    folder: &'a str,
    findings: &'a mut Vec<Finding>,
    links: &'a mut Vec<Link>,
}

impl<'a> Context<'a> {
    pub(super) fn new<'s: 'a>(file: FileId, gathered: &'a mut Gathered<'s>) -> Self {
        let Gathered { sources, findings, links } = gathered;
        let sources: &'s SourceMap = sources;
        let folder = sources.path(file).rsplit_once('/').map_or("", |(folder, _)| folder);
        Self { file, source: sources.get(file).map_or("", |source| source.text()), folder, findings, links }
    }

    /// The place of a span of this file.
    pub(super) const fn at(&self, span: Span) -> Place {
        Place::new(self.file, span)
    }

    /// Records a finding.
    pub(super) fn report(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// A field through a reader that may slip.
    pub(super) fn read<T, U>(&mut self, field: &Field<T>, read: impl FnOnce(&T) -> Result<U, Slip>) -> Stated<U> {
        let place = self.at(field.span);
        match &field.state {
            State::Absent => Stated::Absent,
            State::Broken => Stated::Broken,
            State::Given(value) => match read(value) {
                Ok(value) => Stated::Given(Spanned::new(value, place)),
                Err(slip) => {
                    self.slip(place, slip);
                    Stated::Broken
                }
            },
        }
    }

    /// Records a slip of a quantity.
    pub(super) fn slip(&mut self, place: Place, slip: Slip) {
        let check = match slip.kind {
            SlipKind::Malformed => "value-malformed",
            SlipKind::DecimalComma => "decimal-comma",
            SlipKind::UnitMissing => "unit-missing",
            SlipKind::UnitWrong | SlipKind::UnitUnexpected => "unit-wrong",
            SlipKind::Inverted => "range-inverted",
            SlipKind::OutOfBounds => "value-out-of-bounds",
            SlipKind::TwoReadings => "share-with-two-readings",
            SlipKind::Digits => "too-many-digits",
        };
        self.report(Finding::fault(check, place, slip.message).help(slip.help));
    }

    /// A text as it stands, without the white space around it.
    pub(super) fn text<T: Deref<Target = str>>(&self, field: &Field<T>) -> Stated<String> {
        match &field.state {
            State::Absent => Stated::Absent,
            State::Broken => Stated::Broken,
            State::Given(text) => Stated::Given(Spanned::new(text.trim().to_owned(), self.at(field.span))),
        }
    }

    /// Free text in Markdown: as `text`, and what can't be shown in it is reported.
    pub(super) fn markdown(&mut self, field: &Field<Markdown>) -> Stated<String> {
        if let Some(text) = field.value() {
            self.free_text(text, field.span);
        }
        self.text(field)
    }

    /// Looks free text over that stands at `span`.
    pub(super) fn free_text(&mut self, text: &str, span: Span) {
        let whole = free_text::Whole { text, raw: self.source.get(span.range()).unwrap_or(""), place: self.at(span), folder: self.folder };
        free_text::look(&whole, self.findings, self.links);
    }

    /// True or false.
    pub(super) fn truth(&self, field: &Field<bool>) -> Stated<bool> {
        match &field.state {
            State::Absent => Stated::Absent,
            State::Broken => Stated::Broken,
            State::Given(value) => Stated::Given(Spanned::new(*value, self.at(field.span))),
        }
    }

    /// A list of texts; items that could not be read are left out, a finding has told.
    pub(super) fn list<T: Deref<Target = str>>(&self, field: &Field<Vec<Required<T>>>) -> Vec<Spanned<String>> {
        field.value().map_or_else(Vec::new, |items| self.items(items))
    }

    /// False when a list, or an item of it, could not be read.
    pub(super) fn is_whole<T>(&self, field: &Field<Vec<Required<T>>>) -> bool {
        !field.is_broken() && field.value().is_none_or(|items| items.iter().all(|item| !item.is_broken()))
    }

    /// The items of a list of texts.
    pub(super) fn items<T: Deref<Target = str>>(&self, items: &[Required<T>]) -> Vec<Spanned<String>> {
        items.iter().filter_map(|item| Some(Spanned::new(item.value()?.trim().to_owned(), self.at(item.span)))).collect()
    }

    /// A list that may be absent, which is not the same as empty.
    pub(super) fn stated_list<T: Deref<Target = str>>(&self, field: &Field<Vec<Required<T>>>) -> Stated<Vec<Spanned<String>>> {
        match &field.state {
            State::Absent => Stated::Absent,
            State::Broken => Stated::Broken,
            State::Given(items) => Stated::Given(Spanned::new(self.items(items), self.at(field.span))),
        }
    }

    /// A date such as `2026-10-12`.
    pub(super) fn date<T: Deref<Target = str>>(&mut self, field: &Field<T>) -> Stated<Date> {
        let place = self.at(field.span);
        match &field.state {
            State::Absent => Stated::Absent,
            State::Broken => Stated::Broken,
            State::Given(text) => match date(text) {
                Ok(date) => Stated::Given(Spanned::new(date, place)),
                Err((message, help)) => {
                    self.report(Finding::fault("date-malformed", place, message).help(help));
                    Stated::Broken
                }
            },
        }
    }

    /// One whole number of at least `least`.
    pub(super) fn whole<T: Deref<Target = str>>(&mut self, field: &Field<T>, least: u32) -> Stated<u32> {
        self.read(field, |text| {
            let range = parse::whole(text)?;
            if !range.is_single() {
                let message = format!("expected one whole number, found the range `{}`", text.trim());
                return Err(Slip::new(SlipKind::Malformed, message, "Write one number."));
            }
            if range.low < least {
                let message = format!("expected {least} or more, found `{}`", text.trim());
                return Err(Slip::new(SlipKind::OutOfBounds, message, format!("Write {least} or more.")));
            }
            Ok(range.low)
        })
    }

    /// One value, not a range.
    pub(super) fn single<T: Deref<Target = str>, U: Copy + PartialOrd>(
        &mut self,
        field: &Field<T>,
        read: impl FnOnce(&str) -> Result<Range<U>, Slip>,
    ) -> Stated<U> {
        self.read(field, |text| {
            let range = read(text)?;
            if range.is_single() {
                return Ok(range.low);
            }
            let message = format!("expected one value, found the range `{}`", text.trim());
            Err(Slip::new(SlipKind::Malformed, message, "Write the one usual value."))
        })
    }

    /// The entries of a mapping whose keys the author chose, with the place of each key.
    pub(super) fn entries<'e, T>(&self, entries: &'e Entries<T>) -> Vec<(Spanned<String>, &'e Field<T>)> {
        entries.entries.iter().map(|entry| (Spanned::new(entry.name.clone(), self.at(entry.value.key)), &entry.value)).collect()
    }

    /// Tells that a key is missing that another value makes necessary.
    pub(super) fn missing<T>(&mut self, field: &Field<T>, key: &str, why: &str) {
        let finding = Finding::fault("missing-key", self.at(field.key), format!("`{key}` is missing{why}"));
        self.report(finding.help(format!("Add `{key}:` here.")));
    }

    /// Tells of an id that cannot be one; gives true when it can.
    pub(super) fn id_is_sound(&mut self, id: &Spanned<String>, what: &str) -> bool {
        let wrong = id.value.chars().find(|c| !(c.is_alphanumeric() || *c == '-' || *c == '_'));
        let message = match wrong {
            None if !id.value.is_empty() => return true,
            None => format!("an empty id of {what}"),
            Some('.') => format!("a dot in the id `{}`", id.value),
            Some(wrong) => format!("`{wrong}` in the id `{}`", id.value.escape_debug()),
        };
        let mended = super::step::hyphenated(&id.value);
        let finding = Finding::fault("id-malformed", id.place, message);
        self.report(finding.help(if mended.is_empty() {
            "Write lower-case words joined by hyphens.".to_owned()
        } else {
            format!("Write `{mended}`: lower-case words joined by hyphens.")
        }));
        false
    }
}

/// Reads a date, or says what is wrong and what to do.
pub(super) fn date(text: &str) -> Result<Date, (String, String)> {
    let text = text.trim();
    let shape: Vec<_> = text.split('-').collect();
    let shaped = matches!(shape.as_slice(), [y, m, d] if y.len() == 4 && m.len() == 2 && d.len() == 2)
        && text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'-');
    if !shaped {
        let help =
            day_month_year(text).map_or_else(|| "Write year-month-day, as in `2026-10-12`.".to_owned(), |date| format!("Write `{date}`."));
        return Err((format!("expected a date as year-month-day, found `{text}`"), help));
    }
    text.parse::<Date>().map_err(|_| (format!("there is no day `{text}`"), "Write a day that the calendar has.".to_owned()))
}

/// `12.10.2026` or `12/10/2026`, when only one reading is possible.
fn day_month_year(text: &str) -> Option<Date> {
    let parts: Vec<i16> = text.split(['.', '/', '-', ' ']).map(|part| part.trim().parse().ok()).collect::<Option<_>>()?;
    let [a, b, c] = parts.as_slice() else { return None };
    let date = |year: i16, month: i16, day: i16| Date::new(year, i8::try_from(month).ok()?, i8::try_from(day).ok()?).ok();
    if *a > 31 {
        return date(*a, *b, *c);
    }
    match (date(*c, *b, *a), date(*c, *a, *b)) {
        (Some(one), Some(other)) if one != other => None,
        (one, other) => one.or(other),
    }
}
