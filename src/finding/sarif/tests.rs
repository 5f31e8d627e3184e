//! Tests of the log: its shape key by key, places in characters and in bytes, addresses, and what it leaves out.

use serde_json::{Value, json};

use super::*;
use crate::finding::{FileId, Span};

const RULES: &[Rule<'_>] = &[
    Rule {
        id: "range-inverted",
        level: Level::Fault,
        what: "upside down",
        why: "Nothing lies in it.",
        mend: "Swap them",
        source: "common practice",
    },
    Rule { id: "unused", level: Level::Advice, what: "x", why: "x", mend: "x", source: "x" },
    Rule { id: "wide", level: Level::Advice, what: "Wide.", why: "Vague.", mend: "Narrow it.", source: "Format." },
];

fn log(findings: &[Finding], sources: &SourceMap, folder: Option<&str>) -> Value {
    serde_json::from_str(&render(findings, sources, RULES, folder)).unwrap()
}

fn at(file: FileId, start: u32, end: u32) -> Place {
    Place::new(file, Span::new(start, end))
}

#[test]
fn a_log_has_each_part_in_its_place() {
    let mut sources = SourceMap::default();
    let file = sources.add("pork/loin.yaml", "é: 1\nb: \"7–5 %\"\n");
    let findings = [
        Finding::fault("range-inverted", at(file, 9, 18), "the range is upside down")
            .help("write `5–7 %`")
            .label("here")
            .also(at(file, 0, 2), "as above"),
        Finding::advice("wide", at(file, 4, 5), "`1` is wide"),
    ];
    let log = log(&findings, &sources, Some("procedures"));
    assert_eq!(log["version"], "2.1.0");
    let run = &log["runs"][0];
    assert_eq!(run["columnKind"], "unicodeCodePoints");
    assert_eq!(run["originalUriBaseIds"]["GUIDEBOOK"]["uri"], "procedures/");
    assert_eq!(run["originalUriBaseIds"]["GUIDEBOOK"]["uriBaseId"], "STARTFOLDER");
    let rules = &run["tool"]["driver"]["rules"];
    assert_eq!(rules.as_array().map(Vec::len), Some(2), "only checks that found something");
    assert_eq!(
        rules[0],
        json!({
            "id": "range-inverted",
            "shortDescription": { "text": "Upside down." },
            "fullDescription": { "text": "Upside down. Nothing lies in it." },
            "help": { "text": "Swap them. Source: Common practice." },
            "defaultConfiguration": { "level": "error" },
        })
    );
    let location = json!({ "uri": "pork/loin.yaml", "uriBaseId": "GUIDEBOOK" });
    assert_eq!(
        run["results"],
        json!([
            {
                "ruleId": "range-inverted",
                "ruleIndex": 0,
                "level": "error",
                "message": { "text": "The range is upside down. Write `5–7 %`." },
                "locations": [{
                    "physicalLocation": {
                        "artifactLocation": location,
                        "region": { "startLine": 2, "startColumn": 4, "endLine": 2, "endColumn": 11, "byteOffset": 9, "byteLength": 9 },
                    },
                    "message": { "text": "Here." },
                }],
                "relatedLocations": [{
                    "id": 0,
                    "physicalLocation": {
                        "artifactLocation": location,
                        "region": { "startLine": 1, "startColumn": 1, "endLine": 1, "endColumn": 2, "byteOffset": 0, "byteLength": 2 },
                    },
                    "message": { "text": "As above." },
                }],
            },
            {
                "ruleId": "wide",
                "ruleIndex": 1,
                "level": "note",
                "message": { "text": "`1` is wide." },
                "locations": [{
                    "physicalLocation": {
                        "artifactLocation": location,
                        "region": { "startLine": 1, "startColumn": 4, "endLine": 1, "endColumn": 5, "byteOffset": 4, "byteLength": 1 },
                    },
                }],
            },
        ])
    );
}

#[test]
fn bytes_count_the_mark_and_stop_at_what_is_no_text() {
    let mut sources = SourceMap::default();
    let marked = sources.add("a.yaml", "é: 1\n");
    sources.set_mark(marked, 3);
    let spoilt = sources.add("b.yaml", "a\u{fffd}b: 1\n");
    let findings = [
        Finding::fault("wide", at(marked, 4, 5), "x"),
        Finding::fault("wide", at(spoilt, 0, 1), "x"),
        Finding::fault("wide", at(spoilt, 1, 4), "x"),
        Finding::fault("wide", at(spoilt, 8, 99), "x"),
    ];
    let log = log(&findings, &sources, None);
    let region = |at: usize| log["runs"][0]["results"][at]["locations"][0]["physicalLocation"]["region"].clone();
    assert_eq!(region(0), json!({ "startLine": 1, "startColumn": 4, "endLine": 1, "endColumn": 5, "byteOffset": 7, "byteLength": 1 }));
    assert_eq!(region(1), json!({ "startLine": 1, "startColumn": 1, "endLine": 1, "endColumn": 2, "byteOffset": 0, "byteLength": 1 }));
    assert_eq!(region(2), json!({ "startLine": 1, "startColumn": 2, "endLine": 1, "endColumn": 3 }));
    assert_eq!(region(3), json!({ "startLine": 1, "startColumn": 7, "endLine": 2, "endColumn": 1 }));
}

#[test]
fn addresses_are_relative_references() {
    assert_eq!(address("pork/loin-boneless_2.yaml"), "pork/loin-boneless_2.yaml");
    assert_eq!(address("a b/ü:#?%.yaml"), "a%20b/%C3%BC%3A%23%3F%25.yaml");
}

#[test]
fn nothing_found_is_a_log_too() {
    let log = log(&[], &SourceMap::default(), None);
    assert_eq!(log["runs"][0]["results"], json!([]));
    assert_eq!(log["runs"][0]["tool"]["driver"]["rules"], json!([]));
    assert_eq!(log["runs"][0]["originalUriBaseIds"]["GUIDEBOOK"].get("uri"), None);
}
