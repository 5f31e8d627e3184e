//! The house rules of the code, as tests: arrows between rooms, budgets, module texts, the parity of check
//! files with their list, and paths that documents name. Each failure prints what mends it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail, and this one reads the project"
)]

#[path = "tidy/parity.rs"]
mod parity;
#[path = "tidy/rust_text.rs"]
mod rust_text;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use rust_text::{code_only, functions, imported_rooms};

/// Which rooms a room may import. A new arrow is a decision: it is added here, alone in its commit, with its reason.
const ARROWS: &[(&str, &[&str])] = &[
    ("finding", &[]),
    ("source", &["finding"]),
    ("model", &["finding"]),
    ("analysis", &["finding", "model"]),
    ("checks", &["finding", "model", "analysis"]),
    ("figures", &["model", "analysis"]),
    ("site", &["finding", "model", "analysis", "figures", "checks"]),
    ("cli", &["finding", "source", "model", "analysis", "checks", "figures", "site"]),
];

/// Single files that may import more than their room: documents become the model in `lower` alone, and tests of
/// checks begin with texts and, for a theme, end with pages.
const EXCEPTIONS: &[(&str, &[&str])] = &[("model/lower", &["source"]), ("checks/testing.rs", &["source", "site"])];

const FILE_BUDGET: usize = 400;
const CHECK_BUDGET: usize = 300;
const FUNCTION_BUDGET: usize = 80;
const MEDIAN_BUDGET: usize = 150;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// All files below `folder` whose names end so, as paths relative to the project, sorted.
fn files_below(folder: &str, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![root().join(folder)];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() && entry.file_name() != "node_modules" {
                folders.push(path);
            } else if path.to_string_lossy().ends_with(ending) {
                found.push(path.strip_prefix(root()).unwrap().to_owned());
            }
        }
    }
    found.sort();
    found
}

fn read(path: &Path) -> String {
    fs::read_to_string(root().join(path)).unwrap()
}

fn report(complaints: &[String]) {
    assert!(complaints.is_empty(), "\n{}\n", complaints.join("\n"));
}

#[test]
fn rooms_import_only_what_they_may() {
    let mut complaints = Vec::new();
    for path in files_below("src", ".rs") {
        let inside = path.strip_prefix("src").unwrap().to_string_lossy().into_owned();
        let Some((room, _)) = inside.split_once('/') else { continue };
        let Some((_, allowed)) = ARROWS.iter().find(|(name, _)| *name == room) else {
            complaints
                .push(format!("src/{inside}: the room `{room}` is not in ARROWS of tests/tidy.rs: add it there with what it may import"));
            continue;
        };
        let more = EXCEPTIONS.iter().filter(|(start, _)| inside.starts_with(start)).flat_map(|(_, more)| more.iter());
        let allowed: BTreeSet<&str> = allowed.iter().chain(more).copied().chain([room]).collect();
        for (line, imported) in imported_rooms(&code_only(&read(&path))) {
            let known = ARROWS.iter().any(|(name, _)| *name == imported);
            if known && !allowed.contains(imported.as_str()) {
                complaints.push(format!("src/{inside}:{line}: `{room}` must not import `{imported}`: pass what is needed in, or move the code to a room that may"));
            }
        }
    }
    report(&complaints);
}

/// Only `cli` meets disk, clock, environment and terminal; proc-macro inclusion at build time is no disk access.
#[test]
fn only_cli_meets_the_outside() {
    let mut complaints = Vec::new();
    for path in files_below("src", ".rs") {
        let inside = path.strip_prefix("src").unwrap().to_string_lossy().into_owned();
        if inside.starts_with("cli/") || inside == "main.rs" {
            continue;
        }
        for (line, text) in (1..).zip(code_only(&read(&path)).lines()) {
            for word in [
                "std::fs",
                "std::env::",
                "SystemTime",
                "Instant::now",
                "std::io::stdout",
                "std::io::stderr",
                "std::process",
                "std::net",
                "println!",
            ] {
                if text.contains(word) {
                    complaints.push(format!("src/{inside}:{line}: `{word}` outside `cli`: let `cli` do it and pass the result in"));
                }
            }
        }
    }
    report(&complaints);
}

#[test]
fn files_and_functions_keep_their_budgets() {
    let mut complaints = Vec::new();
    let mut lengths = Vec::new();
    let paths: Vec<PathBuf> = [files_below("src", ".rs"), files_below("tests", ".rs"), files_below("benches", ".rs")].concat();
    for path in paths {
        let text = read(&path);
        let length = text.lines().count();
        let shown = path.to_string_lossy();
        let budget = if shown.starts_with("src/checks/") && shown.matches('/').count() == 3 { CHECK_BUDGET } else { FILE_BUDGET };
        if length > budget {
            complaints.push(format!("{shown}: {length} lines, budget {budget}: split it by idea"));
        }
        if shown.starts_with("src/") {
            lengths.push(length);
        }
        for (name, line, length) in functions(&text) {
            if length > FUNCTION_BUDGET {
                complaints.push(format!("{shown}:{line}: fn {name} has {length} lines, budget {FUNCTION_BUDGET}: split it by idea"));
            }
        }
    }
    lengths.sort_unstable();
    let median = lengths.get(lengths.len() / 2).copied().unwrap_or(0);
    if median > MEDIAN_BUDGET {
        complaints.push(format!("src/: the median file has {median} lines, budget {MEDIAN_BUDGET}: split the largest by idea"));
    }
    report(&complaints);
}

#[test]
fn every_file_says_what_it_holds() {
    let mut complaints = Vec::new();
    for path in [files_below("src", ".rs"), files_below("tests", ".rs"), files_below("benches", ".rs")].concat() {
        if !read(&path).starts_with("//!") {
            complaints.push(format!("{}: begin with a module text, `//! What it holds`", path.display()));
        }
    }
    for path in files_below("src/reference", ".yaml") {
        if !read(&path).starts_with('#') {
            complaints.push(format!("{}: begin with a comment that says what it holds and whence", path.display()));
        }
    }
    report(&complaints);
}

#[test]
fn each_check_file_stands_in_the_list_and_names_the_wrong_thing() {
    let files: BTreeSet<String> = files_below("src/checks", ".rs")
        .iter()
        .map(|path| path.strip_prefix("src/checks").unwrap().with_extension("").to_string_lossy().into_owned())
        .filter(|path| path.contains('/'))
        .collect();
    let mut complaints = parity::complaints(&read(Path::new("src/checks/mod.rs")), &files);
    for check in seamwise::checks::all() {
        let info = &check.info;
        let file = format!("{}/{}", info.group.word(), info.id.replace('-', "_"));
        if !files.contains(&file) {
            complaints.push(format!("the check `{}` of the group `{}` belongs into src/checks/{file}.rs", info.id, info.group.word()));
        }
        let first = info.id.split('-').next().unwrap_or("");
        if ["avoid", "use", "prefer", "must", "no", "never", "ensure", "require"].contains(&first) {
            complaints.push(format!("`{}` gives advice: name the wrong thing, as in `shares-exceed-whole`", info.id));
        }
        for (part, text) in
            [("what", info.what), ("why", info.why), ("example", info.example), ("mend", info.mend), ("source", info.source)]
        {
            if text.trim().len() < 8 {
                complaints.push(format!("`{}`: its text lacks `{part}`", info.id));
            }
        }
        let tests = read(Path::new(&format!("src/checks/{file}.rs")));
        if tests.matches("#[test]").count() < 2 {
            complaints.push(format!("src/checks/{file}.rs: add two tests at least, one where it must stay silent"));
        }
    }
    report(&complaints);
}

/// Every check id that a room reports must have its file, so that `inspect --about` can explain it.
#[test]
fn every_reported_check_has_a_text() {
    let known: BTreeSet<&str> = seamwise::checks::all().iter().map(|check| check.info.id).collect();
    let mut complaints = Vec::new();
    for path in [files_below("src/source", ".rs"), files_below("src/model", ".rs")].concat() {
        let text = read(&path);
        for call in ["Finding::fault(", "Finding::advice("] {
            for (at, _) in text.match_indices(call) {
                let rest = &text[at + call.len()..];
                let Some(id) = rest.trim_start().strip_prefix('"').and_then(|rest| rest.split('"').next()) else { continue };
                if !known.contains(id) {
                    complaints.push(format!(
                        "{}: `{id}` has no file in src/checks: write src/checks/form/{}.rs",
                        path.display(),
                        id.replace('-', "_")
                    ));
                }
            }
        }
    }
    complaints.sort();
    complaints.dedup();
    report(&complaints);
}

#[test]
fn paths_that_documents_name_are_there() {
    let mut complaints = Vec::new();
    for document in ["README.md", "DEVELOPERS.md"] {
        let Ok(text) = fs::read_to_string(root().join(document)) else { continue };
        for (line, content) in (1..).zip(text.lines()) {
            for named in content.split('`').skip(1).step_by(2) {
                let tops = ["src/", "tests/", "themes/", "schemas/", "procedures/", "benches/", ".ci/", "site/"];
                let path = named.trim_end_matches('/');
                if tops.iter().any(|top| named.starts_with(top)) && !path.contains(['<', '*', ' ', '{']) && !root().join(path).exists() {
                    complaints.push(format!("{document}:{line}: `{named}` is not there: correct the path"));
                }
            }
        }
    }
    report(&complaints);
}
