//! Which regions of the animal a piece can reach into, as far as the cut list says.
//!
//! A piece lies in the region of its own cut-list entry; without one, in those of what it was cut from. A piece
//! that is cut up reaches into the regions of all that comes of it as well: a leg with the chump on gives a chump.
//! What the cut list does not say stays unknown, and whatever depends on it is silent.

use std::collections::BTreeSet;

use crate::model::{Guidebook, Procedure};

use super::anatomy::Anatomy;
use super::network::Network;

/// The regions of each piece of a procedure, beside `Network::pieces`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Regions<'a> {
    lies: Vec<Option<BTreeSet<&'a str>>>,
    below: Vec<BTreeSet<&'a str>>,
}

impl<'a> Regions<'a> {
    /// The regions of a procedure; all unknown when its order is not sound.
    #[must_use]
    pub fn of(book: &'a Guidebook, procedure: &Procedure, network: &Network, anatomy: &Anatomy<'a>) -> Self {
        let species = procedure.species.value().map_or("", String::as_str);
        let own = |id: &str| {
            let cut = book.cuts.get(id).filter(|cut| cut.species == species)?;
            cut.region.value().map(String::as_str).filter(|region| anatomy.has_region(region))
        };
        // Where a piece is taken wrongly, the step may be about another one.
        let own: Vec<Option<&str>> = network.pieces.iter().map(|piece| own(&piece.id).filter(|_| network.is_sound())).collect();
        let mut lies: Vec<Option<BTreeSet<&str>>> = own.iter().map(|own| own.map(|region| BTreeSet::from([region]))).collect();
        let mut below: Vec<BTreeSet<&str>> = own.iter().map(|own| own.iter().copied().collect()).collect();
        if network.is_sound() {
            for ends in &network.steps {
                let taken = ends.takes.iter().map(|piece| lies.get((*piece)?)?.clone());
                let taken: Option<BTreeSet<&str>> = taken.collect::<Option<Vec<_>>>().map(|sets| sets.into_iter().flatten().collect());
                for piece in &ends.gives {
                    let stated = own.get(*piece).is_some_and(Option::is_some);
                    // A tub holds of several pieces; where one of them is unknown, so is the tub.
                    let several = network.pieces.get(*piece).is_some_and(|piece| piece.is_tub());
                    if let Some(entry) = lies.get_mut(*piece).filter(|_| !stated && !several) {
                        entry.clone_from(&taken);
                    }
                }
            }
            for ends in network.steps.iter().rev() {
                let given: BTreeSet<&str> = ends.gives.iter().filter_map(|piece| below.get(*piece)).flatten().copied().collect();
                for piece in ends.takes.iter().flatten() {
                    if let Some(entry) = below.get_mut(*piece) {
                        entry.extend(&given);
                    }
                }
            }
        }
        Self { lies, below }
    }

    /// Where a piece lies; `None` when that is not known.
    #[must_use]
    pub fn lies(&self, piece: usize) -> Option<&BTreeSet<&'a str>> {
        self.lies.get(piece)?.as_ref()
    }

    /// Where a piece lies and what comes of it; `None` when it is not known where it lies.
    #[must_use]
    pub fn reaches(&self, piece: usize) -> Option<BTreeSet<&'a str>> {
        let lies = self.lies(piece)?;
        Some(lies.iter().chain(self.below.get(piece).into_iter().flatten()).copied().collect())
    }

    /// All that a step can meet: what it takes and what comes of it; `None` when part of that is not known.
    #[must_use]
    pub fn of_step(&self, network: &Network, step: usize) -> Option<BTreeSet<&'a str>> {
        let ends = network.steps.get(step)?;
        if ends.takes.is_empty() {
            return None;
        }
        let taken = ends.takes.iter().map(|piece| self.reaches((*piece)?)).collect::<Option<Vec<_>>>()?;
        Some(taken.into_iter().flatten().collect())
    }
}
