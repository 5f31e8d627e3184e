//! Dates in words: `2 March 2026`.

use fluent_bundle::FluentValue;
use jiff::civil::Date;

use super::Views;
use crate::site::theme_error::ThemeError;

/// Words for the months, January first.
const MONTHS: [&str; 12] = [
    "month-january",
    "month-february",
    "month-march",
    "month-april",
    "month-may",
    "month-june",
    "month-july",
    "month-august",
    "month-september",
    "month-october",
    "month-november",
    "month-december",
];

impl Views<'_> {
    /// The date as it is read.
    pub(super) fn date(&self, date: Date) -> Result<String, ThemeError> {
        let words = &self.engine.words;
        let at = usize::try_from(date.month()).unwrap_or(1).saturating_sub(1);
        let month = words.plain(MONTHS.get(at).copied().unwrap_or("month-january"))?;
        let arguments =
            [("day", FluentValue::from(i64::from(date.day()))), ("month", month.into()), ("year", date.year().to_string().into())];
        words.with("date", &arguments)
    }
}
