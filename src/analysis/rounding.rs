//! Rounding for print: columns that add up, and fractions for machine-readable answers.

/// A fraction to nine decimals, as machine-readable answers give it.
#[must_use]
pub fn nine_decimals(value: f64) -> f64 {
    let rounded = (value * 1e9).round() / 1e9;
    // Minus zero would print a sign.
    if rounded == 0.0 { 0.0 } else { rounded }
}

/// Whole units for each value, in proportion, adding up to exactly `total` (largest remainder; the earlier
/// value first where remainders are equal to nine decimals).
///
/// Values are never negative; when they are all zero, everything stays zero and does not add up.
#[must_use]
pub fn apportion(values: &[f64], total: u64) -> Vec<u64> {
    let sum: f64 = values.iter().filter(|value| value.is_finite()).map(|value| value.max(0.0)).sum();
    if sum <= 0.0 {
        return vec![0; values.len()];
    }
    let mut rows: Vec<(usize, u64, i64)> = values
        .iter()
        .enumerate()
        .map(|(at, value)| {
            let exact = if value.is_finite() { value.max(0.0) / sum * total as f64 } else { 0.0 };
            // Noise in the last digits must not turn a whole number into the one below.
            let units = (exact + 1e-9).floor();
            (at, units as u64, ((exact - units) * 1e9).round() as i64)
        })
        .collect();
    rows.sort_by(|one, other| other.2.cmp(&one.2).then(one.0.cmp(&other.0)));
    let given: u64 = rows.iter().map(|(_, units, _)| *units).sum();
    let mut missing = total.saturating_sub(given);
    for (_, units, _) in &mut rows {
        if missing > 0 {
            *units += 1;
            missing -= 1;
        }
    }
    rows.sort_unstable_by_key(|(at, _, _)| *at);
    rows.into_iter().map(|(_, units, _)| units).collect()
}

/// Shares of a printed whole in tenths of a percent, adding up to exactly 1000.
#[must_use]
pub fn tenths_of_percent(shares: &[f64]) -> Vec<u64> {
    apportion(shares, 1000)
}

/// Weights of a printed whole in units of the last printed digit (0.01 kg for `unit` 0.01), adding up to the
/// start weight as printed to that digit.
#[must_use]
pub fn weights_in_units(shares: &[f64], start: f64, unit: f64) -> Vec<u64> {
    let total = (start / unit).round();
    apportion(shares, if total.is_finite() && total > 0.0 { total as u64 } else { 0 })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tenths_add_up_to_the_whole() {
        // Own judgement figures of a boned loin, as typical shares: plain rounding gives 99.9.
        let shares = [0.448_84, 0.100_94, 0.047_04, 0.138_04, 0.053_84, 0.040_84, 0.160_04, 0.010_42];
        let tenths = tenths_of_percent(&shares);
        assert_eq!(tenths.iter().sum::<u64>(), 1000);
        assert_eq!(tenths, [449, 101, 47, 138, 54, 41, 160, 10]);
        assert_eq!(tenths_of_percent(&[1.0 / 3.0; 3]), [334, 333, 333]);
        assert_eq!(tenths_of_percent(&[0.3, 0.7]), [300, 700]);
    }

    #[test]
    fn weights_add_up_to_the_start() {
        assert_eq!(weights_in_units(&[1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0], 7.5, 0.01), [250, 250, 250]);
        assert_eq!(weights_in_units(&[0.4488, 0.5512], 7.5, 0.01).iter().sum::<u64>(), 750);
    }

    #[test]
    fn odd_input_never_fails() {
        assert_eq!(apportion(&[], 1000), Vec::<u64>::new());
        assert_eq!(apportion(&[0.0, f64::NAN], 1000), [0, 0]);
        assert_eq!(weights_in_units(&[0.5], f64::NAN, 0.0), [0]);
        assert_eq!(nine_decimals(-0.000_000_000_04).to_string(), "0");
        assert_eq!(nine_decimals(0.1 + 0.2), 0.3);
    }
}
