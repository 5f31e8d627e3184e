//! How numbers are printed: the one rounding rule of all pages.
//!
//! Rule: half a unit of the last printed digit rounds up. Percent have one decimal, kilograms and pounds two, grams
//! none, ounces one. A range uses an en dash, or `to` beside a minus sign; a no-break space parts number and unit.

/// Parts a number from its unit.
pub const NO_BREAK: char = '\u{a0}';

/// Noise of derived figures, in units of the last printed digit, that must not turn a half down.
const NOISE: f64 = 1e-7;

/// `value` in whole units of its last printed digit.
#[must_use]
pub fn units(value: f64, decimals: u32) -> i64 {
    let scaled = value * 10_f64.powi(i32::try_from(decimals).unwrap_or(0));
    (scaled + 0.5 + NOISE).floor() as i64
}

/// So many units of the last printed digit, with all its decimals: `450` at one decimal is `45.0`.
#[must_use]
pub fn from_units(units: i64, decimals: u32) -> String {
    let power = 10_u64.pow(decimals);
    let (whole, part) = (units.unsigned_abs() / power, units.unsigned_abs() % power);
    let sign = if units < 0 { "\u{2212}" } else { "" };
    let width = usize::try_from(decimals).unwrap_or(0);
    if decimals == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{part:0width$}") }
}

/// With all its decimals: `44.90` to two.
#[must_use]
pub fn fixed(value: f64, decimals: u32) -> String {
    from_units(units(value, decimals), decimals)
}

/// With as many decimals as it needs, `decimals` at most: `18`, `4.5`.
#[must_use]
pub fn short(value: f64, decimals: u32) -> String {
    needed(units(value, decimals), decimals).map_or_else(|| fixed(value, decimals), |decimals| fixed(value, decimals))
}

/// Both ends with the same number of decimals, as many as the longer needs: `1.6` and `2.0`, `6` and `9`.
#[must_use]
pub fn pair(low: f64, high: f64, decimals: u32) -> (String, String) {
    let at = |value| needed(units(value, decimals), decimals).unwrap_or(0);
    let places = at(low).max(at(high));
    // Nothing is nothing: a zero needs no decimals.
    let show = |value| if units(value, decimals) == 0 { "0".to_owned() } else { fixed(value, places) };
    (show(low), show(high))
}

/// `low–high`, the one value where both print alike, or `low to high` beside a minus sign.
#[must_use]
pub fn joined(low: &str, high: &str) -> String {
    if low == high {
        return low.to_owned();
    }
    let minus = low.starts_with('\u{2212}') || high.starts_with('\u{2212}');
    if minus { format!("{low} to {high}") } else { format!("{low}\u{2013}{high}") }
}

/// `low–high` with the fewest decimals that both need.
#[must_use]
pub fn range(low: f64, high: f64, decimals: u32) -> String {
    let (low, high) = pair(low, high, decimals);
    joined(&low, &high)
}

/// A fraction of 1 as percent with one decimal, without the sign: `44.9`.
#[must_use]
pub fn percent(share: f64) -> String {
    fixed(share * 100.0, 1)
}

/// Two fractions of 1 as one range with its sign: `4.5–6.5 %`.
#[must_use]
pub fn percent_range(low: f64, high: f64) -> String {
    format!("{}{NO_BREAK}%", range(low * 100.0, high * 100.0, 1))
}

/// A coordinate or a length of a drawing: two decimals at most, a hyphen for minus, as SVG wants it.
#[must_use]
pub fn coordinate(value: f64) -> String {
    let units = units(value, 2);
    let text = from_units(units, 2);
    text.trim_end_matches('0').trim_end_matches('.').replace('\u{2212}', "-")
}

/// How many decimals so many units need, when fewer than `decimals`.
fn needed(units: i64, decimals: u32) -> Option<u32> {
    let mut units = units;
    for left in (0..=decimals).rev() {
        if left == 0 || units % 10 != 0 {
            return Some(left);
        }
        units /= 10;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_unit_rounds_up() {
        assert_eq!(fixed(0.125, 2), "0.13");
        // 7.5 kg · 0.045 is 0.3375, which prints as 0.34.
        assert_eq!(fixed(7.5 * 0.045, 2), "0.34");
        // 1.005 has no exact binary form; it is meant as written.
        assert_eq!(fixed(1.005, 2), "1.01");
        assert_eq!(fixed(-0.25, 1), "\u{2212}0.2");
        assert_eq!(fixed(2.0, 0), "2");
    }

    #[test]
    fn both_ends_of_a_range_have_the_same_decimals() {
        assert_eq!(range(1.6, 2.0, 2), "1.6\u{2013}2.0");
        assert_eq!(range(6.0, 9.0, 2), "6\u{2013}9");
        assert_eq!(range(36.0, 46.0, 2), "36\u{2013}46");
        assert_eq!(range(0.5, 0.5, 2), "0.5");
        assert_eq!(range(-20.0, -18.0, 1), "\u{2212}20 to \u{2212}18");
    }

    #[test]
    fn percent_have_one_decimal_at_most() {
        assert_eq!(percent(0.449_251), "44.9");
        assert_eq!(percent_range(0.18, 0.23), "18\u{2013}23\u{a0}%");
        assert_eq!(percent_range(0.766, 0.818), "76.6\u{2013}81.8\u{a0}%");
        assert_eq!(percent_range(0.0, 0.0), "0\u{a0}%");
        assert_eq!(percent_range(0.0, 0.005), "0\u{2013}0.5\u{a0}%");
    }

    #[test]
    fn short_numbers_drop_needless_zeros() {
        assert_eq!(short(18.0, 1), "18");
        assert_eq!(short(4.5, 1), "4.5");
        assert_eq!(short(10.0, 2), "10");
        assert_eq!(coordinate(-3.10), "-3.1");
        assert_eq!(coordinate(0.0), "0");
    }
}
