//! The typical shares of one step, as exact fractions.
//!
//! A given typical lies in its range; the others stand equally far up theirs, so that the step adds up to
//! the whole. Expects a step that is possible; says what does not work as data.

use crate::model::quantity::Share;

use super::step_balance::OutputBalance;

/// How far all-given typical shares may miss the whole: 0.0015, which is rounding to whole tenths of a percent.
const ROUNDING: Share = Share::from_billionths(1_500_000);

/// An exact fraction of what the step takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fraction {
    /// Above the line.
    pub numerator: i128,
    /// Under the line, above zero.
    pub denominator: i128,
}

impl Fraction {
    /// As a number, off by one last binary digit at most.
    #[must_use]
    pub fn number(self) -> f64 {
        self.numerator as f64 / self.denominator as f64
    }

    /// As a share, when it is a whole number of billionths.
    #[must_use]
    pub fn exact(self) -> Option<Share> {
        let scaled = self.numerator.checked_mul(i128::from(Share::WHOLE.billionths()))?;
        if scaled.checked_rem(self.denominator)? != 0 {
            return None;
        }
        i64::try_from(scaled.checked_div(self.denominator)?).ok().map(Share::from_billionths)
    }
}

/// By how much something misses a bound or a sum, and on which side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Miss {
    /// Above it, by so much.
    Over(Share),
    /// Below it, by so much.
    Under(Share),
}

impl Miss {
    /// The miss of `value` against `bound`; equal counts as over by nothing.
    fn of(value: Share, bound: Share) -> Self {
        if value < bound { Self::Under(bound - value) } else { Self::Over(value - bound) }
    }

    /// The amount, whatever the side.
    #[must_use]
    pub const fn amount(self) -> Share {
        match self {
            Self::Over(amount) | Self::Under(amount) => amount,
        }
    }
}

/// A given typical share outside its own range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Outside {
    /// The position in `StepBalance::outputs`.
    pub output: usize,
    /// What was given.
    pub given: Share,
    /// By how much it misses the nearer end.
    pub miss: Miss,
}

/// The typical shares of a step, or why there are none.
#[derive(Debug, Clone, PartialEq)]
pub enum Typicals {
    /// One for each output, in the order of `StepBalance::outputs`; they add up to exactly 1.
    Found(Vec<Fraction>),
    /// These lie outside their ranges.
    OutsideRange(Vec<Outside>),
    /// Beside the given ones, the others cannot make up the whole: the nearest sum misses it by so much.
    CannotAddUp(Miss),
    /// All were given, and their sum misses the whole by more than rounding explains.
    AllGivenMiss(Miss),
    /// The step is not possible, or a typical share could not be read.
    Unknown,
}

/// The typical shares beside each other. The step must be possible.
pub(super) fn typicals(outputs: &[OutputBalance]) -> Typicals {
    let outside: Vec<Outside> = outputs.iter().enumerate().filter_map(|(at, output)| outside(at, output)).collect();
    if !outside.is_empty() {
        return Typicals::OutsideRange(outside);
    }
    let given: Share = outputs.iter().filter_map(|output| output.given_typical).sum();
    if outputs.iter().all(is_settled) && outputs.iter().any(|output| output.given_typical.is_some()) {
        return all_given(outputs, given);
    }
    let open = || outputs.iter().filter(|output| output.given_typical.is_none());
    let low: Share = given + open().map(|output| output.stated.low).sum::<Share>();
    let width: Share = open().map(|output| output.stated.high - output.stated.low).sum();
    let need = Share::WHOLE - low;
    if need < Share::ZERO || need > width {
        let nearest = if need < Share::ZERO { low } else { low + width };
        return Typicals::CannotAddUp(Miss::of(nearest, Share::WHOLE));
    }
    let (need, width) = (i128::from(need.billionths()), i128::from(width.billionths()));
    Typicals::Found(outputs.iter().map(|output| between_ends(output, need, width)).collect())
}

/// Where a given typical lies outside its range.
fn outside(at: usize, output: &OutputBalance) -> Option<Outside> {
    let given = output.given_typical?;
    if output.stated.contains(given) {
        return None;
    }
    let bound = if given < output.stated.low { output.stated.low } else { output.stated.high };
    Some(Outside { output: at, given, miss: Miss::of(given, bound) })
}

/// Given by the author, or zero and nothing else: a loss left out does not ask for a typical share.
fn is_settled(output: &OutputBalance) -> bool {
    output.given_typical.is_some() || output.stated.high == Share::ZERO
}

/// All given: divided by their sum when that is the whole but for rounding.
fn all_given(outputs: &[OutputBalance], sum: Share) -> Typicals {
    let miss = Miss::of(sum, Share::WHOLE);
    if miss.amount() > ROUNDING {
        return Typicals::AllGivenMiss(miss);
    }
    let denominator = i128::from(sum.billionths());
    let fraction = |share: Share| Fraction { numerator: i128::from(share.billionths()), denominator };
    Typicals::Found(outputs.iter().map(|output| fraction(output.given_typical.unwrap_or_default())).collect())
}

/// The given value, or `low + need/width · (high − low)`, as an exact fraction of the whole.
fn between_ends(output: &OutputBalance, need: i128, width: i128) -> Fraction {
    let whole = i128::from(Share::WHOLE.billionths());
    if let Some(given) = output.given_typical {
        return Fraction { numerator: i128::from(given.billionths()), denominator: whole };
    }
    let low = i128::from(output.stated.low.billionths());
    if width == 0 {
        return Fraction { numerator: low, denominator: whole };
    }
    let span = i128::from((output.stated.high - output.stated.low).billionths());
    Fraction { numerator: low * width + need * span, denominator: whole * width }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::step_balance::StepBalance;
    use crate::analysis::testing::{percent, step};
    use crate::model::Stated;

    fn found(text: &str) -> Vec<Option<Share>> {
        match typicals_of(text) {
            Typicals::Found(fractions) => fractions.into_iter().map(Fraction::exact).collect(),
            other => panic!("{other:?}"),
        }
    }

    fn typicals_of(text: &str) -> Typicals {
        StepBalance::of(&step(text)).unwrap().typicals
    }

    fn share(text: &str) -> Option<Share> {
        Some(percent(text).low)
    }

    #[test]
    fn the_others_stand_equally_far_up_their_ranges() {
        // Lows add up to 0.9, highs to 1.1: halfway up.
        assert_eq!(found("a -> b 40-50 | c 50-60"), [share("45"), share("55"), share("0")]);
        // A given 48 leaves 52 for a range of 50 to 60 and a loss of 0 to 10: a tenth of the way up.
        assert_eq!(found("a -> b 40-50 ~48 | c 50-60 | loss 0-10"), [share("48"), share("51"), share("1")]);
        assert_eq!(found("a -> b 40-50 ~48 | c rest"), [share("48"), share("52"), share("0")]);
        assert_eq!(found("a -> b 30 | c 70"), [share("30"), share("70"), share("0")]);
    }

    #[test]
    fn thirds_stay_exact_fractions() {
        let Typicals::Found(fractions) = typicals_of("a -> b 0-100 | c 0-100 | d 0-100") else { panic!() };
        assert_eq!(fractions[0].exact(), None);
        assert_eq!(fractions[0].number(), 1.0 / 3.0);
    }

    #[test]
    fn all_given_may_miss_by_rounding_alone() {
        let Typicals::Found(fractions) = typicals_of("a -> b 40-50 ~44.9 | c 50-60 ~55") else { panic!() };
        assert_eq!(fractions[0], Fraction { numerator: 449_000_000, denominator: 999_000_000 });
        assert!(matches!(typicals_of("a -> b 40-50 ~44.85 | c 50-60 ~55"), Typicals::Found(_)));
        assert_eq!(typicals_of("a -> b 40-50 ~44.84 | c 50-60 ~55"), Typicals::AllGivenMiss(Miss::Under(percent("0.16").low)));
        assert_eq!(typicals_of("a -> b 40-50 ~45.2 | c 50-60 ~55 | loss 0"), Typicals::AllGivenMiss(Miss::Over(percent("0.2").low)));
    }

    #[test]
    fn says_what_does_not_work() {
        let outside = Outside { output: 0, given: percent("39").low, miss: Miss::Under(percent("1").low) };
        assert_eq!(typicals_of("a -> b 40-50 ~39 | c 50-60"), Typicals::OutsideRange(vec![outside]));
        assert_eq!(typicals_of("a -> b 60-75 ~74 | c 28-34 | loss 0-1"), Typicals::CannotAddUp(Miss::Over(percent("2").low)));
        assert_eq!(typicals_of("a -> b 60-75 ~61 | c 28-34 | loss 0-1"), Typicals::CannotAddUp(Miss::Under(percent("4").low)));
        assert_eq!(typicals_of("a -> b 60-75 | c 50-60 | loss 0-1"), Typicals::Unknown);
        let mut broken = step("a -> b 40-50 | c 50-60");
        broken.give[0].typical = Stated::Broken;
        assert_eq!(StepBalance::of(&broken).unwrap().typicals, Typicals::Unknown);
    }
}
