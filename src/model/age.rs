//! The age of the animal, where law turns on it.

use super::quantity::Range;

/// A stated age, in months.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Age {
    /// Below so many months.
    Under(u32),
    /// Between so many months.
    Between(Range<u32>),
    /// Above so many months.
    Over(u32),
    /// Not known: counts as over every limit.
    Unknown,
}

impl Age {
    /// True when the animal counts as over a limit of `months`: also when the limit falls inside the age.
    #[must_use]
    pub const fn counts_as_over(self, months: u32) -> bool {
        match self {
            Self::Under(top) => top > months,
            Self::Between(range) => range.high > months,
            Self::Over(_) | Self::Unknown => true,
        }
    }

    /// True when the animal counts as of `months` or older: also when that falls inside the age.
    #[must_use]
    pub const fn counts_as_from(self, months: u32) -> bool {
        match self {
            Self::Under(top) => top > months,
            Self::Between(range) => range.high >= months,
            Self::Over(_) | Self::Unknown => true,
        }
    }
}

impl std::fmt::Display for Age {
    /// As it is written: `under 12 months`, `12–30 months`, `over 30 months`, `unknown`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Under(months) => write!(f, "under {months} months"),
            Self::Between(range) => write!(f, "{range} months"),
            Self::Over(months) => write!(f, "over {months} months"),
            Self::Unknown => f.write_str("unknown"),
        }
    }
}
