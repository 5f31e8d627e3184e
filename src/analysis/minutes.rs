//! Minutes of work: of a step, and of all steps of a procedure.

use crate::model::quantity::{Minutes, Range};
use crate::model::{Procedure, Step};

/// Minutes of all steps. `None` where some step states none, or one could not be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MinuteTotals {
    /// Each step as often as it is done before the next begins: `at-once` multiplies.
    pub bench: Option<Range<Minutes>>,
    /// Each step once: the work on one starting piece.
    pub once: Option<Range<Minutes>>,
}

impl MinuteTotals {
    /// The totals of a procedure, from the shortest to the longest; without setting up and cleaning.
    #[must_use]
    pub fn of(procedure: &Procedure) -> Self {
        if !procedure.complete || procedure.steps.is_empty() {
            return Self { bench: None, once: None };
        }
        Self {
            bench: procedure.steps.iter().map(bench_minutes).try_fold(Range::single(Minutes(0)), add),
            once: procedure.steps.iter().map(|step| step.minutes.value().copied()).try_fold(Range::single(Minutes(0)), add),
        }
    }
}

/// The minutes of a step as often as it is done before the next begins; `None` when none are known.
#[must_use]
pub fn bench_minutes(step: &Step) -> Option<Range<Minutes>> {
    if step.at_once.is_broken() {
        return None;
    }
    let times = i64::from(step.at_once.value().copied().unwrap_or(1));
    Some(step.minutes.value()?.map(|minutes| Minutes(minutes.0.saturating_mul(times))))
}

fn add(sum: Range<Minutes>, step: Option<Range<Minutes>>) -> Option<Range<Minutes>> {
    let step = step?;
    Some(Range { low: Minutes(sum.low.0.saturating_add(step.low.0)), high: Minutes(sum.high.0.saturating_add(step.high.0)) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::testing::procedure;

    #[test]
    fn steps_add_up_and_several_at_once_multiply() {
        let minutes = |low: i64, high: i64| Some(Range { low: Minutes(low * 1000), high: Minutes(high * 1000) });
        let totals = MinuteTotals::of(&procedure("p/p", "a", &["a -> b 50 | c 50 ; minutes 2-5 ; at-once 6", "b -> d 100 ; minutes 3-7"]));
        assert_eq!(totals, MinuteTotals { bench: minutes(15, 37), once: minutes(5, 12) });
        let unknown = MinuteTotals::of(&procedure("p/p", "a", &["a -> b 50 | c 50 ; minutes 2-5", "b -> d 100"]));
        assert_eq!(unknown, MinuteTotals { bench: None, once: None });
    }
}
