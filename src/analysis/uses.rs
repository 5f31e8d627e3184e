//! Final pieces by their use.

use crate::model::words::Use;

use super::facts::{Agreed, PieceFacts};

/// The use of a final piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FinalUse {
    /// The author states it.
    Stated(Use),
    /// No use is stated, and another procedure starts from the piece: it goes on to be cut.
    Implied,
    /// No use is stated, and none is implied.
    Missing,
    /// It could not be read, or is stated in two ways.
    Unclear,
}

impl FinalUse {
    /// The use of a final piece; `goes_on` when another procedure starts from it.
    #[must_use]
    pub const fn of(facts: &PieceFacts, goes_on: bool) -> Self {
        match &facts.purpose {
            Agreed::Stated { value, .. } => Self::Stated(*value),
            Agreed::Silent if goes_on => Self::Implied,
            Agreed::Silent => Self::Missing,
            Agreed::Broken | Agreed::Differs { .. } => Self::Unclear,
        }
    }

    /// The use that holds, when there is one.
    #[must_use]
    pub const fn purpose(self) -> Option<Use> {
        match self {
            Self::Stated(purpose) => Some(purpose),
            Self::Implied => Some(Use::ForCutting),
            Self::Missing | Self::Unclear => None,
        }
    }
}

/// Groups nodes by use, in the order in which the uses first occur.
#[must_use]
pub fn by_use(nodes: impl IntoIterator<Item = (usize, Option<Use>)>) -> Vec<(Use, Vec<usize>)> {
    let mut groups: Vec<(Use, Vec<usize>)> = Vec::new();
    for (node, purpose) in nodes {
        let Some(purpose) = purpose else { continue };
        match groups.iter_mut().find(|(known, _)| *known == purpose) {
            Some((_, list)) => list.push(node),
            None => groups.push((purpose, vec![node])),
        }
    }
    groups
}
