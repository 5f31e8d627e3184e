//! The clock against worked cases, and against lots of meat followed one by one on random networks.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;

use super::clock::{ClockKind, ColdClock, Over, PieceClock, Stretch, TimeRange};
use super::network::Network;
use super::random_networks::{StepDraw, build, draws};
use super::testing::{given, procedure, spanned};
use crate::model::Procedure;
use crate::model::procedure::BackToCold;
use crate::model::quantity::{Minutes, Range};

fn clock(procedure: &Procedure) -> ColdClock {
    ColdClock::of(procedure, &Network::of(procedure)).unwrap()
}

fn minutes(low: i64, high: i64) -> TimeRange {
    TimeRange { low: Minutes(low * 1000), high: Some(Minutes(high * 1000)) }
}

/// A pork loin, own judgement figures: 22 minutes trained, 45 as a learner; a learner stops after the fourth step.
fn loin(back: &str, at_once: &str) -> Procedure {
    let third = format!("rib-and-centre -> rough-boneless 70 | frame 30 ; minutes 5-12{at_once}");
    let fourth = format!("frame -> back-ribs 44 | chine 56 ; minutes 3-4{back}");
    let steps = [
        "loin -> rough-tenderloin 5 | less-tenderloin 95 ; minutes 2-5",
        "less-tenderloin -> sirloin-end 20 | rib-and-centre 80 ; minutes 2-4",
        &third,
        &fourth,
        "rough-boneless -> boneless 90 | trim 10 ; minutes 5-10",
        "rough-tenderloin -> tenderloin 90 | trim 10 ; minutes 2-5",
        "sirloin-end -> sirloin 80 | trim 20 ; minutes 3-5",
    ];
    procedure("pork/loin", "loin", &steps)
}

fn piece<'a>(clock: &'a ColdClock, procedure: &Procedure, id: &str) -> &'a PieceClock {
    let network = Network::of(procedure);
    let at = network.pieces.iter().position(|piece| piece.id == id).unwrap();
    clock.pieces.iter().find(|piece| piece.piece == at).unwrap()
}

#[test]
fn without_going_back_all_lie_out_to_the_end() {
    let procedure = loin("", "");
    let clock = clock(&procedure);
    assert_eq!(clock.start.longest, minutes(22, 45));
    assert_eq!(piece(&clock, &procedure, "back-ribs").longest, minutes(22, 45));
    let limit = |limit: i64, kind| clock.first_over(Minutes(limit * 1000), kind);
    let stretch = Stretch { from: 0, to: 6 };
    assert_eq!(limit(30, ClockKind::Single), Some(Over { step: 4, piece: 0, stretch, longest: Minutes(45_000) }));
    assert_eq!(limit(45, ClockKind::Single), None);
    assert_eq!(limit(44, ClockKind::Cumulative).map(|over| over.step), Some(6));
}

#[test]
fn after_going_back_a_new_stretch_begins() {
    let procedure = loin(" ; back all", "");
    let clock = clock(&procedure);
    assert_eq!(clock.start.longest, minutes(12, 25));
    assert_eq!(piece(&clock, &procedure, "back-ribs").longest, minutes(12, 25));
    let boneless = piece(&clock, &procedure, "boneless");
    assert_eq!((boneless.longest, boneless.sum), (minutes(10, 20), minutes(22, 45)));
    let rough = piece(&clock, &procedure, "rough-tenderloin");
    assert_eq!(rough.stretches, [Stretch { from: 0, to: 3 }, Stretch { from: 5, to: 6 }]);
    assert_eq!((rough.longest, rough.sum), (minutes(12, 25), minutes(17, 35)));
    assert_eq!(clock.first_over(Minutes(30_000), ClockKind::Single), None);
    assert_eq!(clock.first_over(Minutes(30_000), ClockKind::Cumulative).map(|over| over.step), Some(4));
}

#[test]
fn single_pieces_go_back_and_idle_names_are_told() {
    let procedure = loin(" ; back back-ribs, loin, chine", "");
    let clock = clock(&procedure);
    assert_eq!(piece(&clock, &procedure, "back-ribs").longest, minutes(12, 25));
    assert_eq!(piece(&clock, &procedure, "sirloin").longest, minutes(22, 45));
    assert_eq!(clock.idle_returns, [(3, 1)]);
}

#[test]
fn several_at_once_multiply_the_minutes() {
    assert_eq!(clock(&loin("", " ; at-once 6")).start.longest, minutes(22 + 25, 45 + 60));
}

#[test]
fn a_step_without_minutes_makes_the_longest_unknown() {
    let mut procedure = loin(" ; back all", "");
    procedure.steps[5].minutes = crate::model::Stated::Absent;
    let clock = clock(&procedure);
    assert_eq!(piece(&clock, &procedure, "back-ribs").longest, minutes(12, 25));
    assert_eq!(piece(&clock, &procedure, "boneless").longest, TimeRange { low: Minutes(8000), high: None });
    assert_eq!((clock.longest(ClockKind::Single), clock.first_over(Minutes(1), ClockKind::Single)), (None, None));
    assert_eq!(clock.steps_without_minutes, [5]);
}

/// A lot of meat: its closed stretches, and, while it lies out, since when and as which pieces.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Lot {
    closed: Vec<(usize, usize)>,
    out: Option<(usize, BTreeSet<String>)>,
}

/// Low, high and missing minutes of these stretches.
fn time(procedure: &Procedure, stretches: &[(usize, usize)]) -> (i64, i64, bool) {
    let mut total = (0, 0, false);
    for step in stretches.iter().flat_map(|(from, to)| procedure.steps[*from..=*to].iter()) {
        let times = i64::from(step.at_once.value().copied().unwrap_or(1));
        match step.minutes.value() {
            Some(minutes) => total = (total.0 + minutes.low.0 * times, total.1 + minutes.high.0 * times, total.2),
            None => total.2 = true,
        }
    }
    total
}

type Times = BTreeMap<String, Vec<(i64, i64, bool)>>;

/// Follows every lot of meat through every piece that it becomes part of.
fn follow_lots(procedure: &Procedure) -> (Times, Times) {
    let (mut singles, mut sums) = (Times::new(), Times::new());
    let mut close = |lot: &mut Lot, step: usize| {
        let Some((from, names)) = lot.out.take() else { return };
        lot.closed.push((from, step));
        for name in names {
            singles.entry(name.clone()).or_default().push(time(procedure, &[(from, step)]));
            sums.entry(name).or_default().push(time(procedure, &lot.closed));
        }
    };
    let start = procedure.start.piece.value().unwrap().clone();
    let first = Lot { closed: Vec::new(), out: Some((0, BTreeSet::from([start.clone()]))) };
    let mut lots: BTreeMap<String, BTreeSet<Lot>> = BTreeMap::from([(start, BTreeSet::from([first]))]);
    for (at, step) in procedure.steps.iter().enumerate() {
        let mut taken = Vec::new();
        for piece in &step.take {
            for mut lot in lots.remove(&piece.value).unwrap_or_default() {
                lot.out.get_or_insert_with(|| (at, BTreeSet::new())).1.insert(piece.value.clone());
                taken.push(lot);
            }
        }
        for output in &step.give {
            for mut lot in taken.clone() {
                lot.out.as_mut().unwrap().1.insert(output.piece.value.clone());
                lots.entry(output.piece.value.clone()).or_default().insert(lot);
            }
        }
        let back: Vec<String> = match step.back_to_cold.value() {
            None => Vec::new(),
            Some(BackToCold::All) => lots.keys().cloned().collect(),
            Some(BackToCold::Pieces(pieces)) => pieces.iter().map(|piece| piece.value.clone()).collect(),
        };
        for piece in back {
            if let Some(set) = lots.remove(&piece) {
                let closed = set
                    .into_iter()
                    .map(|mut lot| {
                        close(&mut lot, at);
                        lot
                    })
                    .collect();
                lots.insert(piece, closed);
            }
        }
    }
    for lot in lots.values_mut().flat_map(std::mem::take) {
        close(&mut lot.clone(), procedure.steps.len() - 1);
    }
    (singles, sums)
}

fn greatest(times: Option<&Vec<(i64, i64, bool)>>) -> TimeRange {
    let times = times.cloned().unwrap_or_default();
    let low = times.iter().map(|time| time.0).max().unwrap_or(0);
    let missing = times.iter().any(|time| time.2);
    TimeRange { low: Minutes(low), high: (!missing).then(|| Minutes(times.iter().map(|time| time.1).max().unwrap_or(0))) }
}

/// Minutes, how many at once, and which pieces go back (`None` all of them, by the position of an output).
type CareDraw = (Option<(i64, i64)>, Option<u32>, Option<Option<usize>>);

fn procedure_of(draws: &[StepDraw], care: &[CareDraw]) -> Procedure {
    let mut procedure = build("p/p", "start", draws, |number| format!("piece-{number}"));
    let names: Vec<String> = procedure.steps.iter().flat_map(|step| step.give.iter().map(|output| output.piece.value.clone())).collect();
    for (step, (minutes, at_once, back)) in procedure.steps.iter_mut().zip(care) {
        if let Some((low, more)) = minutes {
            step.minutes = given(Range { low: Minutes(*low), high: Minutes(low + more) });
        }
        if let Some(times) = at_once {
            step.at_once = given(*times);
        }
        if let Some(which) = back {
            let some = |at: usize| {
                BackToCold::Pieces(vec![spanned(names[at % names.len()].clone()), spanned(names[(at / 7) % names.len()].clone())])
            };
            step.back_to_cold = given(which.map_or(BackToCold::All, some));
        }
    }
    procedure
}

fn care() -> impl Strategy<Value = Vec<CareDraw>> {
    let back = prop::option::weighted(0.5, prop::option::weighted(0.7, 0_usize..200));
    let one = (prop::option::weighted(0.95, (0_i64..9, 0_i64..9)), prop::option::weighted(0.2, 1_u32..4), back);
    prop::collection::vec(one, 10)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/clock.txt"))), ..ProptestConfig::default() })]

    #[test]
    fn times_are_those_of_the_longest_lot(draws in draws(7), care in care()) {
        let procedure = procedure_of(&draws, &care);
        let network = Network::of(&procedure);
        let clock = clock(&procedure);
        let (singles, sums) = follow_lots(&procedure);
        for piece in std::iter::once(&clock.start).chain(&clock.pieces) {
            let id = &network.pieces[piece.piece].id;
            prop_assert_eq!(piece.longest, greatest(singles.get(id)), "longest of {}", id);
            prop_assert_eq!(piece.sum, greatest(sums.get(id)), "sum of {}", id);
        }
    }
}
