//! Tests of checks are texts: YAML with comments that point at what must be found.
//!
//! Below a line, a comment with carets says where a finding begins, its level, its check, and a part of its
//! message: `#   ^^^ fault[range-inverted] upside down`. All findings of the guidebook must be named so, and
//! no others may appear. A comment that begins `#^1:1` stands for a finding at that line and column.

use std::fmt::Write as _;

use crate::finding::{Finding, SourceMap};
pub(crate) use crate::source::{Entry, Files};

/// The frame of the small guidebook that surrounds a tested text.
const GUIDEBOOK: &str = "title: A guidebook for tests\nlimits: eu-853\n";

/// The head of a procedure without steps; sound but for what the test adds.
pub(crate) const HEAD: &str = "title: Whole chicken\nspecies: chicken\nrevision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }\nstart: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }\ncautions: [protect-holding-hand, blade-away-from-body]\ntools: [boning-knife]\nwear: [mesh-gauntlet]\n";

/// Checks one procedure, given as a whole text.
#[track_caller]
pub(crate) fn procedure(text: &str) {
    files(&[("chicken/whole.yaml", text)]);
}

/// Checks the steps of a procedure, given from the line `steps:` on (or any keys beside it), under a sound head.
#[track_caller]
pub(crate) fn steps(text: &str) {
    procedure(&format!("{HEAD}{text}"));
}

/// Sound steps under the sound head.
pub(crate) const STEPS: &str = "steps:\n  - name: Halve\n    take: chicken-whole\n    do: Cut along the keel.\n    minutes: 1–2\n    give:\n      chicken-half: { share: 98–100 %, pieces: 2, use: retail }\n    loss: 0–2 %\n";

/// Checks keys that stand beside sound steps, under a sound head.
#[track_caller]
pub(crate) fn beside(text: &str) {
    procedure(&format!("{HEAD}{text}{STEPS}"));
}

/// Checks entries that are no texts, beside a sound guidebook; `expected` has a line for each finding, as in
/// `chicken/whole.yaml:1:10 fault[not-utf-8] 0xE9`.
#[track_caller]
pub(crate) fn entries(entries: Vec<(&str, Entry)>, expected: &[&str]) {
    let mut all = Files::new();
    all.insert("guidebook.yaml".to_owned(), Entry::File(GUIDEBOOK.as_bytes().to_vec()));
    all.insert("chicken/sound.yaml".to_owned(), Entry::File(format!("{HEAD}{STEPS}").into_bytes()));
    all.extend(entries.into_iter().map(|(path, entry)| (path.to_owned(), entry)));
    let inspection = inspected(all);
    compare(expected.iter().filter_map(|line| at_path(line)).collect(), &inspection.findings, &inspection.sources);
}

/// Checks a sound guidebook whose own theme holds these files; `expected` has a line for each finding, with paths inside
/// the theme: `styles/own.css:1:3 fault[theme-broken] never closed`.
#[track_caller]
pub(crate) fn theme(files: &[(&str, &str)], expected: &[&str]) {
    let book = "title: A guidebook for tests\nlimits: eu-853\ntheme: ours\n";
    let own = files.iter().map(|(path, text)| (format!("ours/{path}"), Entry::File((*text).into())));
    let all: Vec<(String, Entry)> = own.chain([("guidebook.yaml".to_owned(), Entry::File(book.into()))]).collect();
    let expected: Vec<String> =
        expected.iter().map(|line| if line.starts_with("guidebook") { (*line).to_owned() } else { format!("ours/{line}") }).collect();
    entries(
        all.iter().map(|(path, entry)| (path.as_str(), entry.clone())).collect(),
        &expected.iter().map(String::as_str).collect::<Vec<_>>(),
    );
}

/// Reads, checks, and tries the guidebook's own theme, as the commands do.
fn inspected(files: Files) -> crate::Inspection {
    let mut inspection = crate::inspect(files);
    let of_theme = inspection.verdict.checked().map_or_else(Vec::new, crate::site::theme_findings);
    inspection.findings.extend(of_theme);
    inspection
}

fn at_path(line: &str) -> Option<Expected> {
    let (place, rest) = line.split_once(' ')?;
    let (path, at) = place.split_once(':')?;
    let (line, column) = at.split_once(':')?;
    Some(expected(path, line.parse().ok()?, column.parse().ok()?, rest))
}

/// Checks files beside a sound `guidebook.yaml`, unless they bring their own.
#[track_caller]
pub(crate) fn files(texts: &[(&str, &str)]) {
    let mut all = Files::new();
    if !texts.iter().any(|(path, _)| *path == "guidebook.yaml") {
        all.insert("guidebook.yaml".to_owned(), Entry::File(GUIDEBOOK.as_bytes().to_vec()));
    }
    if !texts.iter().any(|(path, _)| {
        path.ends_with(".yaml")
            && path.split('/').count() == 2
            && !path.starts_with("cuts/")
            && !path.starts_with("anatomy/")
            && !path.starts_with("courses/")
    }) {
        all.insert("chicken/whole.yaml".to_owned(), Entry::File(format!("{HEAD}{STEPS}").into_bytes()));
    }
    for (path, text) in texts {
        all.insert((*path).to_owned(), Entry::File(text.as_bytes().to_vec()));
    }
    let inspection = inspected(all);
    let wanted = texts.iter().flat_map(|(path, text)| expectations(path, text)).collect();
    compare(wanted, &inspection.findings, &inspection.sources);
}

struct Expected {
    path: String,
    line: u32,
    column: u32,
    what: String,
    message: String,
}

#[track_caller]
fn compare(expected: Vec<Expected>, findings: &[Finding], sources: &SourceMap) {
    let mut unexpected: Vec<&Finding> = findings.iter().collect();
    let mut complaints = String::new();
    for want in &expected {
        let met = unexpected.iter().position(|finding| {
            let at = sources.line_column(finding.place);
            sources.path(finding.place.file) == want.path
                && at.line == want.line
                && at.column == want.column
                && format!("{}[{}]", finding.level.word(), finding.check) == want.what
                && finding.message.contains(&want.message)
        });
        match met {
            Some(at) => {
                unexpected.remove(at);
            }
            None => {
                let _ = writeln!(complaints, "not found:  {}:{}:{} {} {}", want.path, want.line, want.column, want.what, want.message);
            }
        }
    }
    for finding in unexpected {
        let at = sources.line_column(finding.place);
        let _ = writeln!(
            complaints,
            "unexpected: {}:{}:{} {}[{}] {}",
            sources.path(finding.place.file),
            at.line,
            at.column,
            finding.level.word(),
            finding.check,
            finding.message
        );
    }
    assert!(complaints.is_empty(), "\n{complaints}");
}

fn expectations(path: &str, text: &str) -> Vec<Expected> {
    let mut list = Vec::new();
    let mut line_above = 0;
    for (line, content) in (1_u32..).zip(text.lines()) {
        let Some(comment) = content.trim_start().strip_prefix('#') else {
            line_above = line;
            continue;
        };
        if let Some(stated) = comment.strip_prefix('^') {
            let Some((place, rest)) = stated.split_once(' ') else { continue };
            let Some((line, column)) = place.split_once(':').and_then(|(l, c)| Some((l.parse().ok()?, c.parse().ok()?))) else {
                list.extend(carets(path, content, line_above));
                continue;
            };
            list.push(expected(path, line, column, rest));
        } else {
            list.extend(carets(path, content, line_above));
        }
    }
    list
}

fn carets(path: &str, content: &str, line: u32) -> Option<Expected> {
    let column = content.chars().position(|c| c == '^')?;
    let rest = content.get(content.find('^')?..)?.trim_start_matches('^');
    rest.contains('[').then(|| expected(path, line, u32::try_from(column).unwrap_or(0) + 1, rest))
}

fn expected(path: &str, line: u32, column: u32, rest: &str) -> Expected {
    let rest = rest.trim();
    let (what, message) = rest.split_once(' ').unwrap_or((rest, ""));
    Expected { path: path.to_owned(), line, column, what: what.to_owned(), message: message.trim().to_owned() }
}
