//! Time out of the cold as a table: every piece, from which step to which, how long, and what is left to the limit.
//!
//! The drawing in `cold_drawing` shows the same stretches; pieces that lie out together share a lane there. Times are
//! `analysis::clock`'s; nothing is added up here.

use crate::analysis::clock::{ColdClock, TimeRange, TimedStretch};
use crate::analysis::cold_limits::{SetBy, time_out};
use crate::analysis::minutes::bench_minutes;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::model::quantity::{Minutes, Range};
use crate::model::words::Clock;
use crate::model::{Guidebook, Procedure};

use super::numbers::short;
use super::yield_table::capitalised;

/// The cold clock of one procedure.
#[derive(Debug, Clone)]
pub struct ColdTable {
    /// A row for every stretch of every piece, in the order of the network.
    pub rows: Vec<ColdRow>,
    /// Stretches that several pieces share, in the order of the work.
    pub lanes: Vec<Lane>,
    /// The limit that holds; `None` where no rule sets one.
    pub limit: Option<ColdLimit>,
    /// True when all stretches of a piece add up against the limit.
    pub cumulative: bool,
    /// Steps without minutes, counted from 1: with them no longest time is known.
    pub unknown: Vec<usize>,
}

/// The limit on time out of the cold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ColdLimit {
    /// The longest time.
    pub at_most: Minutes,
    /// True when the shop sets it, false when the profile does.
    pub own: bool,
}

/// One stretch of one piece. Minutes are numbers as they are printed; empty when not known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColdRow {
    /// The id of the piece.
    pub piece: String,
    /// What it is called.
    pub name: String,
    /// The first step, counted from 1.
    pub from: usize,
    /// The last step.
    pub to: usize,
    /// The shortest time.
    pub shortest: String,
    /// The longest time.
    pub longest: String,
    /// The shortest time with all stretches before.
    pub shortest_in_all: String,
    /// Likewise the longest.
    pub longest_in_all: String,
    /// The limit; empty where none is set.
    pub limit: String,
    /// What the longest time leaves to the limit.
    pub left: String,
}

/// A stretch that several pieces share, with the same past.
#[derive(Debug, Clone, PartialEq)]
pub struct Lane {
    /// The first step, counted from 1.
    pub from: usize,
    /// The last step.
    pub to: usize,
    /// The names of the pieces.
    pub pieces: Vec<String>,
    /// Its steps in order.
    pub steps: Vec<LaneStep>,
    /// Minutes out before it, shortest and longest; zero where only single stretches count.
    pub before: (f64, f64),
}

/// One step of a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LaneStep {
    /// Its number, counted from 1.
    pub number: usize,
    /// Its minutes at the bench, shortest and longest.
    pub minutes: (f64, f64),
    /// How many are worked one after another in it; 1 when one.
    pub at_once: u32,
}

impl Lane {
    /// The shortest time of the stretch.
    #[must_use]
    pub fn shortest(&self) -> f64 {
        self.steps.iter().map(|step| step.minutes.0).sum()
    }

    /// The longest time of the stretch.
    #[must_use]
    pub fn longest(&self) -> f64 {
        self.steps.iter().map(|step| step.minutes.1).sum()
    }
}

impl ColdTable {
    /// The table of a procedure; `None` when its clock could not be computed.
    #[must_use]
    pub fn of(book: &Guidebook, procedure: &Procedure, analysis: &ProcedureAnalysis) -> Option<Self> {
        let clock: &ColdClock = analysis.cold.as_ref()?;
        let limit = time_out(book);
        let cumulative = limit.is_some_and(|limit| limit.clock == Clock::Cumulative);
        let at_most = limit.map(|limit| limit.at_most);
        let name = |timed: &TimedStretch| {
            let piece = analysis.network.pieces.get(timed.piece).map_or("", |piece| piece.id.as_str());
            (piece.to_owned(), capitalised(&book.piece_name(piece)))
        };
        let mut rows = Vec::new();
        let mut lanes: Vec<Lane> = Vec::new();
        for timed in clock.timed() {
            let (piece, name) = name(&timed);
            let counted = if cumulative { timed.in_all } else { timed.alone };
            rows.push(ColdRow {
                piece,
                name: name.clone(),
                from: timed.stretch.from + 1,
                to: timed.stretch.to + 1,
                shortest: minutes(timed.alone.low),
                longest: timed.alone.high.map_or_else(String::new, minutes),
                shortest_in_all: minutes(timed.in_all.low),
                longest_in_all: timed.in_all.high.map_or_else(String::new, minutes),
                limit: at_most.map_or_else(String::new, minutes),
                left: left(at_most, counted),
            });
            let before = if cumulative { before(&timed) } else { (0.0, 0.0) };
            let same = |lane: &&mut Lane| lane.from == timed.stretch.from + 1 && lane.to == timed.stretch.to + 1 && lane.before == before;
            match lanes.iter_mut().find(same) {
                Some(lane) => lane.pieces.push(name),
                None => lanes.push(lane(procedure, &timed, name, before)),
            }
        }
        lanes.sort_by_key(|lane| (lane.from, lane.to));
        Some(Self {
            rows,
            lanes,
            limit: limit.map(|limit| ColdLimit { at_most: limit.at_most, own: matches!(limit.set_by, SetBy::Guidebook(_)) }),
            cumulative,
            unknown: clock.steps_without_minutes.iter().map(|step| step + 1).collect(),
        })
    }
}

fn lane(procedure: &Procedure, timed: &TimedStretch, name: String, before: (f64, f64)) -> Lane {
    let steps = procedure.steps.iter().enumerate().skip(timed.stretch.from).take(timed.stretch.to + 1 - timed.stretch.from);
    let step = |(at, step): (usize, &crate::model::Step)| {
        let minutes = bench_minutes(step).unwrap_or_else(|| Range::single(Minutes(0)));
        let at_once = step.at_once.value().copied().unwrap_or(1);
        LaneStep { number: at + 1, minutes: (minutes.low.number(), minutes.high.number()), at_once }
    };
    Lane { from: timed.stretch.from + 1, to: timed.stretch.to + 1, pieces: vec![name], steps: steps.map(step).collect(), before }
}

/// What a piece was out before a stretch.
fn before(timed: &TimedStretch) -> (f64, f64) {
    let low = timed.in_all.low.0 - timed.alone.low.0;
    let high = match (timed.in_all.high, timed.alone.high) {
        (Some(in_all), Some(alone)) => in_all.0 - alone.0,
        _ => 0,
    };
    (Minutes(low).number(), Minutes(high).number())
}

fn left(limit: Option<Minutes>, counted: TimeRange) -> String {
    match (limit, counted.high) {
        (Some(limit), Some(longest)) => minutes(Minutes(limit.0 - longest.0)),
        _ => String::new(),
    }
}

/// Minutes as a number with a decimal where it needs one.
fn minutes(minutes: Minutes) -> String {
    short(minutes.number(), 1)
}
