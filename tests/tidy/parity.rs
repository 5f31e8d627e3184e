//! The table of checks held against the files of checks.

use std::collections::BTreeSet;

/// The checks that the table lists, as `group/name`, and what is wrong with their order.
pub(crate) fn listed(table: &str) -> (BTreeSet<String>, Vec<String>) {
    let mut complaints = Vec::new();
    let mut listed = BTreeSet::new();
    let (mut group, mut earlier) = (String::new(), String::new());
    for line in table.split_once("\nchecks! {").map_or("", |(_, lines)| lines).lines() {
        let line = line.trim();
        if let Some(name) = line.strip_suffix(" {") {
            name.clone_into(&mut group);
            earlier.clear();
        } else if let Some(name) = line.strip_suffix(',') {
            if name < earlier.as_str() {
                complaints.push(format!("src/checks/mod.rs: `{name},` belongs before `{earlier},` in `{group}`"));
            }
            name.clone_into(&mut earlier);
            listed.insert(format!("{group}/{name}"));
        }
    }
    (listed, complaints)
}

/// What is wrong between the table and the files, as `group/name`; each complaint says what mends it.
pub(crate) fn complaints(table: &str, files: &BTreeSet<String>) -> Vec<String> {
    let (listed, mut complaints) = listed(table);
    for missing in files.difference(&listed) {
        let (group, name) = missing.split_once('/').unwrap_or(("", missing));
        complaints
            .push(format!("src/checks/{missing}.rs is in no list: add the line `{name},` to `{group}` in the table of src/checks/mod.rs"));
    }
    for missing in listed.difference(files) {
        complaints.push(format!("src/checks/{missing}.rs is listed and not there: write it, or take out its line in src/checks/mod.rs"));
    }
    complaints
}
