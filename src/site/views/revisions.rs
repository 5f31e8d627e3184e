//! The revision of each guide as a file that the service worker reads: two editions of it say what changed between them.
//! The words by which a page tells of a newer edition stand in it too, so that no page has to carry them.

use std::collections::BTreeMap;

use fluent_bundle::FluentValue;
use serde::Serialize;

use super::Views;
use crate::site::markdown;
use crate::site::theme_error::ThemeError;

/// Words without a value of their own, by the name that the script knows.
const PLAIN: &[(&str, &str)] = &[
    ("newer", "news-newer"),
    ("none", "news-none"),
    ("too", "news-too"),
    ("withdrawn", "news-withdrawn"),
    ("gone", "news-gone"),
    ("load", "news-load"),
    ("loading", "news-loading"),
    ("later", "news-later"),
    ("elsewhere", "news-elsewhere"),
];
/// Words with values that the script fills in, which stand in square brackets: the names of the values.
const FILLED: &[(&str, &str, &[&str])] = &[
    ("here", "news-here", &["number", "date"]),
    ("draft", "news-here-draft", &["number", "date"]),
    ("others", "news-others", &["guides"]),
    ("other", "news-other", &["title", "number"]),
    ("otherWithdrawn", "news-other-withdrawn", &["title"]),
    ("otherGone", "news-other-gone", &["title"]),
    ("more", "news-more", &["n"]),
];

#[derive(Serialize)]
struct Revisions {
    words: BTreeMap<&'static str, String>,
    guides: Vec<Revision>,
}

#[derive(Serialize)]
struct Revision {
    id: String,
    title: String,
    number: u32,
    state: &'static str,
    date: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    change: String,
}

impl Views<'_> {
    /// The file as JSON.
    pub(super) fn revisions(&self) -> Result<Vec<u8>, ThemeError> {
        let mut words = BTreeMap::new();
        for (name, id) in PLAIN {
            words.insert(*name, self.engine.words.plain(id)?.to_owned());
        }
        for (name, id, values) in FILLED {
            let values: Vec<(&str, FluentValue<'_>)> = values.iter().map(|value| (*value, format!("[{value}]").into())).collect();
            words.insert(*name, self.engine.words.with(id, &values)?);
        }
        let guides = self.book.procedures.iter().enumerate().map(|(at, procedure)| {
            let revision = &procedure.revision;
            Ok(Revision {
                id: procedure.id.clone(),
                title: self.title(at),
                number: revision.number.value().copied().unwrap_or(0),
                state: revision.state().word(),
                date: revision.date.value().map_or_else(|| Ok(String::new()), |date| self.date(*date))?,
                change: revision.change.value().map_or_else(String::new, |change| markdown::first_line(change)),
            })
        });
        let all = Revisions { words, guides: guides.collect::<Result<_, ThemeError>>()? };
        let mut text = serde_json::to_string_pretty(&all).map_err(|error| ThemeError::new(error.to_string()))?;
        text.push('\n');
        Ok(text.into_bytes())
    }
}
