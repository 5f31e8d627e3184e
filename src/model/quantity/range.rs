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

/// A value that is written as a number and perhaps a unit.
pub trait Written {
    /// The number, with as many decimals as it needs.
    fn number(&self) -> String;

    /// The unit; empty when there is none.
    fn unit_symbol(&self) -> &'static str {
        ""
    }
}

impl Written for u32 {
    fn number(&self) -> String {
        self.to_string()
    }
}

impl<T: Written + PartialEq> fmt::Display for Range<T> {
    /// `low–high` with the unit once where both ends have the same, or the single value.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let with_unit = |value: &T| {
            let (number, unit) = (value.number(), value.unit_symbol());
            if unit.is_empty() { number } else { format!("{number} {unit}") }
        };
        if self.low == self.high {
            return f.write_str(&with_unit(&self.high));
        }
        // A minus sign beside the dash would be hard to read.
        let dash =
            if self.low.number().starts_with('\u{2212}') || self.high.number().starts_with('\u{2212}') { " to " } else { "\u{2013}" };
        if self.low.unit_symbol() == self.high.unit_symbol() {
            write!(f, "{}{dash}{}", self.low.number(), with_unit(&self.high))
        } else {
            write!(f, "{}{dash}{}", with_unit(&self.low), with_unit(&self.high))
        }
    }
}
