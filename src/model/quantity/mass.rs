//! Weight, exact in both unit systems.
//!
//! One pound is exactly 0.45359237 kg and one ounce exactly 1/16 of it (format.md; the international
//! yard and pound agreement of 1959). Counted in picograms, every value that a scale can show is whole.

use std::fmt;

/// A unit of weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum MassUnit {
    /// Kilogram.
    Kilogram,
    /// Gram.
    Gram,
    /// Pound (avoirdupois).
    Pound,
    /// Ounce (avoirdupois).
    Ounce,
}

impl MassUnit {
    /// Picograms in one unit.
    #[must_use]
    pub const fn picograms(self) -> i128 {
        match self {
            Self::Kilogram => 1_000_000_000_000_000,
            Self::Gram => 1_000_000_000_000,
            Self::Pound => 453_592_370_000_000,
            Self::Ounce => 28_349_523_125_000,
        }
    }

    /// The symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Kilogram => "kg",
            Self::Gram => "g",
            Self::Pound => "lb",
            Self::Ounce => "oz",
        }
    }
}

/// A weight, in picograms, with the unit in which it was written.
#[derive(Debug, Clone, Copy)]
pub struct Mass {
    picograms: i128,
    unit: MassUnit,
}

impl Mass {
    /// A weight of so many picograms, to be shown in `unit`.
    #[must_use]
    pub const fn from_picograms(picograms: i128, unit: MassUnit) -> Self {
        Self { picograms, unit }
    }

    /// A weight of so many kilograms, for derived figures.
    #[must_use]
    pub fn from_kilograms(kilograms: f64) -> Self {
        Self { picograms: (kilograms * 1e15).round() as i128, unit: MassUnit::Kilogram }
    }

    /// Picograms.
    #[must_use]
    pub const fn picograms(self) -> i128 {
        self.picograms
    }

    /// The unit in which it was written.
    #[must_use]
    pub const fn unit(self) -> MassUnit {
        self.unit
    }

    /// Kilograms, for derived figures.
    #[must_use]
    pub fn kilograms(self) -> f64 {
        self.picograms as f64 / 1e15
    }
}

impl PartialEq for Mass {
    fn eq(&self, other: &Self) -> bool {
        self.picograms == other.picograms
    }
}

impl Eq for Mass {}

impl PartialOrd for Mass {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Mass {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.picograms.cmp(&other.picograms)
    }
}

impl super::range::Written for Mass {
    /// In the unit in which it was written, to three decimals at most.
    fn number(&self) -> String {
        let value = self.picograms as f64 / self.unit.picograms() as f64;
        let text = format!("{value:.3}");
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    fn unit_symbol(&self) -> &'static str {
        self.unit.symbol()
    }
}

impl fmt::Display for Mass {
    /// In the unit in which it was written, to three decimals at most: `6.5 kg`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use super::range::Written;
        write!(f, "{} {}", self.number(), self.unit.symbol())
    }
}
