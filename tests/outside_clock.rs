//! Time out of the cold of seven worked procedures, step by step, against totals that were added by hand.
//!
//! Minutes of a trained cutter and of an apprentice, the limit, and where the pieces go back are own judgement, from
//! the trade reference of this project; the totals beside them were worked apart. What is tested is the clock.
//! The reference returns the side and the round once; the rest of their steps, 43 and 33 minutes, needs a second time.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

use std::fmt::Write as _;

use seamwise::analysis::clock::ClockKind;
use seamwise::analysis::procedure::ProcedureAnalysis;
use seamwise::finding::Finding;
use seamwise::model::quantity::{Minutes, Range};
use seamwise::source::{Entry, Files};
use seamwise::{Inspection, inspect};

/// Minutes of each step, trained and apprentice.
struct Work {
    name: &'static str,
    minutes: &'static [(f64, f64)],
    total: (i64, i64),
    limit: i64,
    /// After which steps an apprentice puts everything back, counted from 1, and how long it was out by then.
    back: &'static [(usize, i64)],
}

const WORKS: &[Work] = &[
    Work {
        name: "pork side into primals",
        minutes: &[(2.0, 4.0), (2.0, 5.0), (3.0, 7.0), (3.0, 7.0), (4.0, 9.0), (5.0, 11.0), (4.0, 9.0), (4.0, 9.0), (2.0, 5.0)],
        total: (29, 66),
        limit: 30,
        back: &[(4, 23), (6, 20)],
    },
    Work {
        name: "pork loin",
        minutes: &[(2.0, 5.0), (2.0, 4.0), (5.0, 12.0), (3.0, 4.0), (5.0, 10.0), (2.0, 5.0), (3.0, 5.0)],
        total: (22, 45),
        limit: 30,
        back: &[(4, 25)],
    },
    Work {
        name: "lamb leg",
        minutes: &[(4.0, 9.0), (2.0, 5.0), (2.0, 4.0), (3.0, 8.0), (4.0, 8.0), (1.0, 3.0), (2.0, 3.0)],
        total: (18, 40),
        limit: 30,
        back: &[(4, 26)],
    },
    Work {
        name: "chicken",
        minutes: &[(1.0, 2.0), (1.0, 3.0), (0.5, 2.0), (0.5, 2.0), (1.0, 3.0), (1.0, 3.0)],
        total: (5, 15),
        limit: 30,
        back: &[],
    },
    Work {
        name: "salmon",
        minutes: &[(4.0, 8.0), (2.0, 4.0), (5.0, 12.0), (4.0, 8.0), (3.0, 8.0), (2.0, 4.0), (4.0, 6.0)],
        total: (24, 50),
        limit: 20,
        back: &[(2, 12), (3, 12), (5, 16)],
    },
    Work {
        name: "beef round",
        minutes: &[(5.0, 12.0), (4.0, 10.0), (3.0, 7.0), (4.0, 10.0), (4.0, 9.0), (6.0, 14.0)],
        total: (26, 62),
        limit: 30,
        back: &[(3, 29), (5, 19)],
    },
    Work {
        name: "beef chuck",
        minutes: &[(9.0, 22.0), (3.0, 6.0), (5.0, 12.0), (2.0, 5.0), (4.0, 9.0), (6.0, 14.0), (5.0, 12.0), (4.0, 10.0)],
        total: (38, 90),
        limit: 36,
        back: &[(2, 28), (5, 26)],
    },
    Work {
        name: "venison haunch",
        minutes: &[(3.0, 6.0), (3.0, 8.0), (2.0, 5.0), (2.0, 4.0), (2.0, 5.0), (3.0, 8.0), (3.0, 6.0)],
        total: (18, 42),
        limit: 30,
        back: &[(5, 28)],
    },
];

/// A guide in which each step takes the largest piece of the step before: a chain, so that all stays out.
fn guide(work: &Work, back: &[usize], at_once: u32) -> Inspection {
    let mut steps = String::new();
    for (at, (trained, apprentice)) in (1..).zip(work.minutes) {
        let taken = if at == 1 { "piece-start".to_owned() } else { format!("piece-{}", at - 1) };
        let purpose = if at == work.minutes.len() { ", use: retail" } else { "" };
        let _ = write!(
            steps,
            "  - name: Step {at}\n    take: {taken}\n    do: Cut.\n    minutes: {trained}–{apprentice}\n    at-once: {at_once}\n    give: {{ side-{at}: {{ share: 10–20 %, use: retail }}, piece-{at}: {{ share: rest{purpose} }} }}\n    loss: 0\n"
        );
        if back.contains(&at) {
            steps.push_str("    back-to-cold: all\n");
        }
    }
    let head = "title: Work\nspecies: pork\nrevision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }\nstart: { piece: piece-start, weight: 7–8 kg, temperature: 2–4 °C }\nsteps:\n";
    let book = format!(
        "title: T\nlimits: eu-853\nstricter:\n  - {{ limit: time-out, at-most: {} minutes, watch: me, every: piece, if-missed: Back. }}\n",
        work.limit
    );
    let mut files = Files::new();
    files.insert("guidebook.yaml".to_owned(), Entry::File(book.into_bytes()));
    files.insert("pork/work.yaml".to_owned(), Entry::File(format!("{head}{steps}").into_bytes()));
    inspect(files)
}

fn analysis(inspection: &Inspection) -> &ProcedureAnalysis {
    &inspection.verdict.analysis().procedures[0]
}

fn too_long(inspection: &Inspection) -> Vec<&Finding> {
    inspection.findings.iter().filter(|finding| finding.check == "out-too-long").collect()
}

fn whole(minutes: i64) -> Minutes {
    Minutes(minutes * 1_000)
}

/// The totals of trained and apprentice, and the longest time out when nothing goes back.
#[test]
fn totals_of_trained_and_apprentice() {
    for work in WORKS {
        let inspection = guide(work, &[], 1);
        let (trained, apprentice) = (whole(work.total.0), whole(work.total.1));
        assert_eq!(analysis(&inspection).minutes.once, Some(Range { low: trained, high: apprentice }), "{}", work.name);
        let clock = analysis(&inspection).cold.as_ref().unwrap();
        assert_eq!(clock.longest(ClockKind::Single), Some(apprentice), "{}", work.name);
        let late = usize::from(work.total.1 > work.limit);
        assert_eq!(too_long(&inspection).len(), late, "{}", work.name);
    }
}

/// With the pieces put back where the reference says, no stretch is too long, and each is as long as was worked.
#[test]
fn going_back_where_the_reference_says_mends_it() {
    for work in WORKS {
        let back: Vec<usize> = work.back.iter().map(|(step, _)| *step).collect();
        let inspection = guide(work, &back, 1);
        assert!(too_long(&inspection).is_empty(), "{}: {:#?}", work.name, inspection.findings);
        let mut from = 0;
        for (step, minutes) in work.back {
            let stretch: f64 = work.minutes[from..*step].iter().map(|(_, apprentice)| apprentice).sum();
            assert_eq!(stretch as i64, *minutes, "{}: by the end of step {step}", work.name);
            from = *step;
        }
    }
}

/// The loin of an apprentice: 45 minutes against 30, passed in step 5 at 35, and going back after step 4 mends it.
#[test]
fn the_loin_of_an_apprentice() {
    let loin = &WORKS[1];
    let inspection = guide(loin, &[], 1);
    let [finding] = too_long(&inspection)[..] else { panic!("{:#?}", inspection.findings) };
    assert_eq!(inspection.sources.line_column(finding.place).line, 34, "the first line of step 5");
    assert!(
        finding
            .message
            .contains("for 35 minutes by the end of step 5, `Step 5`, through steps 1 to 5 (5 + 4 + 12 + 4 + 10), 5 over the 30 minutes"),
        "{}",
        finding.message
    );
    assert_eq!(finding.help, "Put `back-to-cold: all` on step 4, `Step 4`, or at an earlier one.");
}

/// Six loins pulled together by one trained cutter: the last is out for 132 minutes.
#[test]
fn six_loins_pulled_together() {
    let inspection = guide(&WORKS[1], &[], 6);
    let clock = analysis(&inspection).cold.as_ref().unwrap();
    let last = clock.pieces.last().unwrap();
    assert_eq!(last.longest.low, whole(132));
    assert_eq!(analysis(&inspection).minutes.bench.unwrap().low, whole(132));
    assert_eq!(analysis(&inspection).minutes.once.unwrap().low, whole(22));
    let [finding] = too_long(&inspection)[..] else { panic!("{:#?}", inspection.findings) };
    assert!(
        finding.message.contains("for 54 minutes by the end of step 2, `Step 2`, through steps 1 to 2 (6 × 5 + 6 × 4)"),
        "{}",
        finding.message
    );
}
