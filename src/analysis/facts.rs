//! What the outputs of one piece say together: its use, how many lie together, how it is portioned.
//!
//! A tub is given by several steps; each fact is stated at least once and never differently.

use crate::model::procedure::Portions;
use crate::model::quantity::{Length, Mass, Range};
use crate::model::words::Use;
use crate::model::{Output, Procedure, Stated};

use super::network::{Giving, NetworkPiece};

/// One fact over all outputs that give a piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Agreed<T> {
    /// No output states it.
    Silent,
    /// Some output states it in a way that could not be read.
    Broken,
    /// Stated, and never differently.
    Stated {
        /// What was stated.
        value: T,
        /// The first output that states it.
        at: Giving,
    },
    /// Stated in two ways.
    Differs {
        /// What was stated first.
        value: T,
        /// Where.
        at: Giving,
        /// What was stated later.
        other: T,
        /// Where.
        other_at: Giving,
    },
}

impl<T> Agreed<T> {
    /// The value, when nothing speaks against it.
    #[must_use]
    pub const fn value(&self) -> Option<&T> {
        match self {
            Self::Stated { value, .. } => Some(value),
            Self::Silent | Self::Broken | Self::Differs { .. } => None,
        }
    }

    /// True when no output states it.
    #[must_use]
    pub const fn is_silent(&self) -> bool {
        matches!(self, Self::Silent)
    }
}

/// How a piece is portioned, without places.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PortionSpec {
    /// The weight of one.
    pub weight: Option<Range<Mass>>,
    /// The thickness of one.
    pub thickness: Option<Range<Length>>,
    /// How many come of all pieces together.
    pub count: Option<Range<u32>>,
}

/// The facts of one piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceFacts {
    /// What becomes of it.
    pub purpose: Agreed<Use>,
    /// How many lie together.
    pub pieces: Agreed<u32>,
    /// How it is portioned.
    pub portions: Agreed<PortionSpec>,
}

impl PieceFacts {
    /// The facts of a piece of this procedure.
    #[must_use]
    pub fn of(procedure: &Procedure, piece: &NetworkPiece) -> Self {
        Self {
            purpose: agreed(procedure, piece, |output| copied(&output.purpose)),
            pieces: agreed(procedure, piece, |output| copied(&output.pieces)),
            portions: agreed(procedure, piece, |output| match &output.portions {
                Stated::Absent => Said::Nothing,
                Stated::Broken => Said::Broken,
                Stated::Given(given) => portion_spec(&given.value),
            }),
        }
    }

    /// How many lie together: one unless stated; `None` when it could not be read or is stated in two ways.
    #[must_use]
    pub fn pieces_together(&self) -> Option<u32> {
        match &self.pieces {
            Agreed::Silent => Some(1),
            other => other.value().copied().filter(|pieces| *pieces > 0),
        }
    }
}

/// What one output says of one fact.
enum Said<T> {
    Nothing,
    Broken,
    Value(T),
}

fn copied<T: Copy>(stated: &Stated<T>) -> Said<T> {
    match stated {
        Stated::Absent => Said::Nothing,
        Stated::Broken => Said::Broken,
        Stated::Given(given) => Said::Value(given.value),
    }
}

fn portion_spec(portions: &Portions) -> Said<PortionSpec> {
    if portions.weight.is_broken() || portions.thickness.is_broken() || portions.count.is_broken() {
        return Said::Broken;
    }
    Said::Value(PortionSpec {
        weight: portions.weight.value().copied(),
        thickness: portions.thickness.value().copied(),
        count: portions.count.value().copied(),
    })
}

/// Gathers one fact over all outputs of a piece; a broken statement anywhere keeps the rest silent.
fn agreed<T: PartialEq>(procedure: &Procedure, piece: &NetworkPiece, pick: impl Fn(&Output) -> Said<T>) -> Agreed<T> {
    let mut result = Agreed::Silent;
    for giving in &piece.given_by {
        let Some(output) = output_at(procedure, *giving) else { continue };
        result = match (pick(output), result) {
            (Said::Broken, _) => return Agreed::Broken,
            (Said::Value(value), Agreed::Silent) => Agreed::Stated { value, at: *giving },
            (Said::Value(other), Agreed::Stated { value, at }) if other != value => Agreed::Differs { value, at, other, other_at: *giving },
            (Said::Value(_) | Said::Nothing, before) => before,
        };
    }
    result
}

/// The output at a position.
#[must_use]
pub fn output_at(procedure: &Procedure, giving: Giving) -> Option<&Output> {
    procedure.steps.get(giving.step)?.give.get(giving.output)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::network::Network;
    use crate::analysis::testing::procedure;

    fn trim(second: &str) -> PieceFacts {
        let steps = ["a -> b 50 | trim 50 =lean-trim", &format!("b -> c 50 | trim 50 {second}")];
        let procedure = procedure("p/p", "a", &steps);
        let network = Network::of(&procedure);
        PieceFacts::of(&procedure, &network.pieces[2])
    }

    #[test]
    fn a_tub_states_each_fact_at_least_once_and_never_differently() {
        assert_eq!(trim("").purpose.value(), Some(&Use::LeanTrim));
        assert_eq!(trim("=lean-trim").purpose.value(), Some(&Use::LeanTrim));
        let differs = trim("=fat-trim").purpose;
        let (at, other_at) = (Giving { step: 0, output: 1 }, Giving { step: 1, output: 1 });
        assert_eq!(differs, Agreed::Differs { value: Use::LeanTrim, at, other: Use::FatTrim, other_at });
        assert_eq!(trim("").pieces_together(), Some(1));
        assert_eq!(trim("x2").pieces_together(), Some(2));
    }
}
