//! Published and weighed tables against what a careful reader says of them. Where each table comes from, and how its
//! figures were read, stands in `outside/tables/sources.yaml`; what each proves in `outside/README.md`.
#![allow(clippy::disallowed_methods, reason = "the tables lie on the disk")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

#[path = "outside/cases.rs"]
mod cases;
#[path = "reconcile/reading.rs"]
mod reading;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;
use std::process::Command;

use cases::{CASES, Case};
use reading::{Found, found};
use seamwise::analysis::reconcile::base::BaseOrigin;
use seamwise::analysis::reconcile::edits::Slip;
use seamwise::analysis::reconcile::sheet::Column;
use seamwise::analysis::reconcile::sums::{Stated, Sum};
use seamwise::analysis::reconcile::verdict::Why;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/outside/tables")
}

fn of(table: &str) -> Found {
    found(&fs::read_to_string(folder().join(format!("{table}.csv"))).unwrap())
}

/// What a sum is called in the cases: its group, its row, or `whole` for an unstated 100.
fn name(found: &Found, sum: &Sum) -> String {
    match (&sum.group, sum.plan.stated) {
        (Some(group), _) => group.clone(),
        (None, Stated::Row(row)) => found.sheet.rows[row].item.clone(),
        (None, Stated::Whole) => "whole".to_owned(),
    }
}

fn complaints(case: &Case) -> Vec<String> {
    let found = of(case.table);
    let sums = &found.reconciled.sums;
    let misses: Vec<String> = sums
        .iter()
        .filter(|sum| !sum.is_exact())
        .map(|sum| format!("{} {} {} \u{b1}{} {}", name(&found, sum), sum.plan.column.word(), sum.miss, sum.bound, sum.is_rounding()))
        .collect();
    let expected: Vec<String> = case
        .misses
        .iter()
        .map(|(name, column, miss, bound, rounding)| format!("{name} {column} {miss} \u{b1}{bound} {rounding}"))
        .collect();
    let mut complaints = Vec::new();
    if sums.len() != case.sums {
        complaints.push(format!("{}: {} sums, expected {}", case.table, sums.len(), case.sums));
    }
    if misses != expected {
        complaints.push(format!("{}: misses {misses:#?}, expected {expected:#?}", case.table));
    }
    if found.odd() != case.odd {
        complaints.push(format!("{}: odd {:#?}, expected {:#?}", case.table, found.odd(), case.odd));
    }
    if found.reconciled.closes() != case.misses.iter().all(|(.., rounding)| *rounding) {
        complaints.push(format!("{}: `closes` does not follow from its sums", case.table));
    }
    complaints
}

#[test]
fn each_table_gets_the_verdict_of_a_careful_reader() {
    let complaints: Vec<String> = CASES.iter().flat_map(complaints).collect();
    assert!(complaints.is_empty(), "{}", complaints.join("\n"));
}

#[derive(serde::Deserialize)]
struct Source {
    title: String,
    publisher: String,
    section: String,
    tag: String,
    tables: Vec<String>,
}

#[test]
fn each_table_has_its_source_and_its_case() {
    let sources: Vec<Source> = serde_yaml::from_str(&fs::read_to_string(folder().join("sources.yaml")).unwrap()).unwrap();
    let mut sourced: BTreeMap<String, u32> = BTreeMap::new();
    for source in &sources {
        assert!(["read", "cut", "secondary", "post", "computed"].contains(&source.tag.as_str()), "{}: tag `{}`", source.title, source.tag);
        assert!(!source.publisher.is_empty() && !source.section.is_empty(), "{}", source.title);
        for table in &source.tables {
            *sourced.entry(table.clone()).or_default() += 1;
        }
    }
    assert!(sourced.values().all(|count| *count == 1), "a table with two sources: {sourced:?}");
    let names = fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let tables: BTreeSet<String> = names.filter_map(|name| Some(name.strip_suffix(".csv")?.to_owned())).collect();
    let cases: BTreeSet<String> = CASES.iter().map(|case| case.table.to_owned()).collect();
    assert_eq!(tables, sourced.into_keys().collect(), "tables and sources.yaml");
    assert_eq!(tables, cases, "tables and cases.rs");
}

/// National Pork Producers Council sheet: 22 % stands for 21.3 % so that the shares add up to 100.
#[test]
fn a_share_that_was_forced_is_called_so() {
    let found = of("t02-primals");
    assert_eq!(found.reconciled.oddities[0].why, Why::Forced);
    assert!(found.reconciled.closes());
}

/// University of Missouri Extension, 2006: 51, 76 and 83 % of the carcass are listed, and nothing is held against 100.
#[test]
fn shares_of_a_part_are_not_forced_to_the_whole() {
    for (table, listed) in [("t30-beef-carcass", 51), ("t30-lamb-carcass", 76), ("t30-pork-carcass", 83)] {
        let loose = of(table).reconciled.loose;
        assert_eq!((loose[0].column, loose[0].found.whole()), (Column::Share, Some(listed)), "{table}");
    }
}

/// Kansas State University: five rows of a cutout all point to the 75 lb carcass that the readable part does not state.
#[test]
fn a_base_that_is_not_stated_is_found_from_the_rows() {
    let base = of("t15-lamb-cutout").reconciled.base.unwrap();
    assert_eq!((base.weight, base.origin), (75.0, BaseOrigin::Agreed));
    let retail = of("t12-beef-retail").reconciled.base.unwrap();
    assert_eq!((retail.weight, retail.origin), (430.0, BaseOrigin::Agreed));
}

#[test]
fn published_slips_are_told_by_their_kind() {
    let why = |table: &str, at: usize| of(table).reconciled.oddities[at].why.clone();
    assert_eq!(why("e07-beef-by-use", 0), Why::SubtotalAlone);
    assert_eq!(why("e08-copied-pork", 3), Why::Slip(Slip::Extra));
    assert_eq!(why("e17-tuna", 0), Why::Slip(Slip::Misread));
    assert_eq!(why("e19-drumstick-same-third-twice", 0), Why::CountedTwice);
    assert_eq!(why("j02-pork-shoulder-base", 0), Why::WrongBase { origin: BaseOrigin::Rows });
    assert!(of("t17-sheep-shares").reconciled.at_odds);
    // 32.8 lb of the carcass are in no row, and no row is blamed for it.
    assert_eq!(of("t09-beef-as-copied").reconciled.unexplained.len(), 1);
    assert_eq!(of("s04-turkey-two-samples").reconciled.unexplained.len(), 1);
}

/// The program itself, on every table: its exit status, and JSON that says the same.
#[test]
fn the_program_answers_for_each_table() {
    for case in CASES {
        let path = folder().join(format!("{}.csv", case.table));
        let output = Command::new(env!("CARGO_BIN_EXE_seamwise")).args(["reconcile", "--format", "json"]).arg(&path).output().unwrap();
        let closes = case.misses.iter().all(|(.., rounding)| *rounding);
        assert_eq!(output.status.code(), Some(i32::from(!closes)), "{}", case.table);
        let answer: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
        assert_eq!(answer["closes"], closes, "{}", case.table);
        assert_eq!(answer["sums"].as_array().unwrap().len(), case.sums, "{}", case.table);
        assert_eq!(answer["rows"].as_array().unwrap().len(), case.odd.len(), "{}", case.table);
        let text = String::from_utf8(output.stdout).unwrap();
        // Sums of decimals that a program with floating point gets wrong end in long rows of 0 or 9.
        assert!(!text.contains("00000") && !text.contains("99999"), "{}: {text}", case.table);
        let plain = Command::new(env!("CARGO_BIN_EXE_seamwise")).arg("reconcile").arg(&path).output().unwrap();
        let widest = String::from_utf8(plain.stdout).unwrap().lines().map(|line| line.chars().count()).max();
        // The first line holds the path as it was typed, which may be longer than a line.
        assert!(widest.unwrap() <= 80.max(path.display().to_string().len() + 1), "{}", case.table);
    }
}
