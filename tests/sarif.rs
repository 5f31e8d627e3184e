//! SARIF logs held against the published schema, for the findings of every test of a check.
//!
//! The schema, "Static Analysis Results Format (SARIF) Version 2.1.0 JSON Schema" (OASIS, 2020), is the file
//! `src/schema.json` of the package `serde-sarif` on crates.io, which also reads the logs here. It is not kept.
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

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use boon::{Compiler, SchemaIndex, Schemas};
use seamwise::finding::sarif::{Rule, render};
use seamwise::source::{Entry, Files};
use serde_json::Value;

fn answer_of(program: &str, words: &[&str]) -> String {
    let run = Command::new(program).args(words).current_dir(env!("CARGO_MANIFEST_DIR")).output().unwrap();
    assert!(run.status.success(), "{program}: {}", String::from_utf8_lossy(&run.stderr));
    String::from_utf8(run.stdout).unwrap()
}

/// Where cargo has put the sources of a package.
fn package_folder(name: &str) -> PathBuf {
    // Packages of other systems are not there, so only those of this one are asked for.
    let rustc = answer_of("rustc", &["-vV"]);
    let host = rustc.lines().find_map(|line| line.strip_prefix("host: ")).unwrap();
    let words = ["metadata", "--format-version", "1", "--offline", "--locked", "--filter-platform", host];
    let metadata: Value = serde_json::from_str(&answer_of(env!("CARGO"), &words)).unwrap();
    let package = metadata["packages"].as_array().unwrap().iter().find(|package| package["name"] == name).unwrap();
    Path::new(package["manifest_path"].as_str().unwrap()).parent().unwrap().to_owned()
}

fn published() -> (Schemas, SchemaIndex) {
    let text = fs::read_to_string(package_folder("serde-sarif").join("src/schema.json")).unwrap();
    let schema: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(schema["title"], "Static Analysis Results Format (SARIF) Version 2.1.0 JSON Schema");
    let (mut schemas, mut compiler) = (Schemas::new(), Compiler::new());
    compiler.enable_format_assertions();
    compiler.add_resource("sarif.json", schema).unwrap();
    let index = compiler.compile("sarif.json", &mut schemas).unwrap();
    (schemas, index)
}

fn rules() -> Vec<Rule<'static>> {
    let rule = |check: &&'static seamwise::checks::Check| {
        let info = &check.info;
        Rule { id: info.id, level: info.level, what: info.what, why: info.why, mend: info.mend, source: info.source }
    };
    seamwise::checks::all().iter().map(rule).collect()
}

fn log(files: &[(String, Vec<u8>)]) -> String {
    let files: Files = files.iter().map(|(path, bytes)| (path.clone(), Entry::File(bytes.clone()))).collect();
    let inspection = seamwise::inspect(files);
    render(&inspection.findings, &inspection.sources, &rules(), Some("shop/guides"))
}

#[test]
fn logs_follow_the_published_schema() {
    let (schemas, index) = published();
    let (fixtures, _) = fixtures::all(Path::new(env!("CARGO_MANIFEST_DIR")));
    let (mut told, mut results) = (BTreeSet::new(), 0);
    for fixture in &fixtures {
        let files: Vec<_> = fixture.files.iter().map(|(path, text)| (path.clone(), text.clone().into_bytes())).collect();
        let text = log(&files);
        let value: Value = serde_json::from_str(&text).unwrap();
        if let Err(error) = schemas.validate(&value, index) {
            panic!("{}: {error:#}\n{text}", fixture.from);
        }
        let parsed: serde_sarif::sarif::Sarif = serde_json::from_str(&text).unwrap();
        let run = &parsed.runs[0];
        for result in run.results.iter().flatten() {
            let rule = &run.tool.driver.rules.as_ref().unwrap()[usize::try_from(result.rule_index.unwrap()).unwrap()];
            assert_eq!(Some(&rule.id), result.rule_id.as_ref());
            told.insert(rule.id.clone());
            results += 1;
        }
    }
    assert!(results > 150 && told.len() > 60, "{results} results of {} checks", told.len());
}

/// The judge judges: a log without its tool, or with a level of our own, is refused.
#[test]
fn what_is_no_log_is_refused() {
    let (schemas, index) = published();
    let sound: Value = serde_json::from_str(&log(&[("a/b.yaml".to_owned(), b"title: x\n".to_vec())])).unwrap();
    schemas.validate(&sound, index).unwrap();
    let mut without_tool = sound.clone();
    without_tool["runs"][0].as_object_mut().unwrap().remove("tool");
    let mut own_level = sound;
    own_level["runs"][0]["results"][0]["level"] = "fault".into();
    for wrong in [without_tool, own_level] {
        assert!(schemas.validate(&wrong, index).is_err());
    }
}

/// Bytes, lines and columns of each place name the same letters of the file, mark and accents or not.
#[test]
fn places_name_the_same_letters_in_bytes_and_in_columns() {
    let guide = "title: Lämmerkeule – ein Stück\nspecies: lamb\nrevision: { number: eins }\nstart: { piece: keule, weight: 2,5 kg }\nyields: { keule-ohne: 105 % }\n";
    let marked = [b"\xef\xbb\xbf".as_slice(), guide.as_bytes()].concat();
    let windows = guide.replace('\n', "\r\n").into_bytes();
    for bytes in [guide.as_bytes().to_vec(), marked, windows] {
        let text = log(&[("guidebook.yaml".to_owned(), b"title: x\n".to_vec()), ("lamb/keule.yaml".to_owned(), bytes.clone())]);
        let value: Value = serde_json::from_str(&text).unwrap();
        let results = value["runs"][0]["results"].as_array().unwrap();
        assert!(results.len() >= 4, "{text}");
        for result in
            results.iter().filter(|result| result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] == "lamb/keule.yaml")
        {
            let region = &result["locations"][0]["physicalLocation"]["region"];
            let number = |key: &str| usize::try_from(region[key].as_u64().unwrap()).unwrap();
            let in_bytes = std::str::from_utf8(&bytes[number("byteOffset")..][..number("byteLength")]).unwrap();
            let whole = String::from_utf8(bytes.clone()).unwrap();
            let line = whole.trim_start_matches('\u{feff}').lines().nth(number("startLine") - 1).unwrap();
            assert_eq!(number("startLine"), number("endLine"));
            let in_columns: String =
                line.chars().skip(number("startColumn") - 1).take(number("endColumn") - number("startColumn")).collect();
            assert_eq!(in_bytes, in_columns);
            assert!(!in_bytes.is_empty());
        }
    }
}
