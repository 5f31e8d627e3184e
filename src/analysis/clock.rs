//! Time out of the cold, shortest and longest, for each piece.
//!
//! One worker does the steps in order. The start leaves the cold at the start of the first step. A stretch
//! runs from the start of the step at which a piece, or the earliest of what it came from, left the cold,
//! to the end of the step after which it, or the last of what it became, goes back. Taken up again, a new
//! stretch begins. `stretches.rs` follows the pieces; this file turns steps into minutes.

use crate::model::quantity::Minutes;
use crate::model::{Procedure, Step};

use super::minutes::bench_minutes;
use super::network::Network;
use super::stretches::{Followed, follow};

/// A time from its shortest to its longest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TimeRange {
    /// The shortest; a step without minutes counts as none.
    pub low: Minutes,
    /// The longest; `None` when some step in it has no minutes.
    pub high: Option<Minutes>,
}

/// A stretch out of the cold: from the start of one step to the end of another, counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stretch {
    /// The first step.
    pub from: usize,
    /// The last step, included.
    pub to: usize,
}

/// One piece's time out of the cold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceClock {
    /// The piece, as a position in `Network::pieces`.
    pub piece: usize,
    /// Its stretches in order.
    pub stretches: Vec<Stretch>,
    /// The longest single stretch.
    pub longest: TimeRange,
    /// All stretches together, with those of what it came from: the piece's whole past out of the cold.
    pub sum: TimeRange,
}

/// A stretch of one piece with its times.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TimedStretch {
    /// The piece, as a position in `Network::pieces`.
    pub piece: usize,
    /// From which step to which.
    pub stretch: Stretch,
    /// The time of the stretch itself.
    pub alone: TimeRange,
    /// That time with all that the piece, or what it came from, was out before.
    pub in_all: TimeRange,
}

/// Which time a limit is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ClockKind {
    /// The longest single stretch.
    Single,
    /// All stretches together.
    Cumulative,
}

/// Where a limit is passed first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Over {
    /// The step in which it is passed.
    pub step: usize,
    /// The piece, as a position in `Network::pieces`.
    pub piece: usize,
    /// The stretch in which it is passed.
    pub stretch: Stretch,
    /// The longest time that this piece comes to in the end.
    pub longest: Minutes,
}

/// Times out of the cold for one procedure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColdClock {
    /// The start.
    pub start: PieceClock,
    /// Every piece that is given, in the order of first giving.
    pub pieces: Vec<PieceClock>,
    /// Steps without minutes, which make the longest times unknown.
    pub steps_without_minutes: Vec<usize>,
    /// Names under `back-to-cold` that do not lie out then: the step, and the position of the name.
    pub idle_returns: Vec<(usize, usize)>,
    sums: Sums,
    offsets: Vec<Vec<(Stretch, Span)>>,
}

impl ColdClock {
    /// The clock of a procedure, or `None` when the order is not sound or a `back-to-cold` could not be read.
    #[must_use]
    pub fn of(procedure: &Procedure, network: &Network) -> Option<Self> {
        if !network.is_sound() || procedure.steps.iter().any(|step| step.back_to_cold.is_broken()) {
            return None;
        }
        let sums = Sums::of(&procedure.steps);
        let Followed { pieces: offsets, idle_returns } = follow(procedure, network, &sums);
        let mut clocks = offsets.iter().enumerate().map(|(piece, stretches)| piece_clock(piece, stretches, &sums));
        let start = clocks.next()?;
        let pieces = clocks.collect();
        let missing = procedure.steps.iter().enumerate().filter(|(_, step)| bench_minutes(step).is_none());
        let steps_without_minutes = missing.map(|(at, _)| at).collect();
        Some(Self { start, pieces, steps_without_minutes, idle_returns, sums, offsets })
    }

    /// The longest time of any piece; `None` when a step has no minutes.
    #[must_use]
    pub fn longest(&self, kind: ClockKind) -> Option<Minutes> {
        let times = std::iter::once(&self.start).chain(&self.pieces).map(|piece| match kind {
            ClockKind::Single => piece.longest.high,
            ClockKind::Cumulative => piece.sum.high,
        });
        times.max_by_key(|high| high.map_or(i64::MAX, |high| high.0)).flatten()
    }

    /// Every stretch of every piece with its times: the start first, then pieces in the order of first giving.
    #[must_use]
    pub fn timed(&self) -> Vec<TimedStretch> {
        let of_piece = |(piece, stretches): (usize, &Vec<(Stretch, Span)>)| {
            let timed = |(stretch, offset): &(Stretch, Span)| {
                let end = self.sums.until(stretch.to + 1);
                let alone = end.plus(self.sums.until(stretch.from).minus()).time();
                TimedStretch { piece, stretch: *stretch, alone, in_all: end.plus(*offset).time() }
            };
            stretches.iter().map(timed).collect::<Vec<_>>()
        };
        self.offsets.iter().enumerate().flat_map(of_piece).collect()
    }

    /// The earliest step in which some piece's longest time passes a limit; equal is not past it.
    ///
    /// `None` when none does, or when a step has no minutes, since then no longest time is known.
    #[must_use]
    pub fn first_over(&self, limit: Minutes, kind: ClockKind) -> Option<Over> {
        if !self.steps_without_minutes.is_empty() {
            return None;
        }
        let mut first: Option<Over> = None;
        for (piece, stretches) in self.offsets.iter().enumerate() {
            for (stretch, offset) in stretches {
                let base = match kind {
                    ClockKind::Single => self.sums.until(stretch.from).minus(),
                    ClockKind::Cumulative => *offset,
                };
                let at_end = |step: usize| self.sums.until(step + 1).plus(base).high;
                let Some(step) = (stretch.from..=stretch.to).find(|step| at_end(*step) > limit.0) else { continue };
                if first.is_none_or(|over| step < over.step) {
                    first = Some(Over { step, piece, stretch: *stretch, longest: Minutes(at_end(stretch.to)) });
                }
            }
        }
        first
    }
}

/// Thousandths of minutes, shortest and longest, and how many steps without minutes are in it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Span {
    pub low: i64,
    pub high: i64,
    pub missing: i64,
}

impl Span {
    pub(super) const fn plus(self, other: Self) -> Self {
        Self {
            low: self.low.saturating_add(other.low),
            high: self.high.saturating_add(other.high),
            missing: self.missing.saturating_add(other.missing),
        }
    }

    pub(super) const fn minus(self) -> Self {
        Self { low: -self.low, high: -self.high, missing: -self.missing }
    }

    pub(super) fn max(self, other: Self) -> Self {
        Self { low: self.low.max(other.low), high: self.high.max(other.high), missing: self.missing.max(other.missing) }
    }

    fn time(self) -> TimeRange {
        TimeRange { low: Minutes(self.low), high: (self.missing == 0).then_some(Minutes(self.high)) }
    }
}

/// Running sums over the steps: entry `n` is the time of the first `n` steps.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Sums(Vec<Span>);

impl Sums {
    fn of(steps: &[Step]) -> Self {
        let mut sums = vec![Span::default()];
        let mut sum = Span::default();
        for step in steps {
            sum = sum.plus(match bench_minutes(step) {
                Some(minutes) => Span { low: minutes.low.0, high: minutes.high.0, missing: 0 },
                None => Span { low: 0, high: 0, missing: 1 },
            });
            sums.push(sum);
        }
        Self(sums)
    }

    /// The time before this step begins.
    pub(super) fn until(&self, step: usize) -> Span {
        self.0.get(step).copied().unwrap_or_default()
    }
}

/// The times of one piece. With each stretch stands what is to be added to the running sum at its end to get
/// the piece's whole past out of the cold.
fn piece_clock(piece: usize, stretches: &[(Stretch, Span)], sums: &Sums) -> PieceClock {
    let mut longest = Span::default();
    let mut sum = Span::default();
    for (stretch, offset) in stretches {
        let end = sums.until(stretch.to + 1);
        longest = longest.max(end.plus(sums.until(stretch.from).minus()));
        sum = sum.max(end.plus(*offset));
    }
    let stretches = stretches.iter().map(|(stretch, _)| *stretch).collect();
    PieceClock { piece, stretches, longest: longest.time(), sum: sum.time() }
}
