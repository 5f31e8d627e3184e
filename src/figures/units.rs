//! Quantities in the units of the guidebook: kilograms or pounds, degrees, lengths.
//!
//! A quantity that was written in the guidebook's own system is shown in the unit that the author chose; another is
//! converted. How many decimals each unit prints is said in `numbers`.

use crate::model::quantity::{Length, LengthUnit, Mass, MassUnit, Range, Temperature, TemperatureUnit};
use crate::model::words::Units;

use super::numbers::{NO_BREAK, fixed, joined, range, short};

/// Kilograms in a pound, exactly (format.md; the international yard and pound agreement of 1959).
pub const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;

/// The unit system in which figures are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Scale(pub Units);

impl Scale {
    /// The unit of table cells: `kg` or `lb`.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self.0 {
            Units::Metric => "kg",
            Units::Imperial => "lb",
        }
    }

    /// Kilograms as a number of that unit.
    #[must_use]
    pub fn of_kilograms(self, kilograms: f64) -> f64 {
        match self.0 {
            Units::Metric => kilograms,
            Units::Imperial => kilograms / KILOGRAMS_PER_POUND,
        }
    }

    /// A table cell, without unit: `0.34`.
    #[must_use]
    pub fn cell(self, kilograms: f64) -> String {
        fixed(self.of_kilograms(kilograms), 2)
    }

    /// Derived weights in words, small ones in the smaller unit: `0.34–0.49 kg`, `20–60 g`, `2.4–5.0 oz`.
    #[must_use]
    pub fn between(self, low: f64, high: f64) -> String {
        let (low, high) = (self.of_kilograms(low), self.of_kilograms(high));
        match self.0 {
            Units::Metric if high < 0.1 => format!("{}{NO_BREAK}g", joined(&fixed(low * 1000.0, 0), &fixed(high * 1000.0, 0))),
            Units::Imperial if high < 0.25 => format!("{}{NO_BREAK}oz", joined(&fixed(low * 16.0, 1), &fixed(high * 16.0, 1))),
            _ => format!("{}{NO_BREAK}{}", joined(&fixed(low, 2), &fixed(high, 2)), self.unit()),
        }
    }

    /// A stated range of weight.
    #[must_use]
    pub fn masses(self, masses: Range<Mass>) -> String {
        let unit = self.unit_for(masses);
        let number = |mass: Mass| mass.picograms() as f64 / unit.picograms() as f64;
        let decimals = match unit {
            MassUnit::Gram => 1,
            MassUnit::Ounce if masses.high.unit() == MassUnit::Ounce => 2,
            MassUnit::Ounce => 1,
            MassUnit::Kilogram | MassUnit::Pound => 2,
        };
        format!("{}{NO_BREAK}{}", range(number(masses.low), number(masses.high), decimals), unit.symbol())
    }

    /// A stated weight as a number of `unit()`, with as many decimals as it needs: `7.5`.
    #[must_use]
    pub fn number(self, mass: Mass) -> String {
        short(self.of_kilograms(mass.kilograms()), 2)
    }

    /// A stated range of temperature, in the scale of the unit system.
    #[must_use]
    pub fn temperatures(self, temperatures: Range<Temperature>) -> String {
        let (target, symbol) = match self.0 {
            Units::Metric => (TemperatureUnit::Celsius, "\u{b0}C"),
            Units::Imperial => (TemperatureUnit::Fahrenheit, "\u{b0}F"),
        };
        let number = |temperature: Temperature| {
            let own = temperature.thousandths() as f64 / 1000.0;
            match (temperature.unit(), target) {
                (TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit) => own * 9.0 / 5.0 + 32.0,
                (TemperatureUnit::Fahrenheit, TemperatureUnit::Celsius) => (own - 32.0) * 5.0 / 9.0,
                _ => own,
            }
        };
        format!("{}{NO_BREAK}{symbol}", range(number(temperatures.low), number(temperatures.high), 1))
    }

    /// A stated range of length.
    #[must_use]
    pub fn lengths(self, lengths: Range<Length>) -> String {
        let unit = match (self.0, lengths.high.unit) {
            (Units::Metric, LengthUnit::Inch) => LengthUnit::Millimetre,
            (Units::Imperial, LengthUnit::Millimetre | LengthUnit::Centimetre) => LengthUnit::Inch,
            (_, own) => own,
        };
        let number = |length: Length| length.nanometres as f64 / unit.nanometres() as f64;
        let decimals = if unit == LengthUnit::Inch { 2 } else { 1 };
        format!("{}{NO_BREAK}{}", range(number(lengths.low), number(lengths.high), decimals), unit.symbol())
    }

    /// The unit in which a stated weight is shown: its own where that is of this system.
    fn unit_for(self, masses: Range<Mass>) -> MassUnit {
        let large = masses.high.kilograms();
        match (self.0, masses.high.unit()) {
            (Units::Metric, MassUnit::Pound | MassUnit::Ounce) if large < 1.0 => MassUnit::Gram,
            (Units::Metric, MassUnit::Pound | MassUnit::Ounce) => MassUnit::Kilogram,
            (Units::Imperial, MassUnit::Kilogram | MassUnit::Gram) if large < KILOGRAMS_PER_POUND => MassUnit::Ounce,
            (Units::Imperial, MassUnit::Kilogram | MassUnit::Gram) => MassUnit::Pound,
            (_, own) => own,
        }
    }
}

/// A temperature in the scale in which it was not written, to one decimal at most: `44.6 °F` for 7 °C.
#[must_use]
pub fn other_scale(temperature: Temperature) -> String {
    let own = temperature.thousandths() as f64 / 1000.0;
    let (number, symbol) = match temperature.unit() {
        TemperatureUnit::Celsius => (own * 9.0 / 5.0 + 32.0, "\u{b0}F"),
        TemperatureUnit::Fahrenheit => ((own - 32.0) * 5.0 / 9.0, "\u{b0}C"),
    };
    format!("{}{NO_BREAK}{symbol}", short(number, 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::quantity::parse;

    const METRIC: Scale = Scale(Units::Metric);
    const IMPERIAL: Scale = Scale(Units::Imperial);

    fn masses(text: &str) -> Range<Mass> {
        parse::mass(text).unwrap()
    }

    #[test]
    fn a_weight_of_the_own_system_keeps_the_unit_of_the_author() {
        assert_eq!(METRIC.masses(masses("6.0–9.0 kg")), "6\u{2013}9\u{a0}kg");
        assert_eq!(METRIC.masses(masses("1.6–2.0 kg")), "1.6\u{2013}2.0\u{a0}kg");
        assert_eq!(METRIC.masses(masses("155–165 g")), "155\u{2013}165\u{a0}g");
        assert_eq!(IMPERIAL.masses(masses("14–18 lb")), "14\u{2013}18\u{a0}lb");
    }

    #[test]
    fn a_weight_of_the_other_system_is_converted() {
        // 14 lb is exactly 6.35029318 kg, 18 lb is 8.16466266 kg.
        assert_eq!(METRIC.masses(masses("14–18 lb")), "6.35\u{2013}8.16\u{a0}kg");
        // 6 kg is 13.2277 lb, 9 kg is 19.8416 lb.
        assert_eq!(IMPERIAL.masses(masses("6–9 kg")), "13.23\u{2013}19.84\u{a0}lb");
        // 180 g is 6.349 oz, 220 g is 7.760 oz.
        assert_eq!(IMPERIAL.masses(masses("180–220 g")), "6.3\u{2013}7.8\u{a0}oz");
    }

    #[test]
    fn small_derived_weights_use_the_small_unit() {
        assert_eq!(METRIC.between(0.3375, 0.4875), "0.34\u{2013}0.49\u{a0}kg");
        assert_eq!(METRIC.between(0.02, 0.06), "20\u{2013}60\u{a0}g");
        assert_eq!(METRIC.between(0.0, 0.0), "0\u{a0}g");
        assert_eq!(IMPERIAL.between(0.068, 0.1), "2.4\u{2013}3.5\u{a0}oz");
        assert_eq!(IMPERIAL.cell(KILOGRAMS_PER_POUND), "1.00");
    }

    /// Pairs that rules print or that follow from them: 5 °C is exactly 41 °F, 7 °C is 44.6 °F and not the 45 °F that
    /// stands beside it in print, 40 °F is 4.4 °C, −20 °C is −4 °F.
    #[test]
    fn a_limit_is_shown_in_the_other_scale() {
        for (written, other) in
            [("5 °C", "41 °F"), ("7 °C", "44.6 °F"), ("40 °F", "4.4 °C"), ("180 °F", "82.2 °C"), ("-20 °C", "\u{2212}4 °F")]
        {
            assert_eq!(other_scale(parse::temperature(written).unwrap().low), other.replace(' ', "\u{a0}"), "{written}");
        }
    }

    #[test]
    fn temperatures_follow_the_unit_system() {
        assert_eq!(METRIC.temperatures(parse::temperature("0–4 °C").unwrap()), "0\u{2013}4\u{a0}\u{b0}C");
        assert_eq!(IMPERIAL.temperatures(parse::temperature("0–4 °C").unwrap()), "32.0\u{2013}39.2\u{a0}\u{b0}F");
        assert_eq!(METRIC.temperatures(parse::temperature("-20 to -18 °C").unwrap()), "\u{2212}20 to \u{2212}18\u{a0}\u{b0}C");
    }
}
