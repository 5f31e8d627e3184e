//! What can be wrong with a written quantity, with the words for it.

use super::number::Number;

/// The kinds of slip, each told by a check of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SlipKind {
    /// Not a number, or not in the shape that is asked for.
    Malformed,
    /// A comma where a decimal point belongs.
    DecimalComma,
    /// A weight, temperature or length without a unit.
    UnitMissing,
    /// A unit that does not measure this.
    UnitWrong,
    /// A unit where none belongs.
    UnitUnexpected,
    /// The low end is above the high end.
    Inverted,
    /// Below 0, or above 100 %.
    OutOfBounds,
    /// A share that could be percent or a decimal.
    TwoReadings,
    /// More digits than can be kept exact.
    Digits,
}

/// One slip: a headline phrase and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slip {
    /// Which.
    pub kind: SlipKind,
    /// The headline: a phrase.
    pub message: String,
    /// What to type instead.
    pub help: String,
}

impl Slip {
    /// A slip with these words.
    pub fn new(kind: SlipKind, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self { kind, message: message.into(), help: help.into() }
    }

    pub(super) fn too_large(text: &str) -> Self {
        Self::new(SlipKind::Digits, format!("more digits than a scale can show: `{}`", text.trim()), "Write fewer digits.")
    }

    pub(super) fn too_fine(text: &str) -> Self {
        Self::new(SlipKind::Digits, format!("more decimals than can be weighed: `{}`", text.trim()), "Round it to fewer decimals.")
    }

    pub(super) fn decimal_comma(text: &str) -> Self {
        let text = text.trim();
        let help = if parts_thousands(text) {
            format!("Write `{}` if it parts thousands, else a decimal point.", text.replace(',', ""))
        } else {
            format!("Write a decimal point: `{}`.", text.replace(',', "."))
        };
        Self::new(SlipKind::DecimalComma, format!("a decimal comma in `{text}`"), help)
    }

    pub(super) fn inverted(low: &str, high: &str) -> Self {
        let (low, high) = (low.trim(), high.trim());
        // The unit may stand at the second number alone; then only the digits change places.
        let digits_end = |text: &str| {
            text.char_indices()
                .find(|(at, c)| !(c.is_ascii_digit() || *c == '.' || (*at == 0 && matches!(c, '-' | '\u{2212}'))))
                .map_or(text.len(), |(at, _)| at)
        };
        let (low_number, low_unit) = low.split_at(digits_end(low));
        let (high_number, high_unit) = high.split_at(digits_end(high));
        let mended =
            if low_unit.is_empty() { format!("{high_number}\u{2013}{low_number}{high_unit}") } else { format!("{high}\u{2013}{low}") };
        Self::new(SlipKind::Inverted, format!("the range is upside down: {low} is above {high}"), format!("Write `{mended}`."))
    }

    /// A share without a percent sign that is no decimal below 1: `28`, `1`, `0.5–1`.
    pub(super) fn two_readings(low: &str, high: Option<&str>, first: Number, last: Number) -> Self {
        let join = |low: String, high: String| if high.is_empty() { low } else { format!("{low}\u{2013}{high}") };
        let written = join(low.trim().to_owned(), high.map_or_else(String::new, |high| high.trim().to_owned()));
        let shifted = |power: i32| {
            let text = |number: Number| number.shifted(power).map(|number| number.to_string());
            Some(join(text(first)?, if high.is_some() { text(last)? } else { String::new() }))
        };
        if first.exceeds(100) || last.exceeds(100) {
            return Self::new(SlipKind::OutOfBounds, format!("a share above the whole: `{written}`"), "Write a share of at most 100 %.");
        }
        let help = match (first.exceeds(1) || last.exceeds(1), shifted(-2), shifted(2)) {
            // Nothing above 1: it may be a decimal share that reaches the whole.
            (false, _, Some(hundredfold)) => format!("Write `{written} %`, or `{hundredfold} %`."),
            // As a decimal, 100 would be 1, which is refused as well.
            (true, Some(decimal), _) if !(first.reaches(100) || last.reaches(100)) => {
                format!("Write `{written} %`, or `{decimal}` as a decimal.")
            }
            _ => format!("Write `{written} %`."),
        };
        Self::new(SlipKind::TwoReadings, format!("`{written}` could be percent or a decimal share"), help)
    }

    pub(super) fn percent_missing(low: &str, high: &str) -> Self {
        let digits = low.trim().trim_end_matches('%').trim_end();
        let message = format!("a share without its percent sign: `{}`", high.trim());
        Self::new(SlipKind::UnitMissing, message, format!("Write `{digits}\u{2013}{} %`.", high.trim()))
    }

    pub(super) fn unit_missing(text: &str, what: &str, choice: &str) -> Self {
        let first = choice.split([',', ' ']).next().unwrap_or(choice);
        Self::new(
            SlipKind::UnitMissing,
            format!("{what} without a unit: `{}`", text.trim()),
            format!("Add {choice}, as in `{} {first}`.", text.trim()),
        )
    }

    pub(super) fn unit_wrong(text: &str, unit: &str, what: &str, choice: &str) -> Self {
        let lower = unit.to_lowercase();
        let near = match lower.as_str() {
            "kgs" | "kilo" | "kilos" | "kilogram" | "kilograms" => "kg",
            "gr" | "gram" | "grams" | "gm" => "g",
            "lbs" | "pound" | "pounds" | "#" => "lb",
            "ounce" | "ounces" => "oz",
            "kg" => "kg",
            "c" | "celsius" | "\u{ba}c" | "deg c" | "\u{b0}c" => "\u{b0}C",
            "f" | "fahrenheit" | "\u{ba}f" | "deg f" | "\u{b0}f" => "\u{b0}F",
            "inch" | "inches" | "\"" | "''" => "in",
            _ => "",
        };
        let help = if near.is_empty() {
            format!("Write {what} in {choice}.")
        } else {
            format!("Write `{near}`: `{}`.", text.trim().replace(unit, near))
        };
        Self::new(SlipKind::UnitWrong, format!("`{unit}` is no unit of {}", what.trim_start_matches("a ")), help)
    }
}

/// True for `1,200 g`: one to three digits that do not begin with a zero, a comma, then three digits and no more.
fn parts_thousands(text: &str) -> bool {
    text.match_indices(',').all(|(at, _)| {
        let before = text.get(..at).unwrap_or("");
        let head = before.get(before.rfind(|c: char| !c.is_ascii_digit()).map_or(0, |end| end + 1)..).unwrap_or("");
        let after = text.get(at + 1..).unwrap_or("");
        let tail = after.find(|c: char| !c.is_ascii_digit()).unwrap_or(after.len());
        (1..=3).contains(&head.len()) && !head.starts_with('0') && tail == 3
    })
}
