//! Findings for people, as text: a headline, the authored line with carets, other places, what to do.
//!
//! Every finding is shown. The first of each file are drawn with their line; past `DRAWN_A_FILE` of one file or
//! `DRAWN` in all, each takes one line, so that hundreds stay readable and quick. One summary line ends the text.
//! Nothing is printed here, and no terminal is asked for its width.

use annotate_snippets::renderer::{DEFAULT_ERROR_STYLE, DEFAULT_HELP_STYLE, DEFAULT_WARNING_STYLE};
use unicode_width::UnicodeWidthStr;

use super::excerpt::{self, Mark};
use super::{FileId, Finding, Level, SourceMap};

/// How many findings of one file are drawn with their line.
pub const DRAWN_A_FILE: usize = 20;
/// How many findings are drawn with their line in all.
pub const DRAWN: usize = 100;

/// How findings are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style {
    /// Colours for a terminal, as ANSI escapes.
    pub color: bool,
    /// How many columns a line may take; under 40 counts as 40.
    pub width: usize,
}

impl Default for Style {
    fn default() -> Self {
        Self { color: false, width: 80 }
    }
}

/// All findings in the order given, grouped by file, and a summary line; `accepted` is how many more were waived or
/// turned off.
#[must_use]
pub fn render(findings: &[Finding], accepted: usize, sources: &SourceMap, style: Style) -> String {
    let style = Style { width: style.width.max(40), ..style };
    let mut out = String::new();
    let groups: Vec<&[Finding]> = findings.chunk_by(|one, next| one.place.file == next.place.file).collect();
    let mut left = DRAWN;
    for group in &groups {
        if groups.len() > 1 {
            let path = group.first().map_or("", |finding| sources.path(finding.place.file));
            out.push_str(&painted(&format!("{}: {}", clean(path), counted(group)), "\u{1b}[1m", style));
            out.push_str("\n\n");
        }
        let drawn = group.len().min(DRAWN_A_FILE).min(left);
        left -= drawn;
        let (first, rest) = group.split_at(drawn);
        for finding in first {
            draw(&mut out, finding, sources, style);
            out.push('\n');
        }
        for finding in rest {
            out.push_str(&line(finding, sources));
            out.push('\n');
        }
        if !rest.is_empty() {
            out.push('\n');
        }
    }
    out.push_str(&summary(findings, accepted));
    out.push('\n');
    out
}

/// One finding on one line: `pork/loin.yaml:31:7 fault[shares-exceed-whole] shares add to …`.
#[must_use]
pub fn line(finding: &Finding, sources: &SourceMap) -> String {
    let at = sources.line_column(finding.place);
    let path = clean(sources.path(finding.place.file));
    format!("{path}:{}:{} {}[{}] {}", at.line, at.column, finding.level.word(), finding.check, clean(&finding.message))
}

/// How many faults and pieces of advice there are in how many files, and how many were waived or turned off.
#[must_use]
pub fn summary(findings: &[Finding], accepted: usize) -> String {
    let mut files: Vec<FileId> = findings.iter().map(|finding| finding.place.file).collect();
    files.sort_unstable();
    files.dedup();
    let found = match files.len() {
        0 => "no faults".to_owned(),
        1 => format!("{} in 1 file", counted(findings)),
        many => format!("{} in {many} files", counted(findings)),
    };
    match accepted {
        0 => found,
        1 => format!("{found}; 1 more piece of advice is waived or turned off"),
        many => format!("{found}; {many} more pieces of advice are waived or turned off"),
    }
}

fn counted(findings: &[Finding]) -> String {
    let faults = findings.iter().filter(|finding| finding.level == Level::Fault).count();
    let faults_text = match faults {
        0 => "no faults".to_owned(),
        1 => "1 fault".to_owned(),
        many => format!("{many} faults"),
    };
    match findings.len() - faults {
        0 => faults_text,
        1 => format!("{faults_text}, 1 piece of advice"),
        many => format!("{faults_text}, {many} pieces of advice"),
    }
}

fn draw(out: &mut String, finding: &Finding, sources: &SourceMap, style: Style) {
    let level = match finding.level {
        Level::Fault => DEFAULT_ERROR_STYLE,
        Level::Advice => DEFAULT_WARNING_STYLE,
    };
    let headline = format!("{}[{}]: {}", finding.level.word(), finding.check, clean(&finding.message));
    let tag = finding.level.word().len() + finding.check.len() + 2;
    for (at, text) in wrapped(&headline, style.width, 4).iter().enumerate() {
        let (head, tail) = text.split_at(if at == 0 { tag.min(text.len()) } else { 0 });
        out.push_str(&painted(head, &level.render().to_string(), style));
        out.push_str(&painted(tail, "\u{1b}[1m", style));
        out.push('\n');
    }
    let marks: Vec<Mark<'_>> = finding.related.iter().map(|related| Mark { place: related.place, text: &related.text }).collect();
    let excerpt = excerpt::draw(finding, &marks, sources, style);
    out.push_str(&excerpt.text);
    let mut notes: Vec<(&str, String)> = excerpt.left_over.iter().map(|text| ("note", text.clone())).collect();
    if !finding.help.is_empty() {
        notes.push(("help", clean(&finding.help)));
    }
    for (word, text) in notes {
        let indent = excerpt.gutter + 5 + word.len();
        let lines = wrapped(&format!("{} = {word}: {text}", " ".repeat(excerpt.gutter)), style.width, indent);
        for (at, text) in lines.iter().enumerate() {
            let sign = format!(" = {word}:");
            let shown = if at == 0 {
                text.replacen(&sign, &painted(&sign, &DEFAULT_HELP_STYLE.render().to_string(), style), 1)
            } else {
                text.clone()
            };
            out.push_str(&shown);
            out.push('\n');
        }
    }
}

/// The text between the escape and its reset, or the text alone.
fn painted(text: &str, escape: &str, style: Style) -> String {
    if style.color && !text.is_empty() { format!("{escape}{text}\u{1b}[0m") } else { text.to_owned() }
}

/// On one line, without letters that could drive a terminal or turn its writing around.
pub(super) fn clean(text: &str) -> String {
    let turns = |letter: char| matches!(letter, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{200e}' | '\u{200f}');
    text.chars()
        .map(|letter| match letter {
            '\n' | '\t' | '\r' => ' ',
            _ if letter.is_control() || turns(letter) => '\u{fffd}',
            _ => letter,
        })
        .collect()
}

/// Broken at blanks so that each line fits; a word longer than a line is broken anywhere. Lines after the first are
/// indented.
fn wrapped(text: &str, width: usize, indent: usize) -> Vec<String> {
    let mut lines = Vec::new();
    let mut current = String::new();
    let mut fresh = true;
    let mut words: Vec<&str> = text.split_inclusive(' ').collect();
    words.reverse();
    while let Some(word) = words.pop() {
        if UnicodeWidthStr::width(current.as_str()) + UnicodeWidthStr::width(word.trim_end()) <= width {
            current.push_str(word);
            fresh = fresh && word.trim().is_empty();
        } else if fresh {
            let room = width.saturating_sub(UnicodeWidthStr::width(current.as_str())).max(1);
            let (head, tail) = word.split_at(fitting(word, room));
            current.push_str(head);
            words.push(tail);
            lines.push(std::mem::replace(&mut current, " ".repeat(indent)));
        } else {
            lines.push(std::mem::replace(&mut current, " ".repeat(indent)).trim_end().to_owned());
            words.push(word);
            fresh = true;
        }
    }
    lines.push(current.trim_end().to_owned());
    lines
}

/// How many bytes of `text` fit into `room` columns, at least one letter.
fn fitting(text: &str, room: usize) -> usize {
    let mut used = 0;
    for (at, letter) in text.char_indices() {
        used += unicode_width::UnicodeWidthChar::width(letter).unwrap_or(0);
        if used > room && at > 0 {
            return at;
        }
    }
    text.len()
}

#[cfg(test)]
mod tests;
