//! The spellings of the trade: `6.5–8.0 kg`, `18 lb 10 oz`, `-20 to -18 °C`, `31–35 %`, `0.05–0.07`.
//!
//! Each function takes the text as it stands and answers with a value, or with a `Slip` that says what is
//! wrong and what to type instead. The caller knows the place. All arithmetic is on whole numbers.

mod number;
mod slip;

pub use number::{Number, ends, number};
pub use slip::{Slip, SlipKind};

use super::measures::{Length, LengthUnit, Minutes, Temperature, TemperatureUnit};
use super::{Mass, MassUnit, Range, Share};

/// Units of weight by their spelling.
const MASS_UNITS: &[(&str, MassUnit)] =
    &[("kg", MassUnit::Kilogram), ("g", MassUnit::Gram), ("lb", MassUnit::Pound), ("oz", MassUnit::Ounce)];
/// Units of temperature by their spelling.
const TEMPERATURE_UNITS: &[(&str, TemperatureUnit)] = &[
    ("\u{b0}C", TemperatureUnit::Celsius),
    ("\u{b0}F", TemperatureUnit::Fahrenheit),
    ("C", TemperatureUnit::Celsius),
    ("F", TemperatureUnit::Fahrenheit),
];
/// Units of length by their spelling.
const LENGTH_UNITS: &[(&str, LengthUnit)] = &[("mm", LengthUnit::Millimetre), ("cm", LengthUnit::Centimetre), ("in", LengthUnit::Inch)];

/// A number and what stands behind it.
struct Part<'a> {
    number: Number,
    unit: &'a str,
}

/// Splits `12.5 kg` into its number and the rest, which may be empty.
fn part(text: &str) -> Result<Part<'_>, Slip> {
    let text = text.trim();
    let (number, rest) = number(text)?;
    Ok(Part { number, unit: rest.trim() })
}

/// A comma between digits is told for the whole text, so that the help can name all of what to write.
fn no_comma(text: &str) -> Result<(), Slip> {
    let digit = |byte: Option<&u8>| byte.is_some_and(u8::is_ascii_digit);
    let comma = text.as_bytes().windows(3).any(|three| three.get(1) == Some(&b',') && digit(three.first()) && digit(three.last()));
    if comma { Err(Slip::decimal_comma(text)) } else { Ok(()) }
}

/// A weight or a range of weights.
///
/// # Errors
/// A slip when the unit is missing or unknown, a number is malformed, or the range is upside down.
pub fn mass(text: &str) -> Result<Range<Mass>, Slip> {
    no_comma(text)?;
    let (low, high) = ends(text);
    let Some(high) = high else {
        return one_mass(low, None, text).map(Range::single);
    };
    let high_mass = one_mass(high, None, text)?;
    let low_mass = one_mass(low, Some(high_mass.unit()), text)?;
    ordered(low_mass, high_mass, low, high)
}

/// One weight; `outer` is the unit stated at the other end of a range, `whole` the text that a slip shows.
fn one_mass(text: &str, outer: Option<MassUnit>, whole: &str) -> Result<Mass, Slip> {
    let first = part(text)?;
    if let Some((pounds, ounces)) = first.unit.strip_prefix("lb").and_then(|rest| Some((&first, rest.trim().strip_suffix("oz")?))) {
        let ounces = part(ounces)?;
        if ounces.unit.is_empty() {
            let total =
                scaled(pounds.number, MassUnit::Pound.picograms(), text)? + scaled(ounces.number, MassUnit::Ounce.picograms(), text)?;
            return positive(total, MassUnit::Pound, text);
        }
    }
    let unit = unit_of(first.unit, MASS_UNITS, outer, whole, "a weight", "kg, g, lb or oz")?;
    positive(scaled(first.number, unit.picograms(), text)?, unit, text)
}

fn positive(picograms: i128, unit: MassUnit, text: &str) -> Result<Mass, Slip> {
    if picograms < 0 {
        return Err(Slip::new(SlipKind::OutOfBounds, format!("a weight below nothing: `{}`", text.trim()), "Write a weight of 0 or more."));
    }
    Ok(Mass::from_picograms(picograms, unit))
}

/// A temperature or a range of temperatures.
///
/// # Errors
/// A slip when the unit is missing or unknown, a number is malformed, or the range is upside down.
pub fn temperature(text: &str) -> Result<Range<Temperature>, Slip> {
    no_comma(text)?;
    let one = |end: &str, outer| {
        let part = part(end)?;
        let unit = unit_of(part.unit, TEMPERATURE_UNITS, outer, text, "a temperature", "\u{b0}C or \u{b0}F")?;
        let thousandths = i64::try_from(scaled(part.number, 1_000, end)?).map_err(|_| Slip::too_large(end))?;
        Ok(Temperature::from_thousandths(thousandths, unit))
    };
    let (low, high) = ends(text);
    let Some(high) = high else {
        return one(low, None).map(Range::single);
    };
    let high_value = one(high, None)?;
    let low_value = one(low, Some(high_value.unit()))?;
    ordered(low_value, high_value, low, high)
}

/// A length or a range of lengths.
///
/// # Errors
/// A slip when the unit is missing or unknown, a number is malformed, or the range is upside down.
pub fn length(text: &str) -> Result<Range<Length>, Slip> {
    no_comma(text)?;
    let one = |end: &str, outer: Option<LengthUnit>| {
        let part = part(end)?;
        let unit = unit_of(part.unit, LENGTH_UNITS, outer, text, "a length", "mm, cm or in")?;
        let nanometres = i64::try_from(scaled(part.number, i128::from(unit.nanometres()), end)?).map_err(|_| Slip::too_large(end))?;
        Ok(Length { nanometres, unit })
    };
    let (low, high) = ends(text);
    let Some(high) = high else {
        return one(low, None).map(Range::single);
    };
    let high_value = one(high, None)?;
    let low_value = one(low, Some(high_value.unit))?;
    if low_value.nanometres > high_value.nanometres {
        return Err(Slip::inverted(low, high));
    }
    Ok(Range { low: low_value, high: high_value })
}

/// Minutes or a range of minutes; they have no unit.
///
/// # Errors
/// A slip when a unit is written, a number is malformed or negative, or the range is upside down.
pub fn minutes(text: &str) -> Result<Range<Minutes>, Slip> {
    no_comma(text)?;
    let (low, high) = ends(text);
    let one = |text: &str| {
        let part = part(text)?;
        if !part.unit.is_empty() {
            let message = format!("minutes have no unit, but `{}` stands here", part.unit);
            return Err(Slip::new(SlipKind::UnitUnexpected, message, format!("Write `{}`.", range_digits(low, high))));
        }
        let thousandths = i64::try_from(scaled(part.number, 1_000, text)?).map_err(|_| Slip::too_large(text))?;
        if thousandths < 0 {
            return Err(Slip::new(SlipKind::OutOfBounds, format!("minutes below nothing: `{}`", text.trim()), "Write 0 or more."));
        }
        Ok(Minutes(thousandths))
    };
    let Some(high) = high else {
        return one(low).map(Range::single);
    };
    // A unit after the second number is the one to tell, so the second is read first.
    let high_value = one(high)?;
    ordered(one(low)?, high_value, low, high)
}

/// A share or a range of shares: percentages with a sign, or decimals below 1.
///
/// # Errors
/// A slip when a number is at home in neither reading (`1`, `28`), lies outside 0 to 100 %, or the range
/// is upside down.
pub fn share(text: &str) -> Result<Range<Share>, Slip> {
    no_comma(text)?;
    let (low, high) = ends(text);
    let high_text = high.unwrap_or(low);
    let last = part(high_text)?;
    let first = part(low)?;
    let percent = match (first.unit, last.unit) {
        ("%", "%") => true,
        ("", "%") => true,
        ("", "") => false,
        ("%", "") => return Err(Slip::percent_missing(low, high_text)),
        (unit, other) => {
            let wrong = if unit == "%" || unit.is_empty() { other } else { unit };
            let message = format!("a share is written in percent, but `{wrong}` stands here");
            return Err(Slip::new(SlipKind::UnitUnexpected, message, format!("Write `{} %`.", range_digits(low, high))));
        }
    };
    let billionths = |number: Number, text: &str| -> Result<i64, Slip> {
        let scale = if percent { 10_000_000 } else { 1_000_000_000 };
        i64::try_from(scaled(number, scale, text)?).map_err(|_| Slip::too_large(text))
    };
    let (low_value, high_value) = (billionths(first.number, low)?, billionths(last.number, high_text)?);
    let whole = Share::WHOLE.billionths();
    if !percent && (low_value >= whole || high_value >= whole) {
        return Err(Slip::two_readings(low, high, first.number, last.number));
    }
    for (value, text) in [(low_value, low), (high_value, high_text)] {
        if value < 0 || value > whole {
            let side = if value < 0 { "below 0 %" } else { "above 100 %" };
            let message = format!("a share {side}: `{}`", text.trim());
            return Err(Slip::new(SlipKind::OutOfBounds, message, "Write a share between 0 % and 100 % of what the step takes."));
        }
    }
    ordered(Share::from_billionths(low_value), Share::from_billionths(high_value), low, high_text)
}

/// Whole numbers or a range of them.
///
/// # Errors
/// A slip when a number is not whole, is negative, carries a unit, or the range is upside down.
pub fn whole(text: &str) -> Result<Range<u32>, Slip> {
    let one = |text: &str| {
        let text = text.trim();
        text.parse::<u32>().map_err(|_| {
            Slip::new(SlipKind::Malformed, format!("expected a whole number, found `{text}`"), "Write a whole number, such as `2`.")
        })
    };
    let (low, high) = ends(text);
    let Some(high) = high else {
        return one(low).map(Range::single);
    };
    ordered(one(low)?, one(high)?, low, high)
}

/// An amount of money: a number of at most six decimals, and what stands behind the `/`.
///
/// # Errors
/// A slip when there is no `/`, or the number is malformed or negative.
pub fn money(text: &str) -> Result<(i64, &str), Slip> {
    no_comma(text)?;
    let malformed =
        || Slip::new(SlipKind::Malformed, format!("expected an amount for a unit, found `{}`", text.trim()), "Write it as `3.40 / kg`.");
    let (amount, per) = text.split_once('/').ok_or_else(malformed)?;
    let amount = part(amount)?;
    if !amount.unit.is_empty() {
        return Err(malformed());
    }
    let millionths = i64::try_from(scaled(amount.number, 1_000_000, text)?).map_err(|_| Slip::too_large(text))?;
    if millionths < 0 {
        return Err(Slip::new(SlipKind::OutOfBounds, format!("a price below nothing: `{}`", text.trim()), "Write an amount of 0 or more."));
    }
    Ok((millionths, per.trim()))
}

/// The number times `unit`, which must come out whole.
fn scaled(number: Number, unit: i128, text: &str) -> Result<i128, Slip> {
    number.times(unit).ok_or_else(|| Slip::too_fine(text))
}

fn ordered<T: Copy + PartialOrd>(low: T, high: T, low_text: &str, high_text: &str) -> Result<Range<T>, Slip> {
    Range::new(low, high).ok_or_else(|| Slip::inverted(low_text, high_text))
}

fn unit_of<T: Copy>(unit: &str, known: &[(&str, T)], outer: Option<T>, text: &str, what: &str, choice: &str) -> Result<T, Slip> {
    if let Some((_, found)) = known.iter().find(|(spelling, _)| *spelling == unit) {
        return Ok(*found);
    }
    if unit.is_empty() {
        return outer.ok_or_else(|| Slip::unit_missing(text, what, choice));
    }
    Err(Slip::unit_wrong(text, unit, what, choice))
}

/// `5–7` of `5–7 g`, for a suggestion.
fn range_digits(low: &str, high: Option<&str>) -> String {
    let digits = |text: &str| number(text.trim()).map_or_else(|_| text.trim().to_owned(), |(number, _)| number.to_string());
    high.map_or_else(|| digits(low), |high| format!("{}\u{2013}{}", digits(low), digits(high)))
}

#[cfg(test)]
mod tests;
