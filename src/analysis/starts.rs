//! Which procedures start from which piece, looked up once for a whole guidebook.

use std::collections::BTreeMap;

use crate::model::{Guidebook, Procedure};

/// Procedures by the piece that they start from, as positions in `Guidebook::procedures`.
#[derive(Debug, Clone, Default)]
pub struct Starts {
    all: BTreeMap<String, Vec<usize>>,
    house: BTreeMap<String, Vec<usize>>,
    uncertain: BTreeMap<String, Vec<usize>>,
}

/// The usual way to break a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HouseCut {
    /// No procedure says so of itself.
    None,
    /// This one, as a position in `Guidebook::procedures`.
    One(usize),
    /// Several say so, or what one says could not be read.
    Unclear,
}

impl Starts {
    /// Looks through all procedures of a guidebook.
    #[must_use]
    pub fn of(guidebook: &Guidebook) -> Self {
        let mut starts = Self::default();
        for (at, procedure) in guidebook.procedures.iter().enumerate() {
            let Some(piece) = procedure.start.piece.value() else { continue };
            starts.all.entry(piece.clone()).or_default().push(at);
            if procedure.house_cut.value() == Some(&true) {
                starts.house.entry(piece.clone()).or_default().push(at);
            } else if procedure.house_cut.is_broken() {
                starts.uncertain.entry(piece.clone()).or_default().push(at);
            }
        }
        starts
    }

    /// The procedures that start from a piece.
    #[must_use]
    pub fn from(&self, piece: &str) -> &[usize] {
        self.all.get(piece).map_or(&[], Vec::as_slice)
    }

    /// The house cut of a piece.
    #[must_use]
    pub fn house_cut(&self, piece: &str) -> HouseCut {
        match (self.house.get(piece).map_or(&[][..], Vec::as_slice), self.uncertain.contains_key(piece)) {
            ([], false) => HouseCut::None,
            ([one], false) => HouseCut::One(*one),
            _ => HouseCut::Unclear,
        }
    }

    /// Each piece that has a house cut, with all procedures that say so of themselves, in the order of ids.
    pub fn house_cuts(&self) -> impl Iterator<Item = (&str, &[usize])> {
        self.house.iter().map(|(piece, at)| (piece.as_str(), at.as_slice()))
    }

    /// True when some procedure other than `than` starts from the piece.
    #[must_use]
    pub fn another_starts_from(&self, piece: &str, than: &Procedure, guidebook: &Guidebook) -> bool {
        self.from(piece).iter().any(|at| guidebook.procedures.get(*at).is_some_and(|procedure| procedure.id != than.id))
    }
}
