//! A share as it is printed and drawn: percent, the weight at the worked start, and where its bar lies.

use serde::Serialize;

use crate::analysis::shares::ShareRange;
use crate::model::Procedure;

use super::numbers::{from_units, percent, percent_range, short, units};
use super::units::Scale;

/// The start weight at which figures are worked, and the units in which they are shown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worked {
    /// Kilograms of the start.
    pub kilograms: f64,
    /// The units.
    pub scale: Scale,
}

impl Worked {
    /// The typical start weight of a procedure; `None` when it states none.
    #[must_use]
    pub fn of(procedure: &Procedure, scale: Scale) -> Option<Self> {
        Some(Self { kilograms: procedure.start.typical_mass()?.kilograms(), scale })
    }

    /// The start in the unit of tables.
    #[must_use]
    pub fn in_unit(self) -> f64 {
        self.scale.of_kilograms(self.kilograms)
    }
}

/// A share in percent with one decimal, low, typical and high, and its bar.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Percent {
    /// The least, without a sign: `4.5`.
    pub low: String,
    /// The typical value.
    pub typical: String,
    /// The greatest.
    pub high: String,
    /// Both ends with the sign: `4.5–6.5 %`.
    pub range: String,
    /// How it is drawn.
    pub bar: Bar,
}

/// Lengths of a bar along its whole, each with a percent sign and without spaces, as SVG takes them: `4.5%`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Bar {
    /// Where the least ends.
    pub low: String,
    /// Where the greatest ends.
    pub high: String,
    /// Where the typical value lies.
    pub typical: String,
}

impl Percent {
    /// Of a share given as fractions of 1.
    #[must_use]
    pub fn of(share: ShareRange) -> Self {
        Self::with_typical(share, percent(share.typical))
    }

    /// Likewise, the typical value rounded already so that a printed column adds up.
    #[must_use]
    pub fn in_whole(share: ShareRange, tenths: u64) -> Self {
        Self::with_typical(share, from_units(i64::try_from(tenths).unwrap_or(i64::MAX), 1))
    }

    fn with_typical(share: ShareRange, typical: String) -> Self {
        // One decimal, as the words beside it have: on a phone that is a third of a pixel.
        let length = |share: f64| format!("{}%", short(share * 100.0, 1));
        let bar = Bar { low: length(share.low), high: length(share.high), typical: length(share.typical) };
        Self { low: percent(share.low), typical, high: percent(share.high), range: percent_range(share.low, share.high), bar }
    }
}

/// A weight at the worked start, in the unit of tables with two decimals.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Weight {
    /// The least: `0.34`.
    pub low: String,
    /// The typical value.
    pub typical: String,
    /// The greatest.
    pub high: String,
    /// Both ends with their unit, small ones in grams or ounces: `0.34–0.49 kg`.
    pub range: String,
    /// The next digits of low, typical and high, two each, for a script that works them at another start weight: see
    /// `next_digits`.
    pub next: String,
}

impl Weight {
    /// Of a share of the start.
    #[must_use]
    pub fn of(share: ShareRange, worked: Worked) -> Self {
        Self::with_typical(share, worked, units(worked.in_unit() * share.typical, 2))
    }

    /// Likewise, the typical value given in hundredths of the unit, so that a printed column adds up.
    #[must_use]
    pub fn in_whole(share: ShareRange, worked: Worked, hundredths: u64) -> Self {
        Self::with_typical(share, worked, i64::try_from(hundredths).unwrap_or(i64::MAX))
    }

    fn with_typical(share: ShareRange, worked: Worked, typical: i64) -> Self {
        let kilograms = share.map(|share| share * worked.kilograms);
        let exact = share.map(|share| share * worked.in_unit() * 100.0);
        let bound = |exact: f64| next_digits(exact - units(exact, 0) as f64, 0.5);
        Self {
            low: worked.scale.cell(kilograms.low),
            typical: from_units(typical, 2),
            high: worked.scale.cell(kilograms.high),
            range: worked.scale.between(kilograms.low, kilograms.high),
            next: format!("{}{}{}", bound(exact.low), next_digits(exact.typical - typical as f64, 1.0), bound(exact.high)),
        }
    }
}

/// What a printed number leaves over, as two digits: `00` for a whole `reach` below it, `50` for nothing, `99` for nearly
/// a whole `reach` above it. Both are in units of the last printed digit. A number printed by itself leaves over half a
/// unit at most, one that was rounded inside its whole a unit.
fn next_digits(over: f64, reach: f64) -> String {
    // The middle of each of the hundred stretches is meant, so that no number read back is printed differently.
    format!("{:02}", (((over / reach + 1.0) * 50.0).floor() as i64).clamp(0, 99))
}

/// A share of the start, in percent and by weight.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Figure {
    /// In percent of the start.
    pub of_start: Percent,
    /// By weight at the worked start.
    pub weight: Weight,
}

impl Figure {
    /// A share by itself, rounded like any number.
    #[must_use]
    pub fn of(share: ShareRange, worked: Worked) -> Self {
        Self { of_start: Percent::of(share), weight: Weight::of(share, worked) }
    }

    /// A share inside a printed whole.
    #[must_use]
    pub fn in_whole(share: ShareRange, worked: Worked, rounded: Rounded) -> Self {
        Self { of_start: Percent::in_whole(share, rounded.tenths), weight: Weight::in_whole(share, worked, rounded.hundredths) }
    }
}

/// A typical value rounded inside its whole: tenths of a percent, and hundredths of the unit of weight.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Rounded {
    /// Tenths of a percent.
    pub tenths: u64,
    /// Hundredths of a kilogram or pound.
    pub hundredths: u64,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::words::Units;

    #[test]
    fn a_share_is_printed_in_percent_and_by_weight() {
        let worked = Worked { kilograms: 7.5, scale: Scale(Units::Metric) };
        let figure = Figure::of(ShareRange { low: 0.045, typical: 0.055, high: 0.065 }, worked);
        assert_eq!(figure.of_start.range, "4.5\u{2013}6.5\u{a0}%");
        assert_eq!(figure.of_start.typical, "5.5");
        assert_eq!(figure.weight.range, "0.34\u{2013}0.49\u{a0}kg");
        // 0.3375, 0.4125 and 0.4875 kg are printed 0.34, 0.41 and 0.49.
        assert_eq!((figure.weight.typical.as_str(), figure.weight.next.as_str()), ("0.41", "256225"));
        assert_eq!(next_digits(-2.0, 1.0) + &next_digits(0.0, 1.0) + &next_digits(0.4999, 0.5), "005099");
        assert_eq!(figure.of_start.bar, Bar { low: "4.5%".into(), high: "6.5%".into(), typical: "5.5%".into() });
    }
}
