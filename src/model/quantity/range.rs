//! A lowest and a highest value.

use std::fmt;

/// A closed range; `low` is never above `high` (whoever makes one sees to it).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Range<T> {
    /// The lowest value.
    pub low: T,
    /// The highest value.
    pub high: T,
}

impl<T: Copy + PartialOrd> Range<T> {
    /// The range of one single value.
    pub const fn single(value: T) -> Self {
        Self { low: value, high: value }
    }

    /// The range from `low` to `high`, or `None` when `low` is above `high`.
    pub fn new(low: T, high: T) -> Option<Self> {
        (low <= high).then_some(Self { low, high })
    }

    /// True when `value` lies inside, ends included.
    pub fn contains(&self, value: T) -> bool {
        self.low <= value && value <= self.high
    }

    /// True when the two ranges have at least one value in common.
    pub fn meets(&self, other: &Self) -> bool {
        self.low <= other.high && other.low <= self.high
    }

    /// True when it holds one value only.
    pub fn is_single(&self) -> bool {
        self.low == self.high
    }

    /// The same range with each end changed by `change`, which must keep the order.
    pub fn map<U>(self, change: impl Fn(T) -> U) -> Range<U> {
        Range { low: change(self.low), high: change(self.high) }
    }
}

impl<T: fmt::Display + PartialEq> fmt::Display for Range<T> {
    /// `low–high`, or the single value.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.low == self.high { write!(f, "{}", self.low) } else { write!(f, "{}\u{2013}{}", self.low, self.high) }
    }
}
