//! What is found of a table, as data: the words for it are the caller's.

use super::base::{Base, BaseOrigin};
use super::decimal::Decimal;
use super::edits::Slip;
use super::sheet::Column;
use super::sums::Sum;

/// Why a figure is odd.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// A slip among its digits.
    Slip(Slip),
    /// It is another figure, and no slip of the pen tells how it came to be.
    OtherFigure,
    /// The row is counted twice.
    CountedTwice,
    /// The row is the sum of the rows from `first` to the one above it, and counted as a part beside them.
    SumAmongParts {
        /// The first of the rows that it sums.
        first: usize,
    },
    /// The total is right without this row.
    TotalLeavesOut {
        /// The row.
        row: usize,
    },
    /// The total is right with this row counted twice.
    TotalCountsTwice {
        /// The row.
        row: usize,
    },
    /// The total is that of the rows from `first` to `last`.
    TotalOfSome {
        /// The first row.
        first: usize,
        /// The last row.
        last: usize,
    },
    /// The total is that of one group.
    TotalOfGroup {
        /// The group.
        group: String,
    },
    /// The cell is empty, and this figure would close the sum.
    NotStated,
    /// The subtotal is at odds with its rows, while the total agrees with them.
    SubtotalAlone,
    /// The shares are worked on another weight than the stated total.
    WrongBase {
        /// Where the other weight comes from.
        origin: BaseOrigin,
    },
    /// The share is not that of its weight.
    NotOfItsWeight,
    /// The share is not that of its weight, but makes the column add up exactly.
    Forced,
    /// The share is that of its weight on the weight of another row.
    OnOtherBase {
        /// The row whose weight it is worked on.
        row: usize,
    },
    /// The last row comes to what all others do, and is not marked as their total.
    LooksLikeTotal,
}

/// A figure that is odd.
#[derive(Debug, Clone, PartialEq)]
pub struct Oddity {
    /// Its row.
    pub row: usize,
    /// Its column.
    pub column: Column,
    /// What stands there; none for an empty cell.
    pub stated: Option<Decimal>,
    /// What should stand there; none when the figure is right and the row's kind is not.
    pub expected: Option<Decimal>,
    /// What speaks against it.
    pub why: Why,
    /// How many corrections explain the same miss about equally well, this one among them.
    pub rivals: usize,
}

/// A sum that does not close, and for which no row stands out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Unexplained {
    /// Its position in `Reconciled::sums`.
    pub sum: usize,
    /// How many single corrections would explain it about equally well; 0 when none is likely.
    pub corrections: usize,
}

/// A column that is held against nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Loose {
    /// The column.
    pub column: Column,
    /// What its rows come to.
    pub found: Decimal,
    /// How far rounding reaches.
    pub bound: Decimal,
    /// How many rows are added up.
    pub rows: usize,
    /// How many parts have no figure in it.
    pub unstated: usize,
}

/// All that is found of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Reconciled {
    /// Every sum, in the order in which they are stated.
    pub sums: Vec<Sum>,
    /// What is odd: corrections of sums that do not close come first, the likeliest before its rivals.
    pub oddities: Vec<Oddity>,
    /// Sums that do not close and that no oddity explains.
    pub unexplained: Vec<Unexplained>,
    /// Columns without a stated total.
    pub loose: Vec<Loose>,
    /// What the shares are shares of, where that can be told.
    pub base: Option<Base>,
    /// True when most shares are not those of their weights, on any base.
    pub at_odds: bool,
}

impl Reconciled {
    /// True when every sum closes exactly or within its rounding bound; what is odd does not change it.
    #[must_use]
    pub fn closes(&self) -> bool {
        self.sums.iter().all(Sum::closes)
    }
}
