//! Findings as the machine-readable answer that the format promises.
//!
//! `{ "faults": 1, "advice": 0, "findings": [ { "check", "level", "file", "line", "column", "message", "help" } ] }`;
//! lines and columns count from 1, columns in characters; a finding without help has an empty one.

use serde::Serialize;

use super::{Finding, Level, SourceMap};

/// The whole answer.
#[derive(Debug, Serialize)]
pub struct Answer<'a> {
    /// How many faults there are.
    pub faults: usize,
    /// How many pieces of advice there are.
    pub advice: usize,
    /// The findings in the order in which they were given.
    pub findings: Vec<Entry<'a>>,
}

/// One finding.
#[derive(Debug, Serialize)]
pub struct Entry<'a> {
    /// The id of the check.
    pub check: &'a str,
    /// `fault` or `advice`.
    pub level: &'static str,
    /// The file, relative to the guidebook.
    pub file: &'a str,
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
    /// What is wrong.
    pub message: &'a str,
    /// What to do; may be empty.
    pub help: &'a str,
}

/// The findings as a value that can be written out or put into a larger answer.
#[must_use]
pub fn answer<'a>(findings: &'a [Finding], sources: &'a SourceMap) -> Answer<'a> {
    let entry = |finding: &'a Finding| {
        let at = sources.line_column(finding.place);
        Entry {
            check: finding.check,
            level: finding.level.word(),
            file: sources.path(finding.place.file),
            line: at.line,
            column: at.column,
            message: &finding.message,
            help: &finding.help,
        }
    };
    let count = |level| findings.iter().filter(|finding| finding.level == level).count();
    Answer { faults: count(Level::Fault), advice: count(Level::Advice), findings: findings.iter().map(entry).collect() }
}

/// The findings as JSON, indented, with a line break at the end.
#[must_use]
pub fn render(findings: &[Finding], sources: &SourceMap) -> String {
    // Texts and numbers always make sound JSON; nothing is left to fail.
    let mut text = serde_json::to_string_pretty(&answer(findings, sources)).unwrap_or_default();
    text.push('\n');
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{Place, Span};

    #[test]
    fn the_answer_has_the_promised_keys_in_order() {
        let mut sources = SourceMap::default();
        let file = sources.add("pork/loin.yaml", "é: 1\nb: \"5–7 %\"\n");
        let place = |start, end| Place::new(file, Span::new(start, end));
        let findings = [
            Finding::fault("shares-exceed-whole", place(9, 18), "shares add to \"103 %\"").help("lower one"),
            Finding::advice("range-loose", place(4, 5), "x"),
        ];
        let expected = r#"{
  "faults": 1,
  "advice": 1,
  "findings": [
    {
      "check": "shares-exceed-whole",
      "level": "fault",
      "file": "pork/loin.yaml",
      "line": 2,
      "column": 4,
      "message": "shares add to \"103 %\"",
      "help": "Lower one."
    },
    {
      "check": "range-loose",
      "level": "advice",
      "file": "pork/loin.yaml",
      "line": 1,
      "column": 4,
      "message": "x",
      "help": ""
    }
  ]
}
"#;
        assert_eq!(render(&findings, &sources), expected);
        assert_eq!(render(&[], &sources), "{\n  \"faults\": 0,\n  \"advice\": 0,\n  \"findings\": []\n}\n");
    }
}
