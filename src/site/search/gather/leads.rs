//! Where a piece leads: to the step that gives it, or the guide that starts from it.

use std::collections::BTreeMap;

use crate::analysis::Analysis;
use crate::model::{Guidebook, Procedure, Step};

/// Where each piece of each species leads.
pub(super) struct Leads<'a> {
    by_piece: BTreeMap<(&'a str, &'a str), Lead<'a>>,
}

/// A guide, and the step in it where there is one.
#[derive(Clone, Copy)]
pub(super) struct Lead<'a> {
    /// The guide.
    pub(super) procedure: &'a Procedure,
    /// The step with its number, from 1.
    pub(super) step: Option<(usize, &'a Step)>,
    /// True when a step gives the piece and a later one takes it.
    pub(super) passes_on: bool,
    rank: u8,
}

impl<'a> Leads<'a> {
    /// The best lead for each piece: a step before a guide, the house cut before others, then the order of ids.
    pub(super) fn of(book: &'a Guidebook, analysis: &'a Analysis) -> Self {
        let mut leads = Self { by_piece: BTreeMap::new() };
        for (procedure, computed) in book.procedures.iter().zip(&analysis.procedures) {
            let Some(species) = procedure.species.value() else { continue };
            let other = u8::from(procedure.house_cut.value() != Some(&true));
            for piece in &computed.network.pieces {
                let giving = piece.given_by.first().and_then(|giving| Some((giving.step + 1, procedure.steps.get(giving.step)?)));
                let rank = other + 2 * u8::from(giving.is_none());
                let passes_on = giving.is_some() && piece.taken_by.is_some();
                leads.offer((species, &piece.id), Lead { procedure, step: giving, passes_on, rank });
            }
        }
        leads
    }

    fn offer(&mut self, piece: (&'a str, &'a str), lead: Lead<'a>) {
        let best = self.by_piece.entry(piece).or_insert(lead);
        if lead.rank < best.rank {
            *best = lead;
        }
    }

    /// Where a piece leads.
    pub(super) fn get(&self, species: &str, piece: &str) -> Option<Lead<'a>> {
        self.by_piece.get(&(species, piece)).copied()
    }

    /// All pieces that procedures name: species and id.
    pub(super) fn pieces(&self) -> impl Iterator<Item = (&'a str, &'a str)> {
        self.by_piece.keys().copied()
    }
}
