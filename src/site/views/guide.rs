//! A guide, top to bottom.

use super::control::text;
use super::frame::{About, paints};
use super::step::side;
use super::{Views, gone};
use crate::analysis::clock::ClockKind;
use crate::analysis::demands::product_of;
use crate::analysis::minutes::bench_minutes;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::figures::outputs::step_figures;
use crate::figures::{Worked, duration};
use crate::model::age::Age;
use crate::model::quantity::{Minutes, Range};
use crate::model::stated::Spanned;
use crate::model::{Procedure, Stated};
use crate::site::context::frame::Link;
use crate::site::context::guide::{Guide, GuidePage, Question, Start, Stretch};
use crate::site::escape::keep_units;
use crate::site::markdown::{self, Layout};
use crate::site::page::folder_of;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `guide.html` gets.
    pub(super) fn guide(&self, path: &str, at: usize) -> Result<GuidePage, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let guide = self.guide_content(path, at, procedure, "")?;
        let page = self.frame(About {
            paints: paints(guide.yields.as_ref().map(|yields| &yields.table)),
            path,
            title: self.title(at),
            trail: self.trail(path, &procedure.id),
            procedure: Some(procedure),
            look: Look::Guide,
            scripts: &["weight.js", "card.js"],
            data: Some(paths::guide_data(&procedure.id)),
            anchor: "steps",
        })?;
        Ok(GuidePage { page, guide })
    }

    /// The guide itself, for a page at this path; `view` is the word of that page among the views of a guide, or empty.
    pub(super) fn guide_content(&self, path: &str, at: usize, procedure: &Procedure, view: &str) -> Result<Guide, ThemeError> {
        let analysis = self.analysis.procedures.get(at).ok_or_else(|| gone("analysis"))?;
        let yields = self.yields(path, at);
        let figures = yields.as_ref().and_then(|(_, rounded)| step_figures(analysis, Worked::of(procedure, self.scale)?, rounded));
        let steps = (0..procedure.steps.len())
            .filter_map(|step| self.step(path, procedure, analysis, step, figures.as_ref().and_then(|all| all.get(step))));
        let longest = analysis.cold.as_ref().and_then(|cold| cold.longest(ClockKind::Single));
        let minutes = |stated: &Stated<_>| stated.value().map_or_else(String::new, |range| duration::minutes(*range));
        Ok(Guide {
            id: procedure.id.clone(),
            title: self.title(at),
            purpose_html: self.laid_out(path, &procedure.purpose, Layout { top_heading: 2, lines: false }),
            level: keep_units(&text(&procedure.level)),
            house_cut: procedure.house_cut.value() == Some(&true),
            start: self.start(path, procedure),
            minutes: analysis.minutes.bench.map_or_else(String::new, duration::minutes),
            set_up: minutes(&procedure.set_up_minutes),
            clean: minutes(&procedure.clean_minutes),
            longest_out: longest.map_or_else(String::new, |longest| duration::minutes(Range::single(longest))),
            stretches: stretches(procedure, analysis),
            ways: self.ways(path, at, view)?,
            anatomy: self.anatomy_link(path, folder_of(&procedure.id))?,
            needs: procedure.needs.iter().map(|need| self.need(path, &need.value)).collect(),
            allergens: procedure.allergens.iter().map(|allergen| allergen.value.clone()).collect(),
            age: procedure.age.value().map_or_else(|| Ok(String::new()), |age| self.age(*age))?,
            served_raw: procedure.served_raw.value() == Some(&true),
            hurt: self.cautions_of_guide(procedure),
            limits: self.limits(),
            limits_href: paths::link(path, paths::LIMITS),
            product: product_of(self.book, procedure).map_or("", |product| product.word()),
            cold_href: self.cold_href(path, at),
            steps: steps.collect(),
            yields_only: procedure.steps_from_yields,
            yields: yields.map(|(yields, _)| yields),
            questions: self.questions(path, procedure),
            after_work_html: self.laid_out(path, &procedure.after_work, Layout { top_heading: 3, lines: true }),
            sources_html: self.sources(path, procedure),
            waivers: self.waivers(path, procedure)?,
            control: self.control(path, procedure)?,
            source_href: paths::link(path, &paths::source(&procedure.id)),
        })
    }

    /// What the work starts from.
    pub(super) fn start(&self, page: &str, procedure: &Procedure) -> Start {
        let start = &procedure.start;
        let piece = start.piece.value().map_or("", String::as_str);
        let weight = start.weight.value().copied();
        let number = |mass: Option<_>| mass.map_or_else(String::new, |mass| self.scale.number(mass));
        Start {
            name: self.piece(piece),
            piece_href: self.piece_href(page, piece),
            from: self.given_by(page, piece),
            weight: weight.map_or_else(String::new, |weight| self.scale.masses(weight)),
            low: number(weight.map(|weight| weight.low)),
            high: number(weight.map(|weight| weight.high)),
            basis: keep_units(&text(&start.basis)),
            temperature: start.temperature.value().map_or_else(String::new, |range| self.scale.temperatures(*range)),
            side: side(&start.side),
        }
    }

    /// A guide to know first; without a link where the guidebook does not hold it.
    pub(super) fn need(&self, page: &str, need: &str) -> Link {
        match self.book.procedures.iter().position(|procedure| procedure.id == need) {
            Some(at) => self.guide_link(page, at).unwrap_or_else(|| Link { name: need.to_owned(), href: String::new() }),
            None => Link { name: need.to_owned(), href: String::new() },
        }
    }

    /// The age of the animal in words.
    fn age(&self, age: Age) -> Result<String, ThemeError> {
        let words = &self.engine.words;
        match age {
            Age::Under(months) => words.with("age-under", &[("months", i64::from(months).into())]),
            Age::Over(months) => words.with("age-over", &[("months", i64::from(months).into())]),
            Age::Between(range) => {
                words.with("age-between", &[("low", i64::from(range.low).into()), ("high", i64::from(range.high).into())])
            }
            Age::Unknown => words.plain("age-unknown").map(str::to_owned),
        }
    }

    fn questions(&self, page: &str, procedure: &Procedure) -> Vec<Question> {
        let asked = (1..).zip(&procedure.steps).flat_map(|(number, step)| step.ask.iter().map(move |ask| (number, ask)));
        asked
            .map(|(step, ask)| Question {
                step,
                question: ask.question.value().map_or_else(String::new, |question| markdown::first_line(question)),
                answer_html: self.blocks(page, &ask.answer),
            })
            .collect()
    }

    /// Every source that the guide names, each once: of the procedure, its start, its steps, its outputs.
    fn sources(&self, page: &str, procedure: &Procedure) -> Vec<String> {
        let steps = procedure.steps.iter();
        let inner = steps.flat_map(|step| {
            let outputs = step.give.iter().chain(step.loss.value()).flat_map(|output| &output.sources);
            step.sources.iter().chain(outputs)
        });
        let mut texts: Vec<&Spanned<String>> = Vec::new();
        for source in procedure.sources.iter().chain(&procedure.start.sources).chain(inner) {
            if !texts.iter().any(|known| known.value == source.value) {
                texts.push(source);
            }
        }
        let layout = Layout { top_heading: 3, lines: false };
        texts.into_iter().map(|text| markdown::inline(&text.value, layout, &self.targets(page, text.place.file))).collect()
    }

    /// The trail to a page behind a guide.
    pub(super) fn trail_behind(&self, page: &str, at: usize) -> Vec<Link> {
        let Some(procedure) = self.book.procedures.get(at) else { return Vec::new() };
        let mut trail = self.trail(page, &procedure.id);
        let name = self.engine.words.plain("the-guide").unwrap_or_default().to_owned();
        trail.push(Link { name, href: paths::link(page, &paths::guide(&procedure.id)) });
        trail
    }
}

/// The stretches out of the cold of all pieces, without those that lie inside another; none when a step has no minutes.
fn stretches(procedure: &Procedure, analysis: &ProcedureAnalysis) -> Vec<Stretch> {
    let Some(cold) = analysis.cold.as_ref().filter(|cold| cold.steps_without_minutes.is_empty()) else { return Vec::new() };
    let pieces = std::iter::once(&cold.start).chain(&cold.pieces);
    let all: Vec<_> = pieces.flat_map(|piece| piece.stretches.iter().copied()).collect();
    let inside =
        |one: &crate::analysis::clock::Stretch| all.iter().any(|other| other != one && other.from <= one.from && one.to <= other.to);
    let mut outer: Vec<_> = all.iter().copied().filter(|stretch| !inside(stretch)).collect();
    outer.sort_unstable();
    outer.dedup();
    let time = |from: usize, to: usize| {
        let steps = procedure.steps.iter().skip(from).take(to + 1 - from).filter_map(bench_minutes);
        let sum = steps.fold((0, 0), |sum, minutes| (sum.0 + minutes.low.0, sum.1 + minutes.high.0));
        duration::minutes(Range { low: Minutes(sum.0), high: Minutes(sum.1) })
    };
    outer.iter().map(|stretch| Stretch { from: stretch.from + 1, to: stretch.to + 1, time: time(stretch.from, stretch.to) }).collect()
}
