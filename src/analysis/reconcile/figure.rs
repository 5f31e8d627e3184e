//! One figure of a table as it is printed: its exact value, its last digit, and the digits themselves.
//!
//! `12.50` and `12.5` are one value with different last digits. A slip of the pen is looked for among the digits, so they
//! are kept. Nothing here knows of rows or of sums.

use crate::model::quantity::MassUnit;

use super::decimal::Decimal;

/// Digits before the point, at most: ten million rows of such figures still add up exactly.
const MOST_WHOLE: usize = 9;
/// Digits behind the point, at most.
const MOST_DECIMALS: usize = 9;

/// A number as printed, with the factor that turns it into the unit of its column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Printed {
    /// All its digits, the point left out.
    pub digits: String,
    /// How many of them stand behind the point.
    pub decimals: u32,
    /// True for a number below zero.
    pub negative: bool,
    /// What one of it is in the unit of the column.
    pub factor: Decimal,
}

impl Printed {
    /// What these digits are worth in the unit of the column, with `decimals` of them behind the point.
    #[must_use]
    pub fn worth(&self, digits: &str, decimals: u32) -> Option<Decimal> {
        let number: i128 = digits.parse().ok()?;
        Some(Decimal::new(if self.negative { -number } else { number }, decimals).times(self.factor))
    }
}

/// A figure: one number, or pounds and ounces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// Its value in the unit of its column.
    pub value: Decimal,
    /// The worth of its last printed digit, in the unit of its column.
    pub step: Decimal,
    /// Its numbers: one, or pounds and ounces.
    pub printed: Vec<Printed>,
    /// The text of the cell.
    pub text: String,
}

impl Figure {
    /// The same figure with another value: its step stays, its digits are gone.
    #[must_use]
    pub fn corrected(&self, value: Decimal) -> Self {
        Self { value, step: self.step, printed: Vec::new(), text: value.to_string() }
    }
}

/// A figure before its column's unit is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Reading {
    parts: Vec<(Printed, Option<MassUnit>)>,
    text: String,
}

/// Why a cell is no figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FigureFault {
    /// A comma stands in the number: `12,5` or `1,150`.
    Comma,
    /// Two numbers, as in a range.
    Range,
    /// No number that can be read.
    NoNumber,
    /// What stands behind the number is no unit of this column.
    Unit,
    /// More digits than are kept exact.
    TooLong,
}

/// Reads a weight: a bare number, a number with its unit, or whole pounds and ounces.
///
/// # Errors
/// When the cell holds anything else.
pub(super) fn weight(text: &str) -> Result<Reading, FigureFault> {
    let (pounds, rest) = number(text)?;
    if rest.is_empty() {
        return Ok(Reading { parts: vec![(pounds, None)], text: text.to_owned() });
    }
    if let Some(after) = rest.strip_prefix("lb").map(str::trim_start).filter(|after| after.starts_with(|c: char| c.is_ascii_digit())) {
        let (ounces, unit) = number(after)?;
        if unit != "oz" || pounds.decimals > 0 {
            return Err(FigureFault::Unit);
        }
        let ounces = Printed { negative: pounds.negative, ..ounces };
        let parts = vec![(pounds, Some(MassUnit::Pound)), (ounces, Some(MassUnit::Ounce))];
        return Ok(Reading { parts, text: text.to_owned() });
    }
    let unit = match rest {
        "kg" => MassUnit::Kilogram,
        "g" => MassUnit::Gram,
        "lb" => MassUnit::Pound,
        "oz" => MassUnit::Ounce,
        _ => return Err(fault_of(rest)),
    };
    Ok(Reading { parts: vec![(pounds, Some(unit))], text: text.to_owned() })
}

/// Reads a share: a number of percent, with or without the sign.
///
/// # Errors
/// When the cell holds anything else.
pub(super) fn share(text: &str) -> Result<Reading, FigureFault> {
    match number(text)? {
        (printed, "" | "%") => Ok(Reading { parts: vec![(printed, None)], text: text.to_owned() }),
        (_, rest) => Err(fault_of(rest)),
    }
}

fn fault_of(rest: &str) -> FigureFault {
    let begins = |signs: &[char]| rest.trim_start_matches(signs).trim_start().starts_with(|c: char| c.is_ascii_digit());
    if rest.starts_with(',') && begins(&[',']) {
        FigureFault::Comma
    } else if rest.starts_with(['-', '\u{2013}', '\u{2014}']) && begins(&['-', '\u{2013}', '\u{2014}']) || rest.starts_with("to ") {
        FigureFault::Range
    } else {
        FigureFault::Unit
    }
}

/// The number that `text` begins with, and what follows it.
fn number(text: &str) -> Result<(Printed, &str), FigureFault> {
    let (negative, unsigned) = match text.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text),
    };
    let end = unsigned.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(unsigned.len());
    let (written, rest) = unsigned.split_at_checked(end).ok_or(FigureFault::NoNumber)?;
    let (whole, part) = written.split_once('.').unwrap_or((written, ""));
    if part.contains('.') || written.ends_with('.') || (whole.is_empty() && part.is_empty()) {
        return Err(FigureFault::NoNumber);
    }
    if whole.trim_start_matches('0').len() > MOST_WHOLE || part.len() > MOST_DECIMALS || whole.len() > 2 * MOST_WHOLE {
        return Err(FigureFault::TooLong);
    }
    let decimals = u32::try_from(part.len()).map_err(|_| FigureFault::TooLong)?;
    let whole = if whole.is_empty() { "0" } else { whole };
    Ok((Printed { digits: format!("{whole}{part}"), decimals, negative, factor: Decimal::new(1, 0) }, rest.trim()))
}

impl Reading {
    /// The units that stand in the cell; none for a bare number.
    pub(super) fn units(&self) -> impl Iterator<Item = MassUnit> {
        self.parts.iter().filter_map(|(_, unit)| *unit)
    }

    /// The text of the cell.
    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// True for whole ounces, alone or behind pounds.
    pub(super) fn is_to_the_ounce(&self) -> bool {
        self.parts.last().is_some_and(|(part, unit)| *unit == Some(MassUnit::Ounce) && part.decimals == 0)
    }

    /// True when a bare number stands in the cell.
    pub(super) fn is_bare(&self) -> bool {
        self.parts.iter().any(|(_, unit)| unit.is_none())
    }

    /// The figure in the column's unit. `to_the_ounce` says that the column is kept in whole pounds and ounces, where
    /// `4 lb` means four pounds and no ounces.
    pub(super) fn figure(self, unit: Option<MassUnit>, to_the_ounce: bool) -> Figure {
        let mut printed = Vec::with_capacity(self.parts.len());
        let mut value = Decimal::ZERO;
        let mut step = Decimal::ZERO;
        for (mut part, own) in self.parts {
            part.factor = factor(own, unit);
            let whole_pounds = own == Some(MassUnit::Pound) && part.decimals == 0;
            let last = if to_the_ounce && whole_pounds { factor(Some(MassUnit::Ounce), unit) } else { part.factor };
            step = Decimal::new(1, part.decimals).times(last);
            value = value + part.worth(&part.digits, part.decimals).unwrap_or_default();
            printed.push(part);
        }
        Figure { value, step, printed, text: self.text }
    }
}

/// What one `own` is in `unit`: exact, since a pound is exactly 0.45359237 kg and an ounce a sixteenth of it.
fn factor(own: Option<MassUnit>, unit: Option<MassUnit>) -> Decimal {
    match (own, unit) {
        (Some(MassUnit::Ounce), Some(MassUnit::Pound)) => Decimal::new(625, 4),
        (Some(own), Some(MassUnit::Kilogram)) => Decimal::new(own.picograms(), 15),
        _ => Decimal::new(1, 0),
    }
}

/// The unit in which a column with these units is added up.
pub(super) fn common_unit(units: impl Iterator<Item = MassUnit>) -> Option<MassUnit> {
    units.fold(None, |common, unit| match (common, unit) {
        (None, unit) => Some(unit),
        (Some(common), unit) if common == unit => Some(unit),
        (Some(MassUnit::Pound | MassUnit::Ounce), MassUnit::Pound | MassUnit::Ounce) => Some(MassUnit::Pound),
        _ => Some(MassUnit::Kilogram),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(text: &str) -> (String, String) {
        let reading = weight(text).unwrap();
        let unit = common_unit(reading.units());
        let figure = reading.figure(unit, false);
        (figure.value.to_string(), figure.step.to_string())
    }

    #[test]
    fn the_last_printed_digit_is_kept() {
        assert_eq!(told("45.0"), ("45".into(), "0.1".into()));
        assert_eq!(told("184"), ("184".into(), "1".into()));
        assert_eq!(told(".70"), ("0.7".into(), "0.01".into()));
        assert_eq!(told("-0.5"), ("-0.5".into(), "0.1".into()));
        assert_eq!(told("18 lb 10 oz"), ("18.625".into(), "0.0625".into()));
        assert_eq!(told("18lb 10.5oz"), ("18.65625".into(), "0.00625".into()));
        assert_eq!(told("2.250 kg"), ("2.25".into(), "0.001".into()));
    }

    #[test]
    fn a_column_has_one_unit() {
        use MassUnit::{Gram, Kilogram, Ounce, Pound};
        assert_eq!(common_unit([Ounce, Ounce].into_iter()), Some(Ounce));
        assert_eq!(common_unit([Ounce, Pound].into_iter()), Some(Pound));
        assert_eq!(common_unit([Gram, Kilogram].into_iter()), Some(Kilogram));
        assert_eq!(common_unit([Pound, Gram].into_iter()), Some(Kilogram));
        let figure = weight("1 lb").unwrap().figure(Some(Kilogram), false);
        assert_eq!(figure.value.to_string(), "0.45359237");
        let to_the_ounce = weight("4 lb").unwrap().figure(Some(Pound), true);
        assert_eq!(to_the_ounce.step.to_string(), "0.0625");
    }

    #[test]
    fn what_is_no_figure_is_told_apart() {
        assert_eq!(weight("12,5"), Err(FigureFault::Comma));
        assert_eq!(weight("1,150 lb"), Err(FigureFault::Comma));
        assert_eq!(weight("3\u{2013}4 kg"), Err(FigureFault::Range));
        assert_eq!(weight("3 to 4 kg"), Err(FigureFault::Range));
        assert_eq!(weight("3 stone"), Err(FigureFault::Unit));
        assert_eq!(weight("3.5 lb 4 oz"), Err(FigureFault::Unit));
        assert_eq!(weight("about 3"), Err(FigureFault::NoNumber));
        assert_eq!(weight("3."), Err(FigureFault::NoNumber));
        assert_eq!(weight("1234567890"), Err(FigureFault::TooLong));
        assert_eq!(share("24 lb"), Err(FigureFault::Unit));
        assert_eq!(share("24 %").unwrap().figure(None, false).value.to_string(), "24");
    }
}
