//! Decimal numbers as they are written, kept exact.

use std::fmt;

use super::slip::{Slip, SlipKind};

/// A decimal number: `digits` times ten to the power of `-decimals`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Number {
    digits: i64,
    decimals: u32,
}

impl Number {
    /// The number times `unit`, when that is a whole number.
    pub fn times(self, unit: i128) -> Option<i128> {
        let product = i128::from(self.digits).checked_mul(unit)?;
        let divisor = 10_i128.checked_pow(self.decimals)?;
        (product % divisor == 0).then_some(product / divisor)
    }

    /// The number times ten to the power of `power`, in the fewest digits; `None` where they are too many.
    pub(super) fn shifted(self, power: i32) -> Option<Self> {
        let (mut digits, mut decimals) = (self.digits, i64::from(self.decimals) - i64::from(power));
        while decimals < 0 {
            (digits, decimals) = (digits.checked_mul(10)?, decimals + 1);
        }
        while decimals > 0 && digits % 10 == 0 {
            (digits, decimals) = (digits / 10, decimals - 1);
        }
        Some(Self { digits, decimals: u32::try_from(decimals).ok()? })
    }

    /// True when the number is greater than `whole`.
    pub(super) fn exceeds(self, whole: i64) -> bool {
        10_i128.checked_pow(self.decimals).is_none_or(|unit| i128::from(self.digits) > i128::from(whole) * unit)
    }

    /// True when the number is `whole` or greater.
    pub(super) fn reaches(self, whole: i64) -> bool {
        10_i128.checked_pow(self.decimals).is_none_or(|unit| i128::from(self.digits) >= i128::from(whole) * unit)
    }

    /// The number as a float, for points on a picture.
    pub fn float(self) -> f64 {
        self.digits as f64 / 10_f64.powi(i32::try_from(self.decimals).unwrap_or(0))
    }
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.digits < 0 { "-" } else { "" };
        let digits = format!("{:0width$}", self.digits.unsigned_abs(), width = self.decimals as usize + 1);
        let (whole, part) = digits.split_at(digits.len() - self.decimals as usize);
        if part.is_empty() { write!(f, "{sign}{whole}") } else { write!(f, "{sign}{whole}.{part}") }
    }
}

/// Reads the number that `text` begins with, and gives back what follows.
///
/// # Errors
/// A slip when no number stands there, or it has too many digits.
pub fn number(text: &str) -> Result<(Number, &str), Slip> {
    let (negative, unsigned) = match text.strip_prefix(['-', '\u{2212}', '\u{2013}']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let end = unsigned.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(unsigned.len());
    let (written, rest) = unsigned.split_at(end);
    let (whole, part) = written.split_once('.').unwrap_or((written, ""));
    if whole.is_empty() || part.contains('.') || (part.is_empty() && written.contains('.')) {
        return Err(Slip::new(
            SlipKind::Malformed,
            format!("expected a number, found `{}`", text.trim()),
            "Write a number, such as `2.5`.",
        ));
    }
    let part = part.trim_end_matches('0');
    let digits: i64 = format!("{whole}{part}").parse().map_err(|_| Slip::too_large(text))?;
    let decimals = u32::try_from(part.len()).unwrap_or(u32::MAX);
    Ok((Number { digits: if negative { -digits } else { digits }, decimals }, rest))
}

/// The two ends of a range, or the text alone when it holds one value.
///
/// A range has an en dash, a hyphen or `to` between its numbers; a hyphen that begins a number is its sign.
pub fn ends(text: &str) -> (&str, Option<&str>) {
    let text = text.trim();
    if let Some((low, high)) = text.split_once(" to ") {
        return (low, Some(high));
    }
    let mut seen_digit = false;
    for (at, character) in text.char_indices() {
        if character.is_ascii_digit() {
            seen_digit = true;
        } else if seen_digit && matches!(character, '-' | '\u{2013}' | '\u{2014}' | '\u{2212}') {
            let (low, rest) = text.split_at(at);
            let mut characters = rest.chars();
            characters.next();
            return (low, Some(characters.as_str()));
        }
    }
    (text, None)
}
