//! A guide for machines: HowTo of schema.org as JSON-LD, in a file beside the guide.
//!
//! There is no type for a hazard in that vocabulary, so cautions and what is worn stand in the text of their step, before
//! the act. A duration there is one number: it is the longest, a learner's.

use serde::Serialize;

use super::control::text;
use super::{Views, gone};
use crate::figures::{duration, numbers};
use crate::model::quantity::Minutes;
use crate::model::words::State;
use crate::model::{Procedure, Stated, Step as ModelStep};
use crate::site::context::caution::CautionGroup;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct HowTo {
    #[serde(rename = "@context")]
    context: &'static str,
    #[serde(rename = "@type")]
    kind: &'static str,
    identifier: String,
    url: String,
    name: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    description: String,
    in_language: String,
    version: String,
    date_modified: String,
    creative_work_status: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    publisher: Option<Named>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    image: Vec<Image>,
    #[serde(skip_serializing_if = "String::is_empty")]
    prep_time: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    perform_time: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    total_time: String,
    supply: Vec<Named>,
    tool: Vec<Named>,
    #[serde(rename = "yield", skip_serializing_if = "Vec::is_empty")]
    gives: Vec<String>,
    step: Vec<HowToStep>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Named {
    #[serde(rename = "@type")]
    kind: &'static str,
    name: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    required_quantity: String,
}

#[derive(Serialize)]
struct Image {
    #[serde(rename = "@type")]
    kind: &'static str,
    url: String,
    caption: String,
}

#[derive(Serialize)]
struct HowToStep {
    #[serde(rename = "@type")]
    kind: &'static str,
    position: usize,
    name: String,
    url: String,
    text: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    image: Vec<Image>,
}

impl Views<'_> {
    /// The bytes of the file.
    pub(super) fn guide_data(&self, path: &str, at: usize) -> Result<Vec<u8>, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let mut text = serde_json::to_string_pretty(&self.how_to(path, at, procedure)).unwrap_or_default();
        text.push('\n');
        Ok(text.into_bytes())
    }

    fn how_to(&self, path: &str, at: usize, procedure: &Procedure) -> HowTo {
        let url = self.address(path, &paths::guide(&procedure.id));
        let publisher = self.book.publisher.value().filter(|name| !name.is_empty());
        let steps = (1..).zip(&procedure.steps).map(|(position, step)| HowToStep {
            kind: "HowToStep",
            position,
            name: markdown::first_line(&text(&step.name)),
            url: paths::anchored(url.clone(), &format!("step-{}", step.id)),
            text: self.spoken(procedure, step),
            image: self.images(path, step),
        });
        let (prepare, perform, total) = self.times(at, procedure);
        HowTo {
            context: "https://schema.org",
            kind: "HowTo",
            identifier: procedure.id.clone(),
            name: self.title(at),
            description: procedure.purpose.value().map_or_else(String::new, |purpose| markdown::plain(purpose)),
            in_language: self.book.language.value().cloned().unwrap_or_else(|| "en".to_owned()),
            version: procedure.revision.number.value().map_or_else(String::new, ToString::to_string),
            date_modified: procedure.revision.date.value().map_or_else(String::new, ToString::to_string),
            creative_work_status: match procedure.revision.state() {
                State::Draft => "Draft",
                State::InForce => "Published",
                State::Withdrawn => "Obsolete",
            },
            publisher: publisher.map(|name| named("Organization", name.clone())),
            image: procedure.steps.iter().flat_map(|step| self.images(path, step)).collect(),
            prep_time: prepare,
            perform_time: perform,
            total_time: total,
            supply: vec![self.supply(procedure)],
            tool: self.tools_of(procedure).into_iter().map(|name| named("HowToTool", name)).collect(),
            gives: self.gives(at),
            step: steps.collect(),
            url,
        }
    }

    fn supply(&self, procedure: &Procedure) -> Named {
        let start = &procedure.start;
        Named {
            required_quantity: start.weight.value().map_or_else(String::new, |weight| self.scale.masses(*weight)),
            ..named("HowToSupply", start.piece.value().map_or_else(String::new, |piece| self.piece(piece)))
        }
    }

    /// Every tool once, in the order of the work.
    fn tools_of(&self, procedure: &Procedure) -> Vec<String> {
        let mut names = Vec::new();
        for tool in procedure.steps.iter().flat_map(|step| self.tools(procedure, step)).flatten() {
            if !names.contains(&tool) {
                names.push(tool);
            }
        }
        names
    }

    /// Final pieces with their shares of the start.
    fn gives(&self, at: usize) -> Vec<String> {
        let shares = self.analysis.procedures.get(at).and_then(|analysis| analysis.shares.as_ref());
        let finals = shares.into_iter().flat_map(|shares| &shares.pieces).filter(|piece| piece.is_final);
        finals.map(|piece| format!("{} {}", self.piece(&piece.piece), numbers::percent_range(piece.share.low, piece.share.high))).collect()
    }

    /// Set-up, work, and all of it with cleaning, each at its longest; empty where not known.
    fn times(&self, at: usize, procedure: &Procedure) -> (String, String, String) {
        let high = |stated: &Stated<crate::model::quantity::Range<Minutes>>| stated.value().map(|range| range.high);
        let (prepare, clean) = (high(&procedure.set_up_minutes), high(&procedure.clean_minutes));
        let work = self.analysis.procedures.get(at).and_then(|analysis| analysis.minutes.bench).map(|range| range.high);
        let total = work.map(|work| Minutes(work.0 + prepare.map_or(0, |time| time.0) + clean.map_or(0, |time| time.0)));
        let shown = |time: Option<Minutes>| time.map_or_else(String::new, duration::iso);
        (shown(prepare), shown(work), shown(total))
    }

    /// A step as one would say it: what can hurt, what is worn, then the act.
    fn spoken(&self, procedure: &Procedure, step: &ModelStep) -> String {
        let mut parts: Vec<String> = self.cautions_of_step(procedure, step).iter().flat_map(|group| self.warnings(group)).collect();
        let worn = self.wear(procedure, step);
        if !worn.is_empty() {
            parts.push(format!("{}: {}.", self.engine.words.plain("wear").unwrap_or_default(), worn.join(", ")));
        }
        let never = self.never_wear(procedure, step);
        if !never.is_empty() {
            parts.push(format!("{}: {}.", self.engine.words.plain("take-off").unwrap_or_default(), never.join(", ")));
        }
        let said = [&step.instruction, &step.hold, &step.landmark];
        parts.extend(said.into_iter().filter_map(|said| said.value()).map(|said| markdown::plain(said)));
        parts.retain(|part| !part.is_empty());
        parts.join(" ")
    }

    fn warnings(&self, group: &CautionGroup) -> Vec<String> {
        let signal = self.engine.words.plain(&format!("signal-{}", group.signal)).unwrap_or_default();
        group.items.iter().map(|item| format!("{signal}: {} {} {}", item.hazard, item.consequence, item.avoid)).collect()
    }

    fn images(&self, path: &str, step: &ModelStep) -> Vec<Image> {
        let images = step.pictures.iter().filter_map(|picture| {
            let file = picture.file.value().filter(|file| self.book.pictures.contains_key(*file))?;
            let words = picture.alt.value().or_else(|| picture.caption.value());
            let caption = words.map_or_else(String::new, |words| markdown::first_line(words));
            Some(Image { kind: "ImageObject", url: self.address(path, file), caption })
        });
        images.collect()
    }
}

fn named(kind: &'static str, name: String) -> Named {
    Named { kind, name, required_quantity: String::new() }
}
