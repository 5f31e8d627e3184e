//! Distributions and digits for the checks of the statistics files, worked out from their definitions and from
//! nothing of the program, so that a printed figure and its test do not share a slip. No figure of a source stands here.

use std::f64::consts::{FRAC_1_SQRT_2, PI};

/// Natural logarithm of the gamma function at half a whole number, by its recursion from 1/2 or 1.
fn log_gamma_of_half(twice: u32) -> f64 {
    let (mut at, mut sum) = if twice % 2 == 1 { (0.5, PI.sqrt().ln()) } else { (1.0, 0.0) };
    while at < f64::from(twice) / 2.0 - 0.25 {
        sum += f64::ln(at);
        at += 1.0;
    }
    sum
}

/// Probability that chi-square with `degrees` of freedom stays below `x`, by the series of the incomplete gamma function.
pub(crate) fn chi_square_below(x: f64, degrees: u32) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    let (shape, half) = (f64::from(degrees) / 2.0, x / 2.0);
    let (mut term, mut sum, mut at) = (1.0, 1.0, shape);
    while term > sum * 1e-17 {
        at += 1.0;
        term *= half / at;
        sum += term;
    }
    (shape * half.ln() - half - log_gamma_of_half(degrees + 2)).exp() * sum
}

/// Where a rising function reaches `wanted`, between `low` and `high`.
fn reached(wanted: f64, mut low: f64, mut high: f64, rising: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..70 {
        let middle = f64::midpoint(low, high);
        if rising(middle) < wanted { low = middle } else { high = middle }
    }
    f64::midpoint(low, high)
}

/// The value that chi-square stays below with `probability`.
pub(crate) fn chi_square_quantile(probability: f64, degrees: u32) -> f64 {
    reached(probability, 0.0, 1000.0, |x| chi_square_below(x, degrees))
}

fn density(z: f64) -> f64 {
    (-z * z / 2.0).exp() * FRAC_1_SQRT_2 / PI.sqrt()
}

/// Probability that a standard normal stays below `z`: its square is chi-square with one degree of freedom.
pub(crate) fn normal_below(z: f64) -> f64 {
    let inside = if z.abs() > 9.0 { 1.0 } else { chi_square_below(z * z, 1) };
    f64::midpoint(1.0, inside.copysign(z))
}

/// The value that a standard normal stays below with `probability`.
pub(crate) fn normal_quantile(probability: f64) -> f64 {
    reached(probability, -9.0, 9.0, normal_below)
}

/// Simpson's rule over an even number of panels.
fn integral(low: f64, high: f64, mut function: impl FnMut(f64) -> f64) -> f64 {
    const PANELS: u32 = 600;
    let width = (high - low) / f64::from(PANELS);
    let weight = |at: u32| {
        if at == 0 || at == PANELS {
            1.0
        } else if at % 2 == 1 {
            4.0
        } else {
            2.0
        }
    };
    (0..=PANELS).map(|at| weight(at) * function(low + f64::from(at) * width)).sum::<f64>() * width / 3.0
}

/// How often mean ± k·s of `n` readings covers at least the share `coverage` of a normal population.
pub(crate) fn two_sided_confidence(n: u32, k: f64, coverage: f64) -> f64 {
    let mut reach = normal_quantile(f64::midpoint(1.0, coverage));
    2.0 * integral(0.0, 8.5, |u| {
        let off = u / f64::from(n).sqrt();
        // How far the limits must lie from a mean that is `off`; the last answer is a near first guess.
        for _ in 0..6 {
            let miss = normal_below(off + reach) - normal_below(off - reach) - coverage;
            reach -= miss / (density(off + reach) + density(off - reach));
        }
        density(u) * (1.0 - chi_square_below(f64::from(n - 1) * (reach / k).powi(2), n - 1))
    })
}

/// How often mean + k·s of `n` readings lies above the value that the share `coverage` of a normal population stays
/// below. With a coverage of one half it is Student's t: k·√n is then the t quantile of the answer.
pub(crate) fn one_sided_confidence(n: u32, k: f64, coverage: f64) -> f64 {
    let (limit, root) = (normal_quantile(coverage), f64::from(n).sqrt());
    // A mean above the limit covers whatever s is.
    let sure = limit * root;
    let rest = integral(-8.5, sure, |u| {
        let least = (limit - u / root) / k;
        density(u) * (1.0 - chi_square_below(f64::from(n - 1) * least * least, n - 1))
    });
    rest + 1.0 - normal_below(sure)
}

/// Howe's approximation of the two-sided factor from its two quantiles.
pub(crate) fn howe(n: f64, normal: f64, chi_square: f64) -> f64 {
    normal * ((n - 1.0) * (1.0 + 1.0 / n) / chi_square).sqrt()
}

/// Natrella's approximation of the one-sided factor from the normal quantiles of coverage and confidence.
pub(crate) fn natrella(n: f64, coverage: f64, confidence: f64) -> f64 {
    let a = 1.0 - confidence.powi(2) / (2.0 * (n - 1.0));
    let b = coverage.powi(2) - confidence.powi(2) / n;
    (coverage + (coverage.powi(2) - a * b).sqrt()) / a
}

/// The first `count` digits of pi, by Machin's formula in limbs of nine digits.
pub(crate) fn digits_of_pi(count: usize) -> Vec<f64> {
    const LIMB: i64 = 1_000_000_000;
    let mut total = vec![0_i64; count / 9 + 4];
    for (inverse, times) in [(5, 16), (239, -4)] {
        let mut power = vec![0_i64; total.len()];
        power[0] = 1;
        divide(&mut power, inverse);
        let (mut odd, mut sign) = (1, times);
        while power.iter().any(|limb| *limb != 0) {
            let mut term = power.clone();
            divide(&mut term, odd);
            for (sum, limb) in total.iter_mut().zip(&term) {
                *sum += sign * limb;
            }
            divide(&mut power, inverse * inverse);
            odd += 2;
            sign = -sign;
        }
    }
    let mut carry = 0;
    for limb in total.iter_mut().rev() {
        *limb += carry;
        carry = limb.div_euclid(LIMB);
        *limb = limb.rem_euclid(LIMB);
    }
    // What carries out of the first limb is nothing: the first limb is the 3 itself.
    let text: String = total.iter().enumerate().map(|(at, limb)| if at == 0 { limb.to_string() } else { format!("{limb:09}") }).collect();
    text.bytes().take(count).map(|digit| f64::from(digit - b'0')).collect()
}

fn divide(limbs: &mut [i64], by: i64) {
    let mut rest = 0;
    for limb in limbs {
        let value = rest * 1_000_000_000 + *limb;
        *limb = value / by;
        rest = value % by;
    }
}
