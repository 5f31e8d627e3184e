//! The tables of `tally`: their exact shape for programs, and that text, JSON and CSV say the same.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail"
)]

#[path = "commands/program.rs"]
mod program;

use std::collections::BTreeMap;
use std::path::Path;

use program::{Place, program, told};
use serde_json::Value;

/// Two steps whose shares of the start can be worked on paper:
///
/// | piece | low | typical | high |
/// |---|---|---|---|
/// | legs | 0.30 | 0.32 | 0.34 |
/// | body | 0.66 | 0.68 | 0.70 |
/// | crown | 0.80 · 0.66 | 0.85 · 0.68 | 0.90 · 0.70 |
/// | wings | 0.10 · 0.66 | 0.15 · 0.68 | 0.20 · 0.70 |
///
/// The body is what the legs leave; wings and crown share the body, and each can reach its end whatever the body is.
const PROCEDURE: &str = "
title: Legs, wings and crown
species: chicken
revision: { number: 1, date: 2026-01-05, author: a, approved-by: b, review-by: 2027-01-05 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 2 kg, temperature: 0–4 °C }
sources: [own judgement]
cautions: [protect-holding-hand, blade-away-from-body]
wear: [mesh-gauntlet]
steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut through the open joint.
    tools: [boning-knife]
    minutes: 1–3
    give:
      chicken-legs: { share: 30–34 %, typical: 32 %, pieces: 2, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut through the shoulder joint.
    tools: [boning-knife]
    minutes: 0.5–2
    give:
      chicken-wings: { share: 10–20 %, typical: 15 %, pieces: 2, use: bone }
      chicken-crown: { share: rest, use: retail }
    loss: 0
";

fn place(units: &str) -> Place {
    let place = Place::new();
    place.write("book/guidebook.yaml", &format!("title: Test\nlimits: us-food-code\nunits: {units}\n"));
    place.write("book/chicken/parts.yaml", PROCEDURE);
    place
}

#[test]
fn json_has_the_promised_shape() {
    let run = place("metric").run(&["tally", "book", "--format", "json"]);
    assert!(run.err.is_empty(), "{}", run.err);
    let answer: Value = serde_json::from_str(&run.out).unwrap();
    let share = |low: f64, typical: f64, high: f64| serde_json::json!({ "low": low, "typical": typical, "high": high });
    let with = |mut one: Value, other: Value| {
        one.as_object_mut().unwrap().extend(other.as_object().unwrap().clone());
        one
    };
    let piece = |piece: &str, end: bool, purpose: Option<&str>, share: Value| {
        with(serde_json::json!({ "piece": piece, "final": end, "use": purpose }), share)
    };
    let expected = serde_json::json!({
        "procedures": [{
            "id": "chicken/parts",
            "start": "chicken-whole",
            "pieces": [
                piece("chicken-legs", true, Some("retail"), share(0.3, 0.32, 0.34)),
                piece("chicken-body", false, None, share(0.66, 0.68, 0.7)),
                piece("chicken-wings", true, Some("bone"), share(0.066, 0.102, 0.14)),
                piece("chicken-crown", true, Some("retail"), share(0.528, 0.578, 0.63)),
            ],
            "loss": share(0.0, 0.0, 0.0),
            "uses": [
                with(serde_json::json!({ "use": "retail" }), share(0.86, 0.898, 0.934)),
                with(serde_json::json!({ "use": "bone" }), share(0.066, 0.102, 0.14)),
            ],
            "minutes": { "low": 1.5, "high": 5 },
            "cold": [
                { "piece": "chicken-legs", "low": 1.5, "high": 5 },
                { "piece": "chicken-body", "low": 1.5, "high": 5 },
                { "piece": "chicken-wings", "low": 1.5, "high": 5 },
                { "piece": "chicken-crown", "low": 1.5, "high": 5 },
            ],
        }],
        "chains": [],
    });
    assert_eq!(answer, expected, "{}", run.out);
}

#[test]
fn text_names_its_basis_and_the_printed_typicals_add_up() {
    let run = place("metric").run(&["tally", "book"]);
    for line in [
        "Legs, wings and crown (chicken/parts)",
        "Share of the start (chicken whole), worked at 2 kg.",
        "Chicken legs retail 30.0 32.0 34.0 0.600 0.640 0.680",
        "Chicken wings bone 6.6 10.2 14.0 0.132 0.204 0.280",
        "All together 100.0 2.000",
        "All retail 86.0 89.8 93.4 1.720 1.796 1.868",
        "Chicken body cut further 66.0 68.0 70.0 1.320 1.360 1.400",
        "Time for all steps: 1.5–5 minutes. Longest out of the cold: Chicken legs, 1.5–5",
    ] {
        let collapsed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(run.out.lines().any(|printed| collapsed(printed) == line), "`{line}` in\n{}", run.out);
    }
    assert!(run.out.contains("Low and high are bounds"), "{}", run.out);
}

#[test]
fn an_imperial_guidebook_is_tallied_in_pounds() {
    let run = place("imperial").run(&["tally", "book"]);
    // 2 kg are 4.409 lb; 0.32 of it 1.411.
    assert!(run.out.contains("  lb\n") || run.out.contains(" lb\n"), "{}", run.out);
    assert!(run.out.contains("1.411") && run.out.contains("4.409"), "{}", run.out);
}

#[test]
fn every_table_of_the_demo_fits_eighty_columns_and_adds_up_in_print() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR"));
    let text = told(program(demo).arg("tally").output().unwrap()).out;
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    let (mut sum, mut tables) = (0.0, 0);
    let mut inside = false;
    for line in text.lines() {
        // The numbers stand at the right: low, typical, high in percent, then the same as weights.
        let numbers: Vec<f64> = line.split_whitespace().rev().map_while(|word| word.parse().ok()).collect();
        if line.starts_with("Piece ") {
            (sum, inside) = (0.0, true);
        } else if line.starts_with("All together") {
            assert!((sum - 100.0_f64).abs() < 1e-6, "{sum} before\n{line}");
            (tables, inside) = (tables + 1, false);
        } else if inside && numbers.len() == 6 {
            sum += numbers[4];
        }
    }
    assert!(tables >= 4, "{text}");
}

#[test]
fn csv_and_json_of_the_demo_say_the_same() {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR"));
    let run = |format| told(program(demo).args(["tally", "--format", format]).output().unwrap()).out;
    let (csv, json) = (run("csv"), run("json"));
    assert!(csv.ends_with("\r\n") && csv.matches('\n').count() == csv.matches("\r\n").count());
    let answer: Value = serde_json::from_str(&json).unwrap();
    let mut expected: BTreeMap<(String, String, String), [f64; 3]> = BTreeMap::new();
    let mut typical_sums = Vec::new();
    for (table, key) in [("procedure", "procedures"), ("chain", "chains")] {
        for entry in answer[key].as_array().unwrap() {
            let start = entry["start"].as_str().unwrap();
            let shares = |value: &Value| ["low", "typical", "high"].map(|name| value[name].as_f64().unwrap());
            let id = entry["id"].as_str().unwrap_or(start);
            for piece in entry["pieces"].as_array().unwrap() {
                expected.insert((table.into(), id.into(), piece["piece"].as_str().unwrap().into()), shares(piece));
            }
            expected.insert((table.into(), id.into(), "loss".into()), shares(&entry["loss"]));
            let finals = entry["pieces"].as_array().unwrap().iter().filter(|piece| !piece["use"].is_null());
            typical_sums
                .push(finals.map(|piece| piece["typical"].as_f64().unwrap()).sum::<f64>() + entry["loss"]["typical"].as_f64().unwrap());
        }
    }
    for sum in typical_sums {
        assert!((sum - 1.0).abs() < 1e-6, "{sum}");
    }
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    let columns: Vec<String> = reader.headers().unwrap().iter().map(str::to_owned).collect();
    assert_eq!(columns, ["table", "id", "start", "piece", "final", "use", "low", "typical", "high", "cold-low", "cold-high"]);
    let mut found = BTreeMap::new();
    for record in reader.records() {
        let record = record.unwrap();
        let id = if &record[0] == "chain" { record[2].to_owned() } else { record[1].to_owned() };
        let shares = [6, 7, 8].map(|at| record[at].parse().unwrap());
        assert!(found.insert((record[0].to_owned(), id, record[3].to_owned()), shares).is_none(), "{record:?} stands twice");
    }
    assert_eq!(found, expected);
}
