//! One limit of a profile as it is shown: its figure as the source prints it, the other unit beside, its source.

use fluent_bundle::FluentValue;

use super::Views;
use crate::figures::units::other_scale;
use crate::figures::yield_table::capitalised;
use crate::model::builtin::limits::{AgeBound, Citation, Limit};
use crate::model::words::Stage;
use crate::site::context::frame::Link;
use crate::site::context::limits::{Entry, Source};
use crate::site::escape::keep_units;
use crate::site::paths;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// The entry of a limit.
    pub(super) fn limit_entry(&self, page: &str, limit: &Limit) -> Result<Entry, ThemeError> {
        let (other, other_printed) = other(limit);
        let parts = limit.parts.iter().map(|part| self.listed_part(page, limit, part)).collect();
        let in_words =
            [&limit.at_most, &limit.at_least].iter().all(|figure| figure.is_none()) && limit.duration.is_none() && limit.parts.is_empty();
        Ok(Entry {
            id: limit.id.clone(),
            about: self.about(limit)?,
            figure: self.bound(limit)?,
            other,
            other_printed,
            time: self.time(limit)?,
            clock: limit.clock.map_or("", |clock| clock.word()),
            measures: limit.measures.word(),
            age: self.age_bound(limit)?,
            parts,
            text: keep_units(&limit.text),
            note: keep_units(limit.note.as_deref().unwrap_or_default()),
            option: limit.only_when_asked,
            in_words,
            force: limit.force.word(),
            verified: limit.verified.word(),
            source: source(&limit.citation),
        })
    }

    /// The classes of product and species that a limit is for.
    fn about(&self, limit: &Limit) -> Result<Vec<String>, ThemeError> {
        let product = |word: &str| Ok(self.engine.words.plain(&format!("product-{word}"))?.to_owned());
        let products = limit.products.iter().map(|product_of| product(product_of.word())).collect::<Result<Vec<_>, ThemeError>>()?;
        Ok(products.into_iter().chain(limit.species.iter().map(|species| self.species_name(species))).collect())
    }

    /// The figure with its bound: `7 °C at most`, `above 5.0 °C, 7.2 °C at most`, `82 °C at least`.
    fn bound(&self, limit: &Limit) -> Result<String, ThemeError> {
        let bounds = [("limit-above", &limit.above), ("limit-at-most", &limit.at_most), ("limit-at-least", &limit.at_least)];
        let stated = bounds.iter().filter_map(|(word, figure)| Some((word, figure.as_ref()?)));
        let words = stated.map(|(word, figure)| self.engine.words.with(word, &[("figure", FluentValue::from(printed(&figure.printed)))]));
        Ok(words.collect::<Result<Vec<_>, _>>()?.join(", "))
    }

    /// The time with its bound, which depends on what the limit is about.
    fn time(&self, limit: &Limit) -> Result<String, ThemeError> {
        let Some(time) = &limit.duration else { return Ok(String::new()) };
        let word = match limit.stage {
            Stage::TimeOut | Stage::VacuumPack => "time-at-most",
            Stage::CoolDown => "time-within",
            Stage::CleaningInterval => "time-every",
            Stage::MinceAge => "time-from-slaughter",
            _ => "time-at-least",
        };
        self.engine.words.with(word, &[("time", FluentValue::from(printed(&time.printed)))])
    }

    /// From which age on a limit on risk material holds, in words.
    pub(super) fn age_bound(&self, limit: &Limit) -> Result<String, ThemeError> {
        let words = &self.engine.words;
        match limit.age {
            Some(AgeBound::From(months)) => words.with("age-from", &[("months", i64::from(months).into())]),
            Some(AgeBound::Over(months)) => words.with("age-over", &[("months", i64::from(months).into())]),
            None if limit.stage == Stage::RiskMaterial => words.plain("age-any").map(str::to_owned),
            None => Ok(String::new()),
        }
    }

    /// A part that a limit lists, with its place on the page of the first of its species that has one.
    fn listed_part(&self, page: &str, limit: &Limit, part: &str) -> Link {
        let mut shown = limit.species.iter().filter_map(|species| Some((species, self.anatomies.get(species.as_str())?)));
        let id = shown.find_map(|(species, anatomy)| anatomy.id_of(part).map(|id| (species, id)));
        let href = id.map(|(species, id)| paths::anchored(paths::link(page, &paths::anatomy(species)), &format!("part-{id}")));
        let groups = limit.species.iter().filter_map(|species| self.book.builtin.species.get(species));
        let mut known = groups.filter_map(|species| self.book.builtin.anatomy.get(&species.group)?.parts.get(part));
        let name = known.next().map_or_else(|| capitalised(&part.replace('-', " ")), |part| part.name.clone());
        Link { name, href: href.unwrap_or_default() }
    }
}

/// The figure in the other unit, and whether the source prints it itself.
pub(super) fn other(limit: &Limit) -> (String, bool) {
    if let Some(twin) = &limit.printed_twin {
        return (printed(twin), true);
    }
    let figure = limit.at_most.as_ref().or(limit.at_least.as_ref());
    let temperature = figure.and_then(|figure| figure.temperature);
    (temperature.map_or_else(String::new, other_scale), false)
}

/// A printed figure: its unit stays beside it, and a hyphen before a number is a minus sign.
pub(super) fn printed(figure: &str) -> String {
    let text = figure.trim();
    let text = text.strip_prefix('-').map_or_else(|| text.to_owned(), |number| format!("\u{2212}{number}"));
    keep_units(&text)
}

fn source(citation: &Citation) -> Source {
    let text = |part: &Option<String>| keep_units(part.as_deref().unwrap_or_default());
    Source {
        title: keep_units(&citation.title),
        section: text(&citation.section),
        publisher: text(&citation.publisher),
        edition: text(&citation.edition),
        year: text(&citation.year),
        read_in: text(&citation.read_in),
    }
}
