//! A decimal number, exact, as a table prints it: sums, misses and bounds of a table are made of these alone.
//!
//! It knows nothing of tables. Halves are exact too, so a bound of n·q/2 has no dust. Arithmetic saturates; the reader
//! of figures keeps them so short that it never comes to that.

use std::cmp::Ordering;
use std::fmt;
use std::ops::{Add, Neg, Sub};

/// `mantissa` times ten to the power of `-scale`, without trailing zeros, so that equal numbers are equal values.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Decimal {
    mantissa: i128,
    scale: u32,
}

impl Decimal {
    /// Nothing.
    pub const ZERO: Self = Self { mantissa: 0, scale: 0 };
    /// The whole, in percent.
    pub const HUNDRED: Self = Self { mantissa: 100, scale: 0 };

    /// `mantissa` times ten to the power of `-scale`.
    #[must_use]
    pub const fn new(mut mantissa: i128, mut scale: u32) -> Self {
        if mantissa == 0 {
            return Self::ZERO;
        }
        while scale > 0 && mantissa % 10 == 0 {
            mantissa /= 10;
            scale -= 1;
        }
        Self { mantissa, scale }
    }

    /// The nearest decimal with `scale` digits behind the point; half goes away from zero.
    #[must_use]
    pub fn near(value: f64, scale: u32) -> Self {
        Self::new((value * 10_f64.powi(i32::try_from(scale).unwrap_or(0))).round() as i128, scale)
    }

    /// How many digits stand behind the point.
    #[must_use]
    pub const fn decimals(self) -> u32 {
        self.scale
    }

    /// The number without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self { mantissa: self.mantissa.saturating_abs(), scale: self.scale }
    }

    /// Half of it, exactly.
    #[must_use]
    pub const fn half(self) -> Self {
        Self::new(self.mantissa.saturating_mul(5), self.scale.saturating_add(1))
    }

    /// The nearest multiple of `step`, half going away from zero; the number itself for a step of nothing.
    #[must_use]
    pub fn rounded_to(self, step: Self) -> Self {
        let scale = self.scale.max(step.scale);
        let (value, unit) = (self.at(scale), step.at(scale).abs());
        if unit == 0 {
            return self;
        }
        let steps = (value.abs() / unit) + i128::from(value.abs() % unit >= unit - unit / 2);
        Self::new(steps.saturating_mul(unit).saturating_mul(value.signum()), scale)
    }

    /// This times another.
    #[must_use]
    pub const fn times(self, other: Self) -> Self {
        Self::new(self.mantissa.saturating_mul(other.mantissa), self.scale.saturating_add(other.scale))
    }

    /// The nearest float: the one that prints as this number does.
    #[must_use]
    pub fn float(self) -> f64 {
        self.to_string().parse().unwrap_or(f64::NAN)
    }

    /// The number when it is whole.
    #[must_use]
    pub fn whole(self) -> Option<i64> {
        (self.scale == 0).then(|| i64::try_from(self.mantissa).ok()).flatten()
    }

    /// With `decimals` digits behind the point, zeros included, or all of them where it has more.
    #[must_use]
    pub fn padded(self, decimals: u32) -> String {
        let scale = decimals.max(self.scale);
        let digits = self.at(scale).unsigned_abs();
        let width = scale as usize + 1;
        let digits = format!("{digits:0width$}");
        let sign = if self.mantissa < 0 { "-" } else { "" };
        match digits.split_at_checked(digits.len().saturating_sub(scale as usize)) {
            Some((whole, part)) if !part.is_empty() => format!("{sign}{whole}.{part}"),
            _ => format!("{sign}{digits}"),
        }
    }

    /// The mantissa that the number has at a larger scale.
    const fn at(self, scale: u32) -> i128 {
        self.mantissa.saturating_mul(10_i128.saturating_pow(scale.saturating_sub(self.scale)))
    }
}

impl Add for Decimal {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        let scale = self.scale.max(other.scale);
        Self::new(self.at(scale).saturating_add(other.at(scale)), scale)
    }
}

impl Sub for Decimal {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Neg for Decimal {
    type Output = Self;

    fn neg(self) -> Self {
        Self { mantissa: self.mantissa.saturating_neg(), scale: self.scale }
    }
}

impl std::iter::Sum for Decimal {
    fn sum<I: Iterator<Item = Self>>(numbers: I) -> Self {
        numbers.fold(Self::ZERO, Add::add)
    }
}

impl PartialOrd for Decimal {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Decimal {
    fn cmp(&self, other: &Self) -> Ordering {
        let scale = self.scale.max(other.scale);
        self.at(scale).cmp(&other.at(scale))
    }
}

impl fmt::Display for Decimal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.padded(0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_of_tenths_have_no_dust() {
        let tenth = Decimal::new(1, 1);
        let sum = tenth + Decimal::new(20, 2);
        assert_eq!(sum, Decimal::new(3, 1));
        assert_eq!(sum.to_string(), "0.3");
        assert_eq!(sum.float().to_string(), "0.3");
        assert_eq!((Decimal::new(91, 0) - Decimal::HUNDRED).whole(), Some(-9));
        assert_eq!(sum.whole(), None);
    }

    #[test]
    fn halves_signs_and_order_are_exact() {
        assert_eq!(Decimal::new(7, 0).half().to_string(), "3.5");
        assert_eq!(Decimal::new(-5, 3).to_string(), "-0.005");
        assert_eq!(Decimal::new(-5, 3).abs(), Decimal::new(5, 3));
        assert!(Decimal::new(-5, 3) < Decimal::ZERO);
        assert!(Decimal::new(99, 2) < Decimal::new(1, 0));
        assert_eq!(Decimal::new(625, 4).times(Decimal::new(10, 0)).to_string(), "0.625");
        assert_eq!(Decimal::near(21.304, 1).to_string(), "21.3");
        assert_eq!(Decimal::new(45, 0).padded(1), "45.0");
        let rounded = |value, step| Decimal::new(value, 2).rounded_to(step).to_string();
        assert_eq!(rounded(56_870, Decimal::new(1, 0)), "569");
        assert_eq!(rounded(-1_250, Decimal::new(1, 0)), "-13");
        assert_eq!(rounded(1_249, Decimal::new(1, 0)), "12");
        assert_eq!(rounded(1_860, Decimal::new(625, 4)), "18.625");
    }

    #[test]
    fn the_largest_numbers_saturate() {
        let huge = Decimal::new(i128::MAX, 0);
        assert_eq!(huge + huge, huge);
        assert!(huge > Decimal::new(1, 30));
    }
}
