//! Whole files held against the schemas by an independent validator: the demo, samples with every key, mistakes,
//! and the texts with which the tests of all checks begin.
//!
//! The bar: what a schema refuses, `inspect` finds at fault in the same file. The other way round a schema knows
//! only part: `KNOWN` names the checks whose every case in a test it refuses.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the files of the project"
)]

#[path = "schemas/fixtures.rs"]
mod fixtures;
#[path = "schemas/known.rs"]
mod known;
#[path = "schemas/mistakes.rs"]
mod mistakes;
#[path = "schemas/samples.rs"]
mod samples;
#[path = "schemas/validator.rs"]
mod validator;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use known::KNOWN;
use mistakes::MISTAKES;
use samples::{BARE, BESIDE, FULL};
use seamwise::Inspection;
use seamwise::finding::Level;
use seamwise::source::schema::{Kind, schema};
use seamwise::source::{Entry, Files};
use serde_json::Value;
use validator::{Validator, Verdict};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn inspect(files: &[(String, String)]) -> Inspection {
    seamwise::inspect(files.iter().map(|(path, text)| (path.clone(), Entry::File(text.as_bytes().to_vec()))).collect::<Files>())
}

/// The checks of the faults in one file.
fn faults(inspection: &Inspection, path: &str) -> Vec<&'static str> {
    let here = |place| inspection.sources.path(place) == path;
    inspection
        .findings
        .iter()
        .filter(|finding| finding.level == Level::Fault && here(finding.place.file))
        .map(|finding| finding.check)
        .collect()
}

/// The documents of a guidebook: path and text.
fn documents(folder: &Path) -> Vec<(String, String)> {
    let mut files = Vec::new();
    for entry in walkdir::WalkDir::new(folder).sort_by_file_name() {
        let entry = entry.unwrap();
        let path = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().replace('\\', "/");
        if Kind::of_path(&path).is_some() {
            files.push((path, fs::read_to_string(entry.path()).unwrap()));
        }
    }
    files
}

/// Samples, and the files that they name.
fn with_those_beside(samples: &[(Kind, &str, &str)]) -> Vec<(String, String)> {
    let own = samples.iter().map(|(_, path, text)| (*path, *text));
    let beside = BESIDE.iter().copied().filter(|(path, _)| !samples.iter().any(|(_, own, _)| own == path));
    own.chain(beside).map(|(path, text)| (path.to_owned(), text.to_owned())).collect()
}

#[test]
fn the_demo_and_the_samples_are_sound() {
    let validator = Validator::new();
    let demo = documents(&root().join("procedures"));
    assert!(demo.len() >= 8, "{demo:?}");
    for (path, text) in &demo {
        assert_eq!(validator.text(Kind::of_path(path).unwrap(), text), Verdict::Sound, "{path}");
    }
    for (kind, path, text) in FULL.iter().chain(BARE) {
        assert_eq!(Kind::of_path(path), Some(*kind), "{path}");
        assert_eq!(validator.text(*kind, text), Verdict::Sound, "{path}");
    }
}

#[test]
fn inspect_finds_no_mistake_of_form_in_the_samples() {
    for samples in [FULL, BARE] {
        let files = with_those_beside(samples);
        let inspection = inspect(&files);
        let form = |check: &&str| seamwise::checks::find(check).is_none_or(|check| check.info.group == seamwise::checks::Group::Form);
        for (path, _) in &files {
            // A house edition is no mistake, but not read yet.
            let found: Vec<_> = faults(&inspection, path).into_iter().filter(form).filter(|check| *check != "edition-unread").collect();
            assert!(found.is_empty(), "{path}: {found:?}");
        }
    }
}

/// The samples hold each key of each schema, so that no key stays without a sound value in these tests.
#[test]
fn the_samples_hold_every_key() {
    for (kind, path, text) in FULL {
        for property in properties(&schema(*kind)) {
            assert!(text.contains(&format!("{property}:")), "{path}: `{property}` is in no sample: add it in tests/schemas/samples.rs");
        }
    }
}

fn properties(schema: &Value) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    if let Some(properties) = schema.get("properties").and_then(Value::as_object) {
        found.extend(properties.keys().cloned());
    }
    for below in ["$defs", "properties"].iter().filter_map(|keyword| schema.get(keyword)?.as_object()).flat_map(|below| below.values()) {
        found.extend(properties(below));
    }
    found
}

#[test]
fn each_mistake_is_refused_and_found() {
    let validator = Validator::new();
    let mut complaints = Vec::new();
    for (kind, from, to, check) in MISTAKES {
        let (_, path, sample) = FULL.iter().find(|(of, ..)| of == kind).unwrap();
        assert_eq!(sample.matches(from).count(), 1, "`{from}` must stand once in the sample of {path}");
        let text = sample.replace(from, to);
        if !matches!(validator.text(*kind, &text), Verdict::Refused(_)) {
            complaints.push(format!("{path}: `{to}`: the schema does not refuse it"));
        }
        let mut files = with_those_beside(FULL);
        files.iter_mut().filter(|(of, _)| of == path).for_each(|file| file.1.clone_from(&text));
        let found = faults(&inspect(&files), path);
        if !found.contains(check) {
            complaints.push(format!("{path}: `{to}`: inspect finds {found:?}, not {check}"));
        }
    }
    assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
}

/// The guidebooks of other tests: sound ones, such with faults, and one with odd names and spellings.
#[test]
fn whole_guidebooks_are_refused_only_where_they_are_at_fault() {
    let validator = Validator::new();
    let (mut sound, mut refused) = (0, 0);
    for entry in fs::read_dir(root().join("tests/guidebooks")).unwrap() {
        let files = documents(&entry.unwrap().path());
        let inspection = inspect(&files);
        for (path, text) in &files {
            match validator.text(Kind::of_path(path).unwrap(), text) {
                Verdict::Sound => sound += 1,
                verdict => {
                    refused += 1;
                    assert!(!faults(&inspection, path).is_empty(), "{path}: {verdict:?}, and inspect finds no fault in\n{text}");
                }
            }
        }
    }
    assert!(sound > 10, "{sound} sound, {refused} refused");
}

#[test]
fn what_a_schema_refuses_inspect_finds_at_fault() {
    let validator = Validator::new();
    let (fixtures, passed_over) = fixtures::all(root());
    assert!(fixtures.len() > 200, "{} fixtures, {passed_over} passed over", fixtures.len());
    let mut complaints = Vec::new();
    let mut cases: BTreeMap<&str, usize> = BTreeMap::new();
    for fixture in &fixtures {
        let inspection = inspect(&fixture.files);
        for (path, text) in &fixture.files {
            let Some(kind) = Kind::of_path(path) else { continue };
            let faults = faults(&inspection, path);
            let verdict = validator.text(kind, text);
            if verdict != Verdict::Sound && faults.is_empty() {
                complaints.push(format!("{}: {path}: {verdict:?}, and inspect finds no fault in\n{text}", fixture.from));
            }
            let Some(only) = faults.first().filter(|first| faults.iter().all(|fault| fault == *first)) else { continue };
            *cases.entry(only).or_default() += 1;
            if KNOWN.contains(only) && verdict == Verdict::Sound {
                complaints.push(format!("{}: {path}: {only} is among those that a schema knows, and it takes\n{text}", fixture.from));
            }
        }
    }
    complaints
        .extend(KNOWN.iter().filter(|check| !cases.contains_key(*check)).map(|check| format!("{check}: no test has a file with it alone")));
    assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
}
