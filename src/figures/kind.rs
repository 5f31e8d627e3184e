//! What becomes of an output, as one list for tables, bars and drawings: its use, a later step, or lost.

use serde::{Serialize, Serializer};

use crate::model::words::Use;

/// What becomes of an output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A later step takes it.
    Onward,
    /// A final piece with this use.
    Final(Use),
    /// No longer on the bench.
    Loss,
}

impl Kind {
    /// All kinds of which a whole is made up, in the order in which tables and bars show them.
    pub fn of_a_whole() -> impl Iterator<Item = Self> {
        Use::ALL.iter().copied().map(Self::Final).chain([Self::Loss])
    }

    /// The word of the format for the use, else `on` or `loss`: names the style of a bar and a word of the interface.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Onward => "on",
            Self::Final(purpose) => purpose.word(),
            Self::Loss => "loss",
        }
    }

    /// True for what is worked for: sold, or cut further. The rest are by-products and loss.
    #[must_use]
    pub const fn is_main(self) -> bool {
        matches!(self, Self::Final(Use::Retail | Use::ForCutting))
    }
}

impl Serialize for Kind {
    /// As its id.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.id())
    }
}
