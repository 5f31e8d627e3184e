//! One step's shares held against the whole, in exact decimals.
//!
//! What a step gives, loss included, weighs exactly what it takes. Everything here is whole numbers
//! (billionths), so that no sum is off by a rounding. It says what is wrong as data, never as text.

use crate::model::quantity::{Range, Share};
use crate::model::{Output, ShareSpec, Stated, Step};

use super::typicals::{Typicals, typicals};

/// Where an output of a step stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Slot {
    /// The output with this position in `Step::give`.
    Give(usize),
    /// The loss, stated or left out.
    Loss,
}

/// One output's share of what the step takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutputBalance {
    /// Which output.
    pub slot: Slot,
    /// The range as stated; `rest` is resolved, a loss left out is zero.
    pub stated: Range<Share>,
    /// True when the author wrote `rest`.
    pub is_rest: bool,
    /// The values that can occur; equal to `stated` when every one can, or when the step is not possible.
    pub tight: Range<Share>,
    /// The typical share that the author gave; none when left out or broken.
    pub given_typical: Option<Share>,
}

impl OutputBalance {
    /// Values from the stated low end up to, but without, the end of this range can never occur.
    #[must_use]
    pub fn never_low(&self) -> Option<Range<Share>> {
        (self.stated.low < self.tight.low).then_some(Range { low: self.stated.low, high: self.tight.low })
    }

    /// Values from, but without, the low end of this range up to the stated high end can never occur.
    #[must_use]
    pub fn never_high(&self) -> Option<Range<Share>> {
        (self.tight.high < self.stated.high).then_some(Range { low: self.tight.high, high: self.stated.high })
    }

    /// True when some stated value can never occur.
    #[must_use]
    pub fn is_loose(&self) -> bool {
        self.stated != self.tight
    }
}

/// How the stated ranges of a step compare with the whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whole {
    /// Σ low ≤ 1 ≤ Σ high.
    Possible,
    /// Even the low ends add up to more than the whole, by so much.
    Exceeds(Share),
    /// Even the high ends add up to less than the whole, by so much.
    FallsShort(Share),
    /// More than one output is `rest`, so that neither can be resolved.
    SeveralRests,
}

/// The balance of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct StepBalance {
    /// Each output in the order in which it stands, the loss last.
    pub outputs: Vec<OutputBalance>,
    /// How many outputs are `rest`.
    pub rests: usize,
    /// Sum of the low ends, `rest` left out.
    pub sum_low: Share,
    /// Sum of the high ends, `rest` left out.
    pub sum_high: Share,
    /// How the ranges compare with the whole.
    pub whole: Whole,
    /// The typical shares, or why there are none.
    pub typicals: Typicals,
}

impl StepBalance {
    /// The balance of a step, or `None` when a share of it could not be read, so that nothing can be said.
    ///
    /// What the step takes plays no part: its outputs are shares of that, whatever it is.
    #[must_use]
    pub fn of(step: &Step) -> Option<Self> {
        if !step.give_known || step.loss.is_broken() {
            return None;
        }
        let mut specs = Vec::with_capacity(step.give.len() + 1);
        for (at, output) in step.give.iter().enumerate() {
            specs.push((Slot::Give(at), read_share(output)?, Some(output)));
        }
        match &step.loss {
            Stated::Given(loss) => specs.push((Slot::Loss, read_share(&loss.value)?, Some(&loss.value))),
            Stated::Absent | Stated::Broken => {
                specs.push((Slot::Loss, ShareSpec::Between(Range::single(Share::ZERO)), None));
            }
        }
        let rests = specs.iter().filter(|(_, spec, _)| *spec == ShareSpec::Rest).count();
        let sum_low = specs.iter().filter_map(|(_, spec, _)| between(*spec)).map(|range| range.low).sum::<Share>();
        let sum_high = specs.iter().filter_map(|(_, spec, _)| between(*spec)).map(|range| range.high).sum::<Share>();
        let whole = compare_with_whole(rests, sum_low, sum_high);
        let rest = resolve_rest(sum_low, sum_high);
        let mut outputs = Vec::with_capacity(specs.len());
        for (slot, spec, output) in &specs {
            let stated = between(*spec).unwrap_or(rest);
            let given_typical = output.and_then(|output| output.typical.value().copied());
            outputs.push(OutputBalance { slot: *slot, stated, is_rest: *spec == ShareSpec::Rest, tight: stated, given_typical });
        }
        let broken_typical = specs.iter().any(|(_, _, output)| output.is_some_and(|output| output.typical.is_broken()));
        let mut balance = Self { outputs, rests, sum_low, sum_high, whole, typicals: Typicals::Unknown };
        if whole == Whole::Possible {
            balance.tighten();
            if !broken_typical {
                balance.typicals = typicals(&balance.outputs);
            }
        }
        Some(balance)
    }

    /// True when the step can happen and its typical shares are known.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.whole == Whole::Possible && matches!(self.typicals, Typicals::Found(_))
    }

    /// Narrows each range to the values that can occur beside the others.
    fn tighten(&mut self) {
        let low: Share = self.outputs.iter().map(|output| output.stated.low).sum();
        let high: Share = self.outputs.iter().map(|output| output.stated.high).sum();
        for output in &mut self.outputs {
            let others_low = low - output.stated.low;
            let others_high = high - output.stated.high;
            output.tight =
                Range { low: output.stated.low.max(Share::WHOLE - others_high), high: output.stated.high.min(Share::WHOLE - others_low) };
        }
    }
}

/// The share of an output when it was stated and makes sense by itself: `0 ≤ low ≤ high ≤ 1`.
fn read_share(output: &Output) -> Option<ShareSpec> {
    let spec = *output.share.value()?;
    match spec {
        ShareSpec::Rest => Some(spec),
        ShareSpec::Between(range) => (Share::ZERO <= range.low && range.low <= range.high && range.high <= Share::WHOLE).then_some(spec),
    }
}

/// The range of an output that is not `rest`.
const fn between(spec: ShareSpec) -> Option<Range<Share>> {
    match spec {
        ShareSpec::Between(range) => Some(range),
        ShareSpec::Rest => None,
    }
}

/// The range of `rest`, given the sums of the other outputs; nothing is left where these exceed the whole.
fn resolve_rest(sum_low: Share, sum_high: Share) -> Range<Share> {
    Range { low: Share::ZERO.max(Share::WHOLE - sum_high), high: Share::ZERO.max(Share::WHOLE - sum_low) }
}

/// Σ low ≤ 1 ≤ Σ high; one `rest` always reaches the whole from below.
fn compare_with_whole(rests: usize, sum_low: Share, sum_high: Share) -> Whole {
    if sum_low > Share::WHOLE {
        return Whole::Exceeds(sum_low - Share::WHOLE);
    }
    match rests {
        0 if sum_high < Share::WHOLE => Whole::FallsShort(Share::WHOLE - sum_high),
        0 | 1 => Whole::Possible,
        _ => Whole::SeveralRests,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::testing::{percent, step};

    fn balance(text: &str) -> StepBalance {
        StepBalance::of(&step(text)).unwrap()
    }

    fn share(text: &str) -> Share {
        percent(text).low
    }

    #[test]
    fn says_by_how_much_a_step_cannot_happen() {
        // Own judgement figures of a boned loin: 76 + 27.6 is 3.6 over.
        assert_eq!(balance("loin -> boneless 76-80 | frame 27.6-33.6 | loss 0-0.5").whole, Whole::Exceeds(share("3.6")));
        assert_eq!(balance("loin -> boneless 60-64 | frame 27.6-33.6 | loss 0-0.5").whole, Whole::FallsShort(share("1.9")));
        assert_eq!(balance("loin -> boneless 60-64 | frame rest | loss 0-0.5").whole, Whole::Possible);
        assert_eq!(balance("loin -> boneless 99-100 | frame rest | loss 2-3").whole, Whole::Exceeds(share("1")));
        assert_eq!(balance("loin -> boneless 50 | frame rest | chine rest").whole, Whole::SeveralRests);
        assert_eq!(balance("loin -> boneless 33.3333333 | frame 66.6666667").whole, Whole::Possible);
    }

    #[test]
    fn names_the_values_that_can_never_occur() {
        let balance = balance("leg -> topside 60-75 | shank 28-34 | loss 0-1");
        let topside = balance.outputs[0];
        assert_eq!(topside.tight, percent("65-72"));
        assert_eq!(topside.never_low(), Some(percent("60-65")));
        assert_eq!(topside.never_high(), Some(percent("72-75")));
        assert!(!balance.outputs[1].is_loose() && !balance.outputs[2].is_loose());
    }

    #[test]
    fn rest_is_what_the_others_leave() {
        let balance = balance("bird -> legs 31-35 | body rest | loss 0-0.3");
        assert_eq!(balance.outputs[1].stated, percent("64.7-69"));
        assert_eq!(balance.outputs[1].tight, percent("64.7-69"));
        assert_eq!(balance.rests, 1);
        assert_eq!(balance.outputs.iter().map(|output| output.slot).collect::<Vec<_>>(), [Slot::Give(0), Slot::Give(1), Slot::Loss]);
    }

    #[test]
    fn says_nothing_where_a_share_could_not_be_read() {
        assert!(StepBalance::of(&step("bird -> legs broken | body rest")).is_none());
        assert!(StepBalance::of(&step("bird -> legs 10-120 | body rest")).is_none());
        assert!(StepBalance::of(&Step { give_known: false, ..step("bird -> legs 31-35 | body rest") }).is_none());
        assert!(StepBalance::of(&Step { loss: Stated::Broken, ..step("bird -> legs 31-35 | body rest") }).is_none());
    }
}
