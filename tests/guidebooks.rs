//! Whole guidebooks, and everything the terminal shows of them.
//!
//! Each folder `tests/guidebooks/<name>` is a guidebook, and `tests/guidebooks/<name>.snap` the text. After a change of
//! words, read the new text as a newcomer would, then accept it with `INSTA_UPDATE=always cargo test --test guidebooks`.
#![allow(clippy::unwrap_used, clippy::panic, clippy::disallowed_methods, reason = "a test may fail, and this one reads guidebooks")]

use std::fs;
use std::path::{Path, PathBuf};

use seamwise::finding::Level;
use seamwise::finding::text::{Style, render};
use seamwise::source::{Entry, Files};

/// The guidebooks, and how many faults and how much advice each must have, whatever the words.
const GUIDEBOOKS: &[(&str, usize, usize)] = &[
    ("hundreds-of-findings", 387, 0),
    ("loin-over-the-whole", 1, 0),
    ("loin-saw-without-loss", 0, 1),
    ("loin-sirloin-first", 0, 1),
    ("loin-sound", 0, 0),
    ("loin-trimmed-too-early", 1, 0),
    ("round-range-too-wide", 0, 1),
    ("tiny-sound", 0, 0),
];

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/guidebooks")
}

fn files(root: &Path) -> Files {
    let mut found = Files::new();
    let mut folders = vec![root.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
                found.insert(name, Entry::File(fs::read(&path).unwrap()));
            }
        }
    }
    found
}

#[test]
fn every_guidebook_is_shown_as_before() {
    for (name, faults, advice) in GUIDEBOOKS {
        let inspection = seamwise::inspect(files(&folder().join(name)));
        let count = |level| inspection.findings.iter().filter(|finding| finding.level == level).count();
        assert_eq!((count(Level::Fault), count(Level::Advice)), (*faults, *advice), "{name}");
        let shown = render(&inspection.findings, inspection.accepted.len(), &inspection.sources, Style::default());
        let mut settings = insta::Settings::clone_current();
        settings.set_snapshot_path("guidebooks");
        settings.set_prepend_module_to_snapshot(false);
        settings.set_omit_expression(true);
        settings.bind(|| insta::assert_snapshot!(*name, shown));
    }
}

/// A snapshot without its guidebook would be read by no one.
#[test]
fn no_snapshot_is_left_over() {
    for entry in fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let known = path.extension().is_none_or(|ending| ending != "snap") || GUIDEBOOKS.iter().any(|(known, ..)| *known == name);
        assert!(known, "tests/guidebooks/{name}.snap belongs to no guidebook: delete it");
    }
}
