//! Temperature, length and minutes, each exact in the unit in which it was written.

use std::fmt;

use super::range::Written;

/// A scale of temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TemperatureUnit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// A temperature in thousandths of a degree of its own scale; compared exactly across scales.
#[derive(Debug, Clone, Copy)]
pub struct Temperature {
    thousandths: i64,
    unit: TemperatureUnit,
}

impl Temperature {
    /// So many thousandths of a degree of `unit`.
    #[must_use]
    pub const fn from_thousandths(thousandths: i64, unit: TemperatureUnit) -> Self {
        Self { thousandths, unit }
    }

    /// Thousandths of a degree of its own scale.
    #[must_use]
    pub const fn thousandths(self) -> i64 {
        self.thousandths
    }

    /// The scale in which it was written.
    #[must_use]
    pub const fn unit(self) -> TemperatureUnit {
        self.unit
    }

    /// Ninths of a thousandth of a degree Celsius, in which both scales are whole: t_C = (t_F − 32) · 5/9.
    #[must_use]
    pub const fn exact(self) -> i64 {
        match self.unit {
            TemperatureUnit::Celsius => self.thousandths.saturating_mul(9),
            TemperatureUnit::Fahrenheit => (self.thousandths.saturating_sub(32_000)).saturating_mul(5),
        }
    }
}

impl PartialEq for Temperature {
    fn eq(&self, other: &Self) -> bool {
        self.exact() == other.exact()
    }
}

impl Eq for Temperature {}

impl PartialOrd for Temperature {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.exact().cmp(&other.exact()))
    }
}

impl Written for Temperature {
    fn number(&self) -> String {
        decimal(self.thousandths, 1_000)
    }

    fn unit_symbol(&self) -> &'static str {
        match self.unit {
            TemperatureUnit::Celsius => "\u{b0}C",
            TemperatureUnit::Fahrenheit => "\u{b0}F",
        }
    }
}

impl fmt::Display for Temperature {
    /// In its own scale: `4 °C`, `38 °F`, `−20 °C`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.number(), self.unit_symbol())
    }
}

/// A length in nanometres, with the unit in which it was written; one inch is exactly 25.4 mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Length {
    /// Nanometres.
    pub nanometres: i64,
    /// The unit in which it was written.
    pub unit: LengthUnit,
}

/// A unit of length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LengthUnit {
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Inch.
    Inch,
}

impl LengthUnit {
    /// Nanometres in one unit.
    #[must_use]
    pub const fn nanometres(self) -> i64 {
        match self {
            Self::Millimetre => 1_000_000,
            Self::Centimetre => 10_000_000,
            Self::Inch => 25_400_000,
        }
    }

    /// The symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Inch => "in",
        }
    }
}

impl Written for Length {
    fn number(&self) -> String {
        decimal(self.nanometres, self.unit.nanometres())
    }

    fn unit_symbol(&self) -> &'static str {
        self.unit.symbol()
    }
}

impl fmt::Display for Length {
    /// In its own unit: `20 mm`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.number(), self.unit_symbol())
    }
}

/// Minutes of work, in thousandths of a minute.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Minutes(pub i64);

impl Minutes {
    /// Minutes as a number, for derived figures.
    #[must_use]
    pub fn number(self) -> f64 {
        self.0 as f64 / 1_000.0
    }
}

impl Written for Minutes {
    fn number(&self) -> String {
        decimal(self.0, 1_000)
    }
}

impl fmt::Display for Minutes {
    /// Without a unit: `3`, `0.5`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&decimal(self.0, 1_000))
    }
}

/// `value / unit` as a decimal of at most three places, with a true minus sign.
fn decimal(value: i64, unit: i64) -> String {
    let number = value as f64 / unit as f64;
    let text = format!("{:.3}", number.abs());
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if number < 0.0 { format!("\u{2212}{text}") } else { text.to_owned() }
}
