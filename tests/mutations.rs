//! One mistake gives one finding: every guide of the demonstration is spoilt in one place at a time, in many ways, and
//! each time exactly one fault must be told, of the right check and on the right line.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail, and this one reads the demonstration"
)]

#[path = "mutations/bytes.rs"]
mod bytes;
#[path = "mutations/give.rs"]
mod give;
#[path = "mutations/guide.rs"]
mod guide;
#[path = "mutations/head.rs"]
mod head;
#[path = "mutations/order.rs"]
mod order;
#[path = "mutations/step.rs"]
mod step;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use guide::{Guide, Mistake};
use rayon::prelude::*;
use seamwise::finding::Level;
use seamwise::source::{Entry, Files};

/// All files of the demonstration.
fn demonstration() -> BTreeMap<String, Vec<u8>> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures");
    let mut found = BTreeMap::new();
    let mut folders = vec![root.clone()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
                found.insert(name, fs::read(&path).unwrap());
            }
        }
    }
    found
}

fn files(all: &BTreeMap<String, Vec<u8>>) -> Files {
    all.iter().map(|(path, bytes)| (path.clone(), Entry::File(bytes.clone()))).collect()
}

/// `path:line check` of every fault.
fn faults(files: Files) -> Vec<String> {
    let inspection = seamwise::inspect(files);
    let faults = inspection.findings.iter().filter(|finding| finding.level == Level::Fault);
    faults
        .map(|finding| {
            let at = inspection.sources.line_column(finding.place);
            format!("{}:{} {}", inspection.sources.path(finding.place.file), at.line, finding.check)
        })
        .collect()
}

fn guides(all: &BTreeMap<String, Vec<u8>>) -> Vec<Guide> {
    let beside = ["cuts/", "anatomy/", "courses/", "pages/", "pictures/"];
    let procedures = all
        .iter()
        .filter(|(path, _)| path.ends_with(".yaml") && path.contains('/') && !beside.iter().any(|folder| path.starts_with(folder)));
    procedures.map(|(path, bytes)| Guide::new(path, std::str::from_utf8(bytes).unwrap())).collect()
}

fn mistakes(guide: &Guide) -> Vec<Mistake> {
    let mut made =
        [head::mistakes(guide), step::mistakes(guide), give::mistakes(guide), order::mistakes(guide), bytes::mistakes(guide)].concat();
    // A key that a mistake brings along, and that the guide has already, would be a second mistake.
    let doubled = |bytes: &[u8]| {
        let text = String::from_utf8_lossy(bytes).into_owned();
        let keys: Vec<&str> = text
            .lines()
            .filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()))
            .filter_map(|line| line.split(':').next())
            .collect();
        keys.iter().enumerate().any(|(at, key)| keys[..at].contains(key))
    };
    made.retain(|mistake| mistake.check == "doubled-key" || !doubled(&mistake.bytes));
    made
}

#[test]
fn the_demonstration_is_sound() {
    let all = demonstration();
    assert!(guides(&all).len() >= 4, "too few guides to spoil");
    assert_eq!(faults(files(&all)), [""; 0]);
}

#[test]
fn each_mistake_gives_one_fault_at_its_line() {
    let all = demonstration();
    let mut complaints = Vec::new();
    for guide in guides(&all) {
        let mistakes = mistakes(&guide);
        let mut kinds: Vec<&str> = mistakes.iter().map(|mistake| mistake.kind).collect();
        kinds.sort_unstable();
        kinds.dedup();
        assert!(kinds.len() >= 40, "{}: {} kinds of mistakes, at least 40 are wanted", guide.path, kinds.len());
        // The files of other species play no part, and reading them each time would take most of the time.
        let species = guide.path.split('/').next().unwrap();
        let near: BTreeMap<String, Vec<u8>> =
            all.clone().into_iter().filter(|(path, _)| path == "guidebook.yaml" || path.contains(species)).collect();
        let missed: Vec<String> = mistakes
            .par_iter()
            .filter_map(|mistake| {
                let mut spoilt = near.clone();
                spoilt.insert(guide.path.clone(), mistake.bytes.clone());
                let found = faults(files(&spoilt));
                let expected = format!("{}:{} {}", guide.path, mistake.line, mistake.check);
                (found != [expected.clone()])
                    .then(|| format!("{}: expected {expected}\n    found {}", mistake.kind, found.join("\n          ")))
            })
            .collect();
        println!("{}: {} mistakes of {} kinds, {} missed", guide.path, mistakes.len(), kinds.len(), missed.len());
        complaints.extend(missed);
    }
    assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
}
