//! The embedded limits into the model, profile by profile.

use std::collections::BTreeMap;
use std::ops::Deref;

use super::read::{entries, list, optional, text, word};
use crate::finding::Finding;
use crate::model::builtin::limits::{AgeBound, Citation, Duration, Figure, Limit, time};
use crate::model::quantity::parse;
use crate::model::words::{Clock, Force, Measure, Product, Stage, Verified};
use crate::source::documents::builtin::{Source, limits as doc};
use crate::source::field::Required;

const FILES: &[&str] = &[
    include_str!("../../../reference/limits-australia-retail.yaml"),
    include_str!("../../../reference/limits-canada.yaml"),
    include_str!("../../../reference/limits-eu-853.yaml"),
    include_str!("../../../reference/limits-uk-retail.yaml"),
    include_str!("../../../reference/limits-us-food-code.yaml"),
    include_str!("../../../reference/limits-us-plant.yaml"),
];

/// The limits of each profile, in the order of its file.
pub(super) fn load(findings: &mut Vec<Finding>) -> BTreeMap<String, Vec<Limit>> {
    let lower = |limits: &Vec<Required<doc::Limit>>| limits.iter().map(|limit| self::limit(limit.value()?)).collect::<Option<Vec<_>>>();
    FILES.iter().flat_map(|file| entries(file, findings, lower)).collect()
}

fn limit(stated: &doc::Limit) -> Option<Limit> {
    let from = optional(&stated.from_age, months)?.map(AgeBound::From);
    let over = optional(&stated.over_age, months)?.map(AgeBound::Over);
    let products = list(&stated.product).iter().map(|word| Product::from_word(word)).collect::<Option<_>>()?;
    Some(Limit {
        id: text(&stated.id)?,
        stage: word(&stated.stage, Stage::from_word)?,
        products,
        species: list(&stated.species),
        measures: word(&stated.measures, Measure::from_word)?,
        at_most: text(&stated.at_most).map(figure),
        at_least: text(&stated.at_least).map(figure),
        above: text(&stated.above).map(figure),
        printed_twin: text(&stated.printed_twin),
        duration: optional(&stated.duration, duration)?,
        clock: optional(&stated.clock, |word| Clock::from_word(word.trim()))?,
        only_when_asked: stated.only_when_asked.value().copied().unwrap_or(false),
        age: from.or(over),
        parts: list(&stated.parts),
        text: text(&stated.text)?,
        note: text(&stated.note),
        force: word(&stated.force, Force::from_word)?,
        citation: citation(stated.citation.value()?)?,
        verified: word(&stated.verified, Verified::from_word)?,
    })
}

fn citation(stated: &Source) -> Option<Citation> {
    Some(Citation {
        title: text(&stated.title)?,
        section: text(&stated.section),
        publisher: text(&stated.publisher),
        edition: text(&stated.edition),
        year: text(&stated.year),
        read_in: text(&stated.read_in),
    })
}

/// A figure keeps the text of its source; what is no temperature (`200 mg/kg`, `18 years`) is shown only.
fn figure(printed: String) -> Figure {
    let temperature = parse::temperature(&printed).ok().map(|range| range.low);
    Figure { printed, temperature }
}

fn duration(printed: &impl Deref<Target = str>) -> Option<Duration> {
    Some(Duration { printed: printed.trim().to_owned(), minutes: time(printed).ok()? })
}

fn months(text: &impl Deref<Target = str>) -> Option<u32> {
    text.trim().strip_suffix("months")?.trim().parse().ok()
}

#[cfg(test)]
mod tests {
    use crate::model::builtin::Builtin;
    use crate::model::builtin::limits::time;
    use crate::model::quantity::Minutes;
    use crate::model::words::{Measure, Stage};

    /// Ids are unique, a figure in degrees is read as one, and what is risk material is a part of its species.
    #[test]
    fn every_limit_can_be_held_against_something() {
        let builtin = Builtin::get();
        for (name, profile) in &builtin.profiles {
            for limit in &profile.limits {
                let id = format!("{name}/{}", limit.id);
                assert_eq!(profile.limits.iter().filter(|other| other.id == limit.id).count(), 1, "{id} stands twice");
                for figure in [&limit.at_most, &limit.at_least, &limit.above].into_iter().flatten() {
                    let degrees = figure.printed.contains('\u{b0}');
                    assert_eq!(figure.temperature.is_some(), degrees, "{id}: {}", figure.printed);
                    assert_eq!(degrees, limit.measures != Measure::None, "{id}: measures");
                }
                assert_eq!(limit.clock.is_some(), limit.stage == Stage::TimeOut, "{id}: clock");
                assert!(limit.clock.is_none() || limit.clock == profile.clock, "{id}: another clock than its profile");
                assert_eq!(!limit.parts.is_empty(), limit.stage == Stage::RiskMaterial, "{id}: parts");
                for species in &limit.species {
                    let anatomy = &builtin.anatomy[&builtin.species[species].group];
                    for part in &limit.parts {
                        assert!(anatomy.parts.contains_key(part), "{id}: {species} has no `{part}`");
                    }
                }
                assert!(!limit.citation.title.is_empty() && !limit.text.is_empty(), "{id}");
            }
        }
    }

    #[test]
    fn times_are_read_in_the_units_that_sources_print() {
        assert_eq!(time("30 s").ok(), Some(Minutes(500)));
        assert_eq!(time("4 h").ok(), Some(Minutes(240_000)));
        assert_eq!(time("30 minutes").ok(), Some(Minutes(30_000)));
        assert_eq!(time("45").ok(), Some(Minutes(45_000)));
        assert_eq!(time("15 days").ok(), Some(Minutes(21_600_000)));
        assert!(time("4 °C").is_err() && time("soon").is_err() && time("-5 h").is_err());
    }
}
