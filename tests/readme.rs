//! Every command in README is run in an empty folder and must work as it is printed.
//!
//! `cargo install` and `tests/run` are not run here: the one would build the program again, the other runs this test.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test may fail, and this one works on the disk")]

use std::fs;
use std::path::Path;
use std::process::Command;

/// Commands in `sh` blocks, without their comments, in the order in which they stand.
fn commands(readme: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut inside = false;
    for line in readme.lines() {
        match line {
            "```sh" => inside = true,
            "```" => inside = false,
            _ if inside => found.push(line.split("  #").next().unwrap_or(line).trim().to_owned()),
            _ => {}
        }
    }
    found
}

fn run(command: &str, folder: &Path) {
    let program = Path::new(env!("CARGO_BIN_EXE_seamwise"));
    let words: Vec<&str> = command.split_whitespace().collect();
    let (first, rest) = words.split_first().unwrap();
    assert_eq!(*first, "seamwise", "README has a command that this test does not know: {command}");
    let output = Command::new(program).args(rest).current_dir(folder).env("NO_COLOR", "1").output().unwrap();
    assert!(
        output.status.success(),
        "`{command}` of README: {}\n{}{}",
        output.status,
        String::from_utf8_lossy(&output.stdout),
        String::from_utf8_lossy(&output.stderr)
    );
}

#[test]
fn commands_of_readme_work_as_printed() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let readme = fs::read_to_string(root.join("README.md")).unwrap();
    assert!(readme.lines().count() <= 120, "README is longer than 120 lines");
    let folder = tempfile::tempdir().unwrap();
    let mut ran = 0;
    for command in commands(&readme) {
        match command.as_str() {
            "tests/run" => assert!(root.join("tests/run").exists()),
            command if command.starts_with("cargo install") => {}
            command if command.starts_with("cargo run --release -- ") => {
                // The main job, on the demo guidebook that lies in the current folder.
                let to = folder.path().join("demo-site");
                run(&format!("seamwise publish {} --to {}", root.join("procedures").display(), to.display()), folder.path());
                assert!(to.join("index.html").exists());
                ran += 1;
            }
            command => {
                run(command, folder.path());
                ran += 1;
            }
        }
    }
    assert!(ran >= 6, "README shows its commands");
    assert!(folder.path().join("site/index.html").exists(), "publish wrote site/ where it was called");
}

/// The first guide that README shows is a sound one.
#[test]
fn the_guide_in_readme_is_sound() {
    let readme = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md")).unwrap();
    let guide = readme.split("```yaml\n").nth(1).unwrap().split("```").next().unwrap();
    let file = |text: &str| seamwise::source::Entry::File(text.as_bytes().to_vec());
    let files = [("guidebook.yaml".to_owned(), file("title: First\nlimits: eu-853\n")), ("chicken/legs.yaml".to_owned(), file(guide))];
    let inspection = seamwise::inspect(files.into_iter().collect());
    assert!(inspection.findings.is_empty(), "{:#?}", inspection.findings);
}
