//! What can be wrong with a written quantity, with the words for it.

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
        let mended = text.trim().replace(',', ".");
        Self::new(SlipKind::DecimalComma, format!("a decimal comma in `{}`", text.trim()), format!("Write a decimal point: `{mended}`."))
    }

    pub(super) fn inverted(low: &str, high: &str) -> Self {
        let (low, high) = (low.trim(), high.trim());
        // The unit stands at the second number, so only the digits change places.
        let digits_end = |text: &str| text.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | '-' | '\u{2212}')).unwrap_or(text.len());
        let (low_number, low_unit) = low.split_at(digits_end(low));
        let (high_number, high_unit) = high.split_at(digits_end(high));
        let mended = format!("{high_number}{low_unit}\u{2013}{low_number}{high_unit}");
        Self::new(SlipKind::Inverted, format!("the range is upside down: {low} is above {high}"), format!("Write `{mended}`."))
    }

    pub(super) fn two_readings(low: &str, high: Option<&str>) -> Self {
        let written = high.map_or_else(|| low.trim().to_owned(), |high| format!("{}\u{2013}{}", low.trim(), high.trim()));
        let decimal = |text: &str| text.trim().parse::<f64>().ok().map(|value| format!("{}", value / 100.0));
        let as_decimal = match (decimal(low), high.map(decimal)) {
            (Some(low), None) => low,
            (Some(low), Some(Some(high))) => format!("{low}\u{2013}{high}"),
            _ => String::new(),
        };
        let whole = written == "1";
        let help = if whole {
            "Write `1 %` for one part in a hundred, or `100 %` for all of it.".to_owned()
        } else {
            format!("Write `{written} %`, or `{as_decimal}` as a decimal.")
        };
        Self::new(SlipKind::TwoReadings, format!("`{written}` could be percent or a decimal share"), help)
    }

    pub(super) fn unit_missing(text: &str, what: &str, choice: &str) -> Self {
        let first = choice.split([',', ' ']).next().unwrap_or(choice);
        Self::new(SlipKind::UnitMissing, format!("{what} without a unit: `{}`", text.trim()), format!("Add {choice}, as in `{} {first}`.", text.trim()))
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
