//! A new check needs two files: its own, and one line in the table. Who forgets the line is told it.
//!
//! The crate is copied, a check is added to the copy, and a small program of the copy prints the list of checks.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::disallowed_methods,
    reason = "a test may fail, and this one builds a copy of the crate"
)]

#[path = "tidy/parity.rs"]
mod parity;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A check as a contributor writes it.
const CHECK: &str = r#"//! Titles that shout.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "title-shouts",
        group: Group::Form,
        level: Level::Advice,
        what: "A title is in capitals throughout.",
        why: "Capitals are slow to read at the bench.",
        example: "title: PORK LOIN",
        mend: "Write it in small letters.",
        source: "Common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(title) = procedure.title.given() else { continue };
        if title.value.len() > 3 && title.value == title.value.to_uppercase() {
            report.add(CHECK.info.at(title.place, "the title shouts").help("Write it in small letters."));
        }
    }
}
"#;

/// Prints the findings of a guide that has the mistake.
const PROGRAM: &str = r##"//! Prints what the new check finds.
fn main() {
    let guide = "title: PORK LOIN\nspecies: pork\n";
    let files = [("guidebook.yaml", "title: G\n"), ("pork/a.yaml", guide)];
    let files = files.into_iter().map(|(path, text)| (path.to_owned(), seamwise::source::Entry::File(text.as_bytes().to_vec())));
    for finding in seamwise::inspect(files.collect()).findings {
        println!("{} {}", finding.check, finding.message);
    }
}
"##;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Copies a folder; what another function changes in the copy is left to it.
fn copy(from: &Path, to: &Path) {
    if from.is_dir() {
        for entry in fs::read_dir(from).unwrap() {
            let entry = entry.unwrap();
            copy(&entry.path(), &to.join(entry.file_name()));
        }
    } else if !to.ends_with("src/lib.rs") && !to.ends_with("src/checks/mod.rs") {
        write(to, &fs::read_to_string(from).unwrap());
    }
}

/// Writes what differs; what is the same keeps its time, so that a second run builds little.
fn write(to: &Path, text: &str) {
    if fs::read_to_string(to).is_ok_and(|there| there == text) {
        return;
    }
    fs::create_dir_all(to.parent().unwrap()).unwrap();
    fs::write(to, text).unwrap();
}

/// The table with the line of the new check, in its place.
fn with_line(table: &str) -> String {
    table.replacen("        theme_part_unused,\n", "        theme_part_unused,\n        title_shouts,\n", 1)
}

#[test]
fn two_files_make_a_check() {
    let copied = Path::new(env!("CARGO_TARGET_TMPDIR")).join("new-check");
    for name in ["Cargo.lock", "src"] {
        copy(&root().join(name), &copied.join(name));
    }
    // Under a name of its own, for it shares the folder of built dependencies with the crate itself.
    let manifest = fs::read_to_string(root().join("Cargo.toml")).unwrap();
    let manifest =
        manifest.replacen("name = \"seamwise\"", "name = \"copy-with-a-new-check\"", 1).replace("default-run = \"seamwise\"\n", "");
    write(&copied.join("Cargo.toml"), &format!("{manifest}\n[lib]\nname = \"seamwise\"\n"));
    fs::remove_file(copied.join("src/main.rs")).unwrap();
    // Rooms that come after the checks need not be built; that they are not needed is part of the proof.
    let after = ["pub mod cli;\n", "pub mod figures;\n", "pub mod site;\n"];
    let rooms = after.iter().fold(fs::read_to_string(root().join("src/lib.rs")).unwrap(), |text, room| text.replace(room, ""));
    write(&copied.join("src/lib.rs"), &rooms);
    write(&copied.join("src/checks/form/title_shouts.rs"), CHECK);
    write(&copied.join("src/checks/mod.rs"), &with_line(&fs::read_to_string(root().join("src/checks/mod.rs")).unwrap()));
    write(&copied.join("examples/findings.rs"), PROGRAM);
    let output = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
        .args(["run", "--quiet", "--offline", "--example", "findings"])
        .current_dir(&copied)
        // The dependencies are built already.
        .env("CARGO_TARGET_DIR", Path::new(env!("CARGO_TARGET_TMPDIR")).parent().unwrap())
        .output()
        .unwrap();
    let (found, told) = (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert!(output.status.success(), "{told}");
    assert!(found.lines().any(|line| line == "title-shouts the title shouts"), "{found}");
}

#[test]
fn who_forgets_the_line_is_told_it() {
    let table = fs::read_to_string(root().join("src/checks/mod.rs")).unwrap();
    let mut files: BTreeSet<String> = parity::listed(&table).0;
    assert_eq!(parity::complaints(&table, &files), [""; 0]);
    files.insert("form/title_shouts".to_owned());
    let told = "src/checks/form/title_shouts.rs is in no list: add the line `title_shouts,` to `form` in the table of src/checks/mod.rs";
    assert_eq!(parity::complaints(&table, &files), [told]);
    assert_eq!(parity::complaints(&with_line(&table), &files), [""; 0]);
    files.remove("form/tab_indent");
    let told = "src/checks/form/tab_indent.rs is listed and not there: write it, or take out its line in src/checks/mod.rs";
    assert_eq!(parity::complaints(&with_line(&table), &files), [told]);
    let turned = table.replacen("        tab_indent,\n        table_malformed,\n", "        table_malformed,\n        tab_indent,\n", 1);
    files.insert("form/tab_indent".to_owned());
    files.remove("form/title_shouts");
    assert_eq!(parity::complaints(&turned, &files), ["src/checks/mod.rs: `tab_indent,` belongs before `table_malformed,` in `form`"]);
}
