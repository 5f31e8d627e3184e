//! A step of a guide.

use super::Views;
use super::control::text;
use super::kit::inside;
use crate::analysis::minutes::bench_minutes;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::figures::{StepFigures, duration};
use crate::model::procedure::BackToCold;
use crate::model::words::Side;
use crate::model::{Procedure, Stated, Step as ModelStep};
use crate::site::context::frame::Link;
use crate::site::context::step::{After, Clock, Step};
use crate::site::escape::keep_units;
use crate::site::markdown::{self, Layout};

impl Views<'_> {
    /// One step; `at` counts from 0.
    pub(super) fn step(
        &self,
        page: &str,
        procedure: &Procedure,
        analysis: &ProcedureAnalysis,
        at: usize,
        figures: Option<&StepFigures>,
    ) -> Option<Step> {
        let step = procedure.steps.get(at)?;
        let (back_to_cold, back_pieces) = self.back_to_cold(step);
        let outputs = figures.map_or_else(Vec::new, |figures| {
            figures.outputs.iter().map(|output| self.step_output(page, procedure, analysis, step, output)).collect()
        });
        Some(Step {
            number: at + 1,
            id: step.id.clone(),
            name: text(&step.name),
            takes: self.takes(page, procedure, at, step),
            minutes: step.minutes.value().map_or_else(String::new, |minutes| duration::minutes(*minutes)),
            clock: bench_minutes(step).map(|minutes| Clock {
                time: duration::minutes(minutes),
                low: minutes.low.0 * 60 / 1000,
                high: minutes.high.0 * 60 / 1000,
            }),
            tools: self.tools(procedure, step),
            wear: self.wear(procedure, step),
            never_wear: self.never_wear(procedure, step),
            side: side(&step.side),
            draws_toward_body: step.draws_toward_body.value() == Some(&true),
            at_once: step.at_once.value().copied().unwrap_or(1),
            cautions: self.cautions_of_step(procedure, step),
            after: after(procedure, step),
            pictures: step.pictures.iter().filter_map(|picture| self.picture(page, picture)).collect(),
            do_html: self.laid_out(page, &step.instruction, Layout { top_heading: 4, lines: true }),
            hold_html: self.inline(page, &step.hold),
            landmark_html: self.inline(page, &step.landmark),
            back_to_cold,
            back_pieces,
            outputs,
            bar: figures.map(|figures| figures.bar.clone()),
            anatomy: step.anatomy.iter().map(|part| self.part_link(page, procedure, &part.value)).collect(),
            anatomy_html: self.blocks(page, &step.anatomy_note),
            good_html: self.blocks(page, &step.good),
            mistakes_html: self.laid_out(page, &step.mistakes, Layout { top_heading: 4, lines: true }),
        })
    }

    /// The pieces taken, each with the step that gives it, where an earlier one does.
    fn takes(&self, page: &str, procedure: &Procedure, at: usize, step: &ModelStep) -> Vec<Link> {
        let gives = |piece: &str| {
            let earlier = procedure.steps.iter().take(at).rev();
            earlier.into_iter().find(|earlier| earlier.give.iter().any(|output| output.piece.value == piece))
        };
        let link = |piece: &str| {
            let href = match gives(piece) {
                Some(earlier) => format!("#step-{}", earlier.id),
                None => self.given_by(page, piece).first().map_or_else(String::new, |link| link.href.clone()),
            };
            Link { name: self.piece(piece), href }
        };
        step.take.iter().map(|piece| link(&piece.value)).collect()
    }

    /// The name of an anatomical part as it stands inside a list; its id with spaces where nobody knows it.
    pub(super) fn part_name(&self, procedure: &Procedure, part: &str) -> String {
        let anatomy = procedure.species.value().and_then(|species| self.anatomies.get(species.as_str()));
        let told = anatomy.and_then(|anatomy| anatomy.told(anatomy.id_of(part)?));
        told.map_or_else(|| part.replace('-', " "), |told| inside(&told.name))
    }

    fn back_to_cold(&self, step: &ModelStep) -> (&'static str, Vec<String>) {
        match step.back_to_cold.value() {
            None => ("", Vec::new()),
            Some(BackToCold::All) => ("all", Vec::new()),
            Some(BackToCold::Pieces(pieces)) => ("pieces", pieces.iter().map(|piece| self.piece(&piece.value)).collect()),
        }
    }
}

/// Steps that anatomy wants done first.
fn after(procedure: &Procedure, step: &ModelStep) -> Vec<After> {
    let number = |id: &str| procedure.steps.iter().position(|step| step.id == id).map(|at| at + 1);
    let after = step.after.iter().filter_map(|after| {
        let number = number(&after.step.value)?;
        Some(After { number, id: after.step.value.clone(), why: keep_units(&markdown::first_line(&after.why)) })
    });
    after.collect()
}

/// The word for a side, or nothing.
pub(super) fn side(stated: &Stated<Side>) -> &'static str {
    stated.value().map_or("", |side| side.word())
}
