//! Findings as a SARIF log, which code hosts and editors show beside the lines that are meant.
//!
//! SARIF 2.1.0 (Static Analysis Results Interchange Format, OASIS Standard, 2020): one run, a rule for each check
//! that found something, a result for each finding. Files are named relative to the guidebook. The log holds no
//! clock, machine or absolute path, so the same guidebook gives the same bytes.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use serde::Serialize;

use super::{Finding, Level, Place, SourceMap, SourceText};

/// What a check says of itself; the caller knows the checks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rule<'a> {
    /// Its id: `shares-exceed-whole`.
    pub id: &'a str,
    /// How grave its findings are.
    pub level: Level,
    /// What it finds, in a sentence or two.
    pub what: &'a str,
    /// Why that matters.
    pub why: &'a str,
    /// How to mend it.
    pub mend: &'a str,
    /// Where the rule comes from.
    pub source: &'a str,
}

/// The name under which the folder of the guidebook is known in the log.
const GUIDEBOOK: &str = "GUIDEBOOK";
/// The name of the folder from which the guidebook's folder is told.
const START: &str = "STARTFOLDER";
/// Where the shape of a log is published.
const SCHEMA: &str = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Log<'a> {
    #[serde(rename = "$schema")]
    schema: &'static str,
    version: &'static str,
    runs: [Run<'a>; 1],
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Run<'a> {
    tool: Tool<'a>,
    invocations: [Invocation; 1],
    original_uri_base_ids: BTreeMap<&'static str, Location>,
    column_kind: &'static str,
    default_encoding: &'static str,
    language: &'static str,
    results: Vec<FindingResult<'a>>,
}

#[derive(Serialize)]
struct Tool<'a> {
    driver: Driver<'a>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Driver<'a> {
    name: &'static str,
    version: &'static str,
    semantic_version: &'static str,
    short_description: Message,
    rules: Vec<RuleEntry<'a>>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct RuleEntry<'a> {
    id: &'a str,
    short_description: Message,
    full_description: Message,
    help: Message,
    default_configuration: Configuration,
}

#[derive(Serialize)]
struct Configuration {
    level: &'static str,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Invocation {
    execution_successful: bool,
}

#[derive(Serialize)]
struct Message {
    text: String,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct FindingResult<'a> {
    rule_id: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    rule_index: Option<usize>,
    level: &'static str,
    message: Message,
    locations: [PlaceEntry; 1],
    #[serde(skip_serializing_if = "Vec::is_empty")]
    related_locations: Vec<PlaceEntry>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct PlaceEntry {
    #[serde(skip_serializing_if = "Option::is_none")]
    id: Option<usize>,
    physical_location: Physical,
    #[serde(skip_serializing_if = "Option::is_none")]
    message: Option<Message>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Physical {
    artifact_location: Location,
    region: Region,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Location {
    #[serde(skip_serializing_if = "Option::is_none")]
    uri: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    uri_base_id: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    description: Option<Message>,
}

/// Lines and columns count from 1 and columns count characters; the end is one past the last character.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Region {
    start_line: u32,
    start_column: u32,
    end_line: u32,
    end_column: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    byte_offset: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    byte_length: Option<u32>,
}

/// The findings as a SARIF log, indented, with a line break at the end.
///
/// `rules` are the checks that may have found something. `folder` is where the guidebook lies, relative to where the
/// log is read and with forward slashes, when that is known: `procedures`.
#[must_use]
pub fn render(findings: &[Finding], sources: &SourceMap, rules: &[Rule<'_>], folder: Option<&str>) -> String {
    let told: Vec<&Rule<'_>> = rules.iter().filter(|rule| findings.iter().any(|finding| finding.check == rule.id)).collect();
    let results = findings
        .iter()
        .map(|finding| FindingResult {
            rule_id: finding.check,
            rule_index: told.iter().position(|rule| rule.id == finding.check),
            level: level(finding.level),
            message: Message { text: with_help(finding) },
            locations: [place(finding.place, sources, None, &finding.label)],
            related_locations: (0..).zip(&finding.related).map(|(id, also)| place(also.place, sources, Some(id), &also.text)).collect(),
        })
        .collect();
    let run = Run {
        tool: Tool { driver: driver(&told) },
        invocations: [Invocation { execution_successful: true }],
        original_uri_base_ids: folders(folder),
        column_kind: "unicodeCodePoints",
        default_encoding: "UTF-8",
        language: "en",
        results,
    };
    // Texts and numbers always make sound JSON; nothing is left to fail.
    let mut text = serde_json::to_string_pretty(&Log { schema: SCHEMA, version: "2.1.0", runs: [run] }).unwrap_or_default();
    text.push('\n');
    text
}

fn driver<'a>(told: &[&Rule<'a>]) -> Driver<'a> {
    let version = env!("CARGO_PKG_VERSION");
    let entry = |rule: &&Rule<'a>| RuleEntry {
        id: rule.id,
        short_description: Message { text: sentence(rule.what) },
        full_description: Message { text: format!("{} {}", sentence(rule.what), sentence(rule.why)) },
        help: Message { text: format!("{} Source: {}", sentence(rule.mend), sentence(rule.source)) },
        default_configuration: Configuration { level: level(rule.level) },
    };
    Driver {
        name: "seamwise",
        version,
        semantic_version: version,
        short_description: Message { text: "Checks guidebooks of breakdown procedures.".to_owned() },
        rules: told.iter().map(entry).collect(),
    }
}

/// What the bases of relative addresses are. None of them says where on a machine the guidebook lies.
fn folders(folder: Option<&str>) -> BTreeMap<&'static str, Location> {
    let described = |text: &str| Some(Message { text: text.to_owned() });
    let holds = described("The folder that holds guidebook.yaml.");
    let mut bases = BTreeMap::new();
    match folder {
        Some(folder) => {
            let uri = format!("{}/", address(folder.trim_end_matches('/')));
            bases.insert(GUIDEBOOK, Location { uri: Some(uri), uri_base_id: Some(START), description: holds });
            let start = described("The folder from which the check was run.");
            bases.insert(START, Location { uri: None, uri_base_id: None, description: start });
        }
        None => {
            bases.insert(GUIDEBOOK, Location { uri: None, uri_base_id: None, description: holds });
        }
    }
    bases
}

const fn level(level: Level) -> &'static str {
    match level {
        Level::Fault => "error",
        Level::Advice => "note",
    }
}

fn place(place: Place, sources: &SourceMap, id: Option<usize>, text: &str) -> PlaceEntry {
    PlaceEntry {
        id,
        physical_location: Physical {
            artifact_location: Location { uri: Some(address(sources.path(place.file))), uri_base_id: Some(GUIDEBOOK), description: None },
            region: region(place, sources.get(place.file)),
        },
        message: (!text.is_empty()).then(|| Message { text: sentence(text) }),
    }
}

fn region(place: Place, source: Option<&SourceText>) -> Region {
    let Some(source) = source else {
        return Region { start_line: 1, start_column: 1, end_line: 1, end_column: 1, byte_offset: None, byte_length: None };
    };
    let (start, end) = (source.line_column(place.span.start), source.line_column(place.span.end.max(place.span.start)));
    let bytes = source.byte_in_file(place.span.start).zip(source.byte_in_file(place.span.end.max(place.span.start)));
    Region {
        start_line: start.line,
        start_column: start.column,
        end_line: end.line,
        end_column: end.column,
        byte_offset: bytes.map(|(from, _)| from),
        byte_length: bytes.map(|(from, to)| to - from),
    }
}

/// The headline and what to do, as sentences: a viewer of SARIF shows one text.
fn with_help(finding: &Finding) -> String {
    if finding.help.is_empty() { sentence(&finding.message) } else { format!("{} {}", sentence(&finding.message), sentence(&finding.help)) }
}

/// A phrase as a sentence: it begins with a capital, unless with a name in backquotes, and ends with a stop.
fn sentence(phrase: &str) -> String {
    let phrase = phrase.trim();
    let mut letters = phrase.chars();
    let mut text: String = letters.next().map(char::to_uppercase).into_iter().flatten().chain(letters).collect();
    if !text.ends_with(['.', '!', '?', '…']) {
        text.push('.');
    }
    text
}

/// A path as a relative reference: what is not a letter, digit, `-`, `.`, `_`, `~` or a slash is percent-encoded
/// (RFC 3986, Uniform Resource Identifier: Generic Syntax, 2005, section 2). A colon is too, so that no first part
/// can be taken for a scheme.
fn address(path: &str) -> String {
    let mut address = String::with_capacity(path.len());
    for byte in path.bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b'~' | b'/') {
            address.push(char::from(byte));
        } else {
            // Writing to a string does not fail.
            let _ = write!(address, "%{byte:02X}");
        }
    }
    address
}

#[cfg(test)]
mod tests;
