//! A share of a weight, as an exact decimal.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Sub};

/// A part of a weight, counted in billionths of the whole, so that sums are exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Share(i64);

impl Share {
    /// Nothing.
    pub const ZERO: Self = Self(0);
    /// The whole.
    pub const WHOLE: Self = Self(1_000_000_000);

    /// The share of so many billionths: 1,000,000,000 is the whole.
    #[must_use]
    pub const fn from_billionths(billionths: i64) -> Self {
        Self(billionths)
    }

    /// Billionths of the whole.
    #[must_use]
    pub const fn billionths(self) -> i64 {
        self.0
    }

    /// The share as a fraction of 1, for derived figures.
    #[must_use]
    pub fn fraction(self) -> f64 {
        self.0 as f64 / 1e9
    }
}

impl Add for Share {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Share {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Sum for Share {
    fn sum<I: Iterator<Item = Self>>(shares: I) -> Self {
        shares.fold(Self::ZERO, Add::add)
    }
}

impl fmt::Display for Share {
    /// In percent without the sign, with as many decimals as it needs: `4.5`, `31`, `0.25`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "\u{2212}" } else { "" };
        let size = self.0.unsigned_abs();
        let (whole, part) = (size / 10_000_000, size % 10_000_000);
        if part == 0 {
            return write!(f, "{sign}{whole}");
        }
        let decimals = format!("{part:07}");
        write!(f, "{sign}{whole}.{}", decimals.trim_end_matches('0'))
    }
}

impl super::range::Written for Share {
    fn number(&self) -> String {
        self.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prints_percent_with_the_decimals_it_needs() {
        let show = |billionths| Share::from_billionths(billionths).to_string();
        assert_eq!(show(45_000_000), "4.5");
        assert_eq!(show(1_000_000_000), "100");
        assert_eq!(show(2_500_000), "0.25");
        assert_eq!(show(-36_000_000), "\u{2212}3.6");
    }
}
