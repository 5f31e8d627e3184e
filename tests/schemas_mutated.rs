//! The samples with every key, each value of them replaced in turn by odd ones and each line left out: what a schema
//! then refuses, `inspect` must find at fault too. So no schema marks in an editor what the program reads.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the files of the project"
)]

#[path = "schemas/samples.rs"]
mod samples;
#[path = "schemas/validator.rs"]
mod validator;

use std::collections::BTreeMap;

use rayon::prelude::*;
use samples::{BARE, BESIDE, FULL};
use seamwise::finding::Level;
use seamwise::source::schema::Kind;
use seamwise::source::{Entry, Files};
use validator::{Validator, Verdict};

/// What may come from anywhere: of each kind of YAML, sound spellings of each kind of value, and slips in them.
/// `null` and `~` are left out: the program reads them as texts, and typed YAML as nothing.
const ODD: &[&str] = &[
    "",
    "x",
    "0",
    "1",
    "28",
    "-3",
    "1.5",
    "0.05",
    "1e3",
    "0415",
    "true",
    "no",
    "\" \"",
    "'7'",
    "[]",
    "{}",
    "[a-b, c]",
    "{ a: 3 % }",
    "rest",
    "all",
    "a.b",
    "a b",
    "é-ü",
    "5–7 %",
    "0.05 to 0.07",
    "101 %",
    "3 kg",
    "4 lb 3 oz",
    "-20 to -18 °C",
    "20 mm",
    "3–5",
    "2026-10-12",
    "2026-02-30",
    "3.40 / kg",
    "over 30 months",
    "chicken/whole",
    "../a.svg",
    "retail",
    "danger",
    "cut-glove",
];

/// A sample with one change.
struct Case {
    kind: Kind,
    /// Whether it is of a sample with every key.
    full: bool,
    path: &'static str,
    text: String,
    /// Why the schema refuses it.
    why: String,
}

/// The text with each value and each line changed in turn.
fn mutants(text: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut start = 0;
    for line in text.split_inclusive('\n') {
        found.push(format!("{}{}", &text[..start], &text[start + line.len()..]));
        for (colon, _) in line.match_indices(": ") {
            // The value ends where the line, the flow mapping or its entry does; a bracket inside is not looked into.
            let from = start + colon + 2;
            let length = text[from..].find(['\n', ',', '}']).unwrap_or(text.len() - from);
            let (before, after) = (&text[..from], &text[from + length..]);
            let blank = if after.starts_with('}') { " " } else { "" };
            found.extend(ODD.iter().map(|odd| format!("{before}{odd}{blank}{after}")));
        }
        for (bracket, _) in line.match_indices('[') {
            // The first item of a list in one line.
            let from = start + bracket + 1;
            let length = text[from..].find(['\n', ',', ']']).unwrap_or(text.len() - from);
            let (before, after) = (&text[..from], &text[from + length..]);
            found.extend(ODD.iter().map(|odd| format!("{before}{odd}{after}")));
        }
        start += line.len();
    }
    found
}

/// How often each check finds a fault in the file.
fn faults(path: &str, text: &str) -> BTreeMap<&'static str, usize> {
    let mut files = Files::new();
    for (path, text) in BESIDE {
        files.insert((*path).to_owned(), Entry::File(text.as_bytes().to_vec()));
    }
    files.insert(path.to_owned(), Entry::File(text.as_bytes().to_vec()));
    let inspection = seamwise::inspect(files);
    let mut found = BTreeMap::new();
    for finding in &inspection.findings {
        if finding.level == Level::Fault && inspection.sources.path(finding.place.file) == path {
            *found.entry(finding.check).or_default() += 1;
        }
    }
    found
}

#[test]
fn no_schema_refuses_what_the_program_reads() {
    let validator = Validator::new();
    let cases: Vec<Case> = [(FULL, true), (BARE, false)]
        .iter()
        .flat_map(|(samples, full)| samples.iter().map(|sample| (sample, *full)))
        .flat_map(|((kind, path, text), full)| {
            mutants(text).into_iter().map(move |text| Case { kind: *kind, full, path, text, why: String::new() })
        })
        .collect();
    let number = cases.len();
    let refused: Vec<Case> = cases
        .into_par_iter()
        .filter_map(|case| match validator.text(case.kind, &case.text) {
            Verdict::Refused(why) => Some(Case { why, ..case }),
            Verdict::Sound | Verdict::NoYaml => None,
        })
        .collect();
    // The samples name other files that are not there, so a mutant must have a fault more than its sample.
    let before: BTreeMap<(Kind, bool), BTreeMap<&str, usize>> = [(FULL, true), (BARE, false)]
        .iter()
        .flat_map(|(samples, full)| samples.iter().map(|(kind, path, text)| ((*kind, *full), faults(path, text))))
        .collect();
    let complaints: Vec<String> = refused
        .par_iter()
        .filter(|case| faults(case.path, &case.text).iter().all(|(check, count)| before[&(case.kind, case.full)].get(check) >= Some(count)))
        .map(|case| format!("{}: {}\n{}", case.path, case.why, case.text))
        .collect();
    assert!(number > 8000 && refused.len() > 4000, "{number} cases, {} refused", refused.len());
    assert!(complaints.is_empty(), "{} of {} of {number} cases:\n{}", complaints.len(), refused.len(), complaints.join("\n"));
}
