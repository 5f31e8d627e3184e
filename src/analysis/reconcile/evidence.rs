//! How well a table agrees with itself, as a likelihood: each sum and each share that follows from its weight speaks for
//! the figures in it, each that does not speaks against them.
//!
//! It only weighs; what may be wrong is thought up in `suspects`. The constants are own judgement: they rank
//! explanations and never decide whether a table closes.

use super::base::{Base, pairs};
use super::decimal::Decimal;
use super::figure::Figure;
use super::sheet::Sheet;
use super::sums::{Plan, Stated, Sum};

/// How often the rows of a sound table add up without any miss.
const EXACT: f64 = 0.6;
/// How often what is missing is simply in no row.
const UNLISTED: f64 = 0.3;
/// How often rows come to more than they should for a reason that no single slip explains.
const SURPLUS: f64 = 0.1;
/// How often a share does not follow from its weight for no reason that can be told.
const STRAY_SHARE: f64 = 0.03;
/// How often shares were worked from the weights as they were misprinted, and so agree with the slip.
const WORKED_FROM_SLIP: f64 = 0.35;

/// A sum in floating point, with what rounding does to it as a rule.
#[derive(Debug, Clone)]
pub(super) struct Weighed {
    /// Which rows.
    pub(super) plan: Plan,
    /// The rows less what is stated, exactly.
    pub(super) exact_miss: Decimal,
    /// The rows less what is stated.
    pub(super) miss: f64,
    /// What is stated.
    pub(super) stated: f64,
    /// What the rows come to.
    pub(super) found: f64,
    /// True when it closes.
    pub(super) closes: bool,
    bound: f64,
    /// The standard deviation of the miss when each figure is rounded by itself.
    spread: f64,
    /// The worth of the finest last digit.
    finest: f64,
    /// The worth of the last digit of what is stated.
    stated_step: f64,
}

impl Weighed {
    /// The sum as the figures stand; none when there is nothing to add up.
    pub(super) fn of(plan: &Plan, sheet: &Sheet) -> Option<Self> {
        let sum: Sum = plan.sum(sheet)?;
        let steps = || plan.members.iter().filter_map(|row| sheet.figure(*row, plan.column)).map(|figure| figure.step.float());
        let finest = steps().fold(f64::INFINITY, f64::min);
        let stated_step = match plan.stated {
            Stated::Row(row) => sheet.figure(row, plan.column)?.step.float(),
            Stated::Whole => finest,
        };
        let squares: f64 = steps().chain([stated_step]).map(|step| step * step).sum();
        Some(Self {
            plan: plan.clone(),
            exact_miss: sum.miss,
            miss: sum.miss.float(),
            stated: sum.stated.float(),
            found: sum.found.float(),
            closes: sum.closes(),
            bound: sum.bound.float(),
            spread: (squares / 12.0).sqrt(),
            finest: finest.min(stated_step),
            stated_step,
        })
    }

    /// The logarithm of how likely a miss is.
    pub(super) fn log(&self, miss: f64) -> f64 {
        if miss.abs() > self.bound + self.finest * 1e-6 {
            let odds = if miss < 0.0 { UNLISTED } else { SURPLUS };
            return (odds * self.one_of_many()).ln();
        }
        let by_rounding = (self.finest / self.spread * 0.4 * (-0.5 * (miss / self.spread).powi(2)).exp()).min(1.0);
        let edge = (self.stated_step - self.finest) / 2.0 + self.finest * 1e-6;
        let exact = if miss.abs() <= edge { self.finest / self.stated_step } else { 0.0 };
        (EXACT * exact + (1.0 - EXACT) * by_rounding).ln()
    }

    /// The chance of one certain miss among all that could be.
    pub(super) fn one_of_many(&self) -> f64 {
        (self.finest / self.stated.abs().max(self.found.abs())).min(1.0)
    }

    /// True when this miss would close.
    pub(super) fn allows(&self, miss: f64) -> bool {
        miss.abs() <= self.bound + self.finest * 1e-6
    }

    /// The miss after the figure in `row` became larger by `change`.
    pub(super) fn after(&self, row: usize, change: f64) -> f64 {
        if self.plan.stated == Stated::Row(row) { self.miss - change } else { self.miss + change }
    }
}

/// Shares held against weights.
#[derive(Debug, Clone)]
pub(super) struct Shares {
    /// What they are shares of.
    pub(super) base: Base,
    /// The largest share of the column.
    largest: f64,
}

impl Shares {
    pub(super) fn new(base: Base, sheet: &Sheet) -> Self {
        let largest = pairs(sheet).map(|(_, _, share)| share.value.float().abs()).fold(1.0, f64::max);
        Self { base, largest }
    }

    /// The logarithm of how likely it is that a share stands beside a weight.
    pub(super) fn log(&self, weight: &Figure, share: &Figure, base: &Base) -> f64 {
        if base.fits(weight, share) {
            return (1.0 - STRAY_SHARE).ln();
        }
        (STRAY_SHARE * (share.step.float() / self.largest).min(1.0)).ln()
    }

    /// What all shares together say to another weight: `change` is what each of them says, added up. They may have been
    /// worked from the misprinted weight, so that they speak against its correction only so far.
    pub(super) fn heard(change: f64) -> f64 {
        change.max(WORKED_FROM_SLIP.ln())
    }
}

#[cfg(test)]
mod tests {
    use super::super::sums::plans;
    use super::super::testing::sheet;
    use super::*;

    #[test]
    fn a_smaller_miss_is_likelier_and_one_beyond_rounding_hardly() {
        let sheet = sheet("item,weight,kind\nA,30.4,\nB,2.4,\nC,6.2,\nAll,39.0,total");
        let sum = Weighed::of(&plans(&sheet)[0], &sheet).unwrap();
        let logs = [0.0, 0.1, 0.2, 0.3].map(|miss| sum.log(miss));
        assert!(logs.windows(2).all(|pair| pair[0] > pair[1]), "{logs:?}");
        assert!(sum.allows(0.2) && !sum.allows(0.3));
        assert!(sum.log(-5.0) > sum.log(5.0));
    }

    #[test]
    fn a_total_printed_more_coarsely_may_miss_by_half_of_its_digit() {
        let sheet = sheet("item,weight,kind\nA,100.1,\nB,84.1,\nAll,184,total");
        let sum = Weighed::of(&plans(&sheet)[0], &sheet).unwrap();
        assert!(sum.closes);
        assert!(sum.log(0.2) > sum.log(0.5));
    }
}
