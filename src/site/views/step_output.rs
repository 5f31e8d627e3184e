//! A piece that comes out of a step: its name, its figures, and where it goes.

use super::Views;
use super::step::side;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::figures::numbers::joined;
use crate::figures::{Kind, Output};
use crate::model::procedure::CountSpec;
use crate::model::{Procedure, Step};
use crate::site::context::step::StepOutput;

impl Views<'_> {
    /// One output with its figures.
    pub(super) fn step_output(
        &self,
        page: &str,
        procedure: &Procedure,
        analysis: &ProcedureAnalysis,
        step: &Step,
        figure: &Output,
    ) -> StepOutput {
        let stated = figure.give.and_then(|give| step.give.get(give));
        let piece = stated.map(|output| output.piece.value.as_str());
        let facts = figure.piece.and_then(|piece| analysis.facts.get(piece));
        let spec = facts.and_then(|facts| facts.portions.value());
        let fit = analysis.portions.iter().find(|fit| Some(fit.piece) == figure.piece);
        let further = piece.filter(|_| figure.kind != Kind::Onward).and_then(|piece| self.cut_further(page, piece, &procedure.id));
        let taker = figure.to_step.and_then(|number| procedure.steps.get(number - 1));
        let counts = stated.map_or(&[][..], |output| output.counts.as_slice()).iter().filter_map(|count| {
            let number = match count.number.value()? {
                CountSpec::Between(range) => joined(&range.low.to_string(), &range.high.to_string()),
                CountSpec::Rest => return None,
            };
            Some(format!("{} {number}", self.part_name(procedure, &count.part.value)))
        });
        StepOutput {
            name: piece.map_or_else(String::new, |piece| self.piece(piece)),
            piece_href: piece.map_or_else(String::new, |piece| self.piece_href(page, piece)),
            href: further.map_or_else(String::new, |link| link.href),
            to_id: taker.map_or_else(String::new, |step| step.id.clone()),
            pieces: facts.and_then(|facts| facts.pieces_together()).unwrap_or(1),
            tub: figure.piece.and_then(|piece| analysis.network.pieces.get(piece)).is_some_and(|node| node.is_tub()),
            counts: counts.collect(),
            portion: spec.and_then(|spec| spec.weight).map_or_else(String::new, |weight| self.scale.masses(weight)),
            thickness: spec.and_then(|spec| spec.thickness).map_or_else(String::new, |thickness| self.scale.lengths(thickness)),
            portions: fit.map_or_else(String::new, |fit| joined(&fit.counts.low.to_string(), &fit.counts.high.to_string())),
            side: stated.map_or("", |output| side(&output.side)),
            figure: figure.clone(),
        }
    }
}
