//! What the parser refuses, said in plain words at the place that the author can mend.
//!
//! One refusal gives one finding. This file sees the text, the parser's complaint and what was read last; it
//! does not know what keys there are.

use granit_parser::{ErrorKind, ScanError};

use super::yaml::{DEPTH_LIMIT, Trail, line_start};
use crate::finding::{FileId, Finding, Place, Span};

/// The finding for lists and mappings that stand too deep in one another.
pub(super) fn too_deep(place: Place) -> Finding {
    Finding::fault("too-deep", place, format!("lists and mappings stand in one another more than {DEPTH_LIMIT} deep"))
        .help("take the nesting apart")
}

/// The finding for what the parser refused.
pub(super) fn explain(text: &str, file: FileId, error: &ScanError, trail: Trail) -> Finding {
    let at = error.marker().byte_offset().unwrap_or(0).min(text.len());
    let scene = Scene { text, file, at: floor(text, at), trail };
    scene.finding(error)
}

/// The nearest offset at or before `at` that begins a letter.
fn floor(text: &str, at: usize) -> usize {
    (0..=at).rev().find(|offset| text.is_char_boundary(*offset)).unwrap_or(0)
}

struct Scene<'t> {
    text: &'t str,
    file: FileId,
    at: usize,
    trail: Trail,
}

impl<'t> Scene<'t> {
    fn finding(&self, error: &ScanError) -> Finding {
        let kind = error.kind();
        let told = match kind {
            ErrorKind::RecursionLimitExceeded => Some(too_deep(self.place(self.at, self.at + 1))),
            ErrorKind::TabNotAllowed
            | ErrorKind::TabInBlockIndentation
            | ErrorKind::TabInIndentation
            | ErrorKind::TabInPlainScalar
            | ErrorKind::TabAtBlockScalarStart => self.tab(),
            ErrorKind::UnclosedQuotedScalar | ErrorKind::DocumentIndicatorInQuotedScalar | ErrorKind::InvalidQuotedScalarIndent => {
                Some(self.unclosed_quote(self.quote_before()))
            }
            ErrorKind::InvalidTrailingSingleQuotedScalar | ErrorKind::InvalidTrailingDoubleQuotedScalar => Some(self.quote_in_text()),
            ErrorKind::CommentInterceptedScalar => Some(self.hash_cuts()),
            ErrorKind::MismatchedFlowCollectionEnd { .. }
            | ErrorKind::UnclosedFlowCollection { .. }
            | ErrorKind::UnexpectedEofFlowMapping
            | ErrorKind::UnexpectedEofFlowSequence
            | ErrorKind::UnexpectedEofImplicitFlowMapping => Some(self.unclosed_bracket()),
            ErrorKind::MappingValueNotAllowed | ErrorKind::InvalidColonPlacement | ErrorKind::ExpectedFlowMappingSeparator => self.colon(),
            ErrorKind::ExpectedFlowSequenceSeparator | ErrorKind::InvalidFlowScalarIndent => self.across_lines(),
            ErrorKind::SimpleKeyExpected => Some(self.no_key()),
            ErrorKind::ExpectedBlockMappingKey | ErrorKind::ExpectedBlockSequenceEntry | ErrorKind::ExpectedDocumentStart => {
                self.misplaced()
            }
            ErrorKind::InvalidIndentation | ErrorKind::InvalidBlockScalarIndent => Some(self.indent(self.first_letter(self.at))),
            _ => None,
        };
        let told = if told.as_ref().is_some_and(|finding| finding.check == "indent") { self.own_tab().or(told) } else { told };
        told.or_else(|| self.sign_at_start()).unwrap_or_else(|| self.refused(error))
    }

    /// Everything else: the parser's own words.
    fn refused(&self, error: &ScanError) -> Finding {
        let words = match error.kind() {
            ErrorKind::ExpectedBlockMappingKey => "something stands here after the end of a value".to_owned(),
            ErrorKind::UnknownQuotedScalarEscape => "a backslash in double quotes begins an escape, and this is none".to_owned(),
            other => other.to_string(),
        };
        Finding::fault("yaml-refused", self.place(self.at, self.line_end(self.at)), format!("YAML can't be read here: {words}"))
            .help("quote the text that stands here, or put long text under `|`")
    }

    /// A tab where spaces are due: the first one that stands before the first letter of a line.
    fn tab(&self) -> Option<Finding> {
        let mut start = self.line_start(self.at);
        for line in self.text.get(start..)?.split_inclusive('\n').take(3) {
            let blanks = line.len() - line.trim_start_matches([' ', '\t']).len();
            if let Some(tab) = line.get(..blanks).and_then(|head| head.find('\t')) {
                return Some(tab_indent(self.place(start + tab, start + blanks)));
            }
            start += line.len();
        }
        None
    }

    /// A tab in the indentation of the very line.
    fn own_tab(&self) -> Option<Finding> {
        let (start, first) = (self.line_start(self.at), self.first_letter(self.at));
        let tab = self.text.get(start..first)?.find('\t')?;
        Some(tab_indent(self.place(start + tab, first)))
    }

    fn unclosed_quote(&self, quote: usize) -> Finding {
        Finding::fault("unclosed-quote", self.place(quote, self.line_end(quote)), "this quote is not closed")
            .help("close it where the text ends; inside single quotes, an apostrophe is written twice")
    }

    /// Letters after a closing quote: the quote was closed too early, or one that began lines ago was never closed.
    fn quote_in_text(&self) -> Finding {
        let quote = self.quote_before();
        if self.line_start(quote) != self.line_start(self.at) {
            return self.unclosed_quote(quote);
        }
        let message = "the quote ends in the middle of the text";
        let help = if self.text.get(quote..).is_some_and(|rest| rest.starts_with('\'')) {
            "write an apostrophe inside single quotes twice, or use double quotes"
        } else {
            "put the whole text in quotes, and a backslash before each double quote inside"
        };
        Finding::fault("quote-in-text", self.place(quote, self.line_end(quote)), message)
            .also(self.spot(self.at), "this stands after the quote")
            .help(help)
    }

    fn hash_cuts(&self) -> Finding {
        let start = self.trail.last_scalar.map_or(self.at, |span| span.start as usize);
        hash_cuts_text(self.place(start, self.line_end(start)))
    }

    fn unclosed_bracket(&self) -> Finding {
        let bracket = self.bracket().unwrap_or(self.at);
        let written = self.text.get(bracket..).and_then(|rest| rest.chars().next()).unwrap_or('[');
        let closing = if written == '{' { '}' } else { ']' };
        Finding::fault("unclosed-bracket", self.place(bracket, bracket + 1), format!("this `{written}` is not closed"))
            .help(format!("write `{closing}` where the values end; a text that holds brackets is quoted"))
    }

    /// The bracket that was likely forgotten: the outermost one when it stands on an earlier line than the innermost.
    fn bracket(&self) -> Option<usize> {
        let (outer, inner) = self.trail.open_brackets?;
        Some(if self.line_start(outer) == self.line_start(inner) { inner } else { outer })
    }

    /// A bracket that was opened on an earlier line, else nothing.
    fn across_lines(&self) -> Option<Finding> {
        let bracket = self.bracket()?;
        (self.line_start(bracket) != self.line_start(self.at)).then(|| self.unclosed_bracket())
    }

    /// A colon where none can be: inside a text, or after a key that stands too deep.
    fn colon(&self) -> Option<Finding> {
        if let Some(finding) = self.across_lines() {
            return Some(finding);
        }
        let scalar = self.trail.last_scalar.filter(|_| self.trail.last_plain)?;
        let (start, end) = (scalar.start as usize, scalar.end as usize);
        if self.text.get(self.at..)?.chars().next()? != ':' || !self.text.get(end..self.at)?.trim().is_empty() {
            return None;
        }
        let own_line = self.line_start(self.at);
        if own_line <= start {
            return Some(self.one_line_colon(start));
        }
        // The text runs over several lines, and its last line looks like a key.
        let word = self.text.get(own_line..self.at)?.trim();
        let begin = self.first_letter(start);
        if let Some(finding) =
            self.space_missing(begin, self.rest_of_line(begin)).or_else(|| self.space_missing(start, self.rest_of_line(start)))
        {
            return Some(finding);
        }
        if self.column(start) == self.column(self.first_letter(self.at)) {
            return Some(self.keyless(start));
        }
        if is_key(word) {
            Some(self.indent(self.first_letter(self.at)))
        } else {
            Some(colon_in_text(self.place(start, self.line_end(self.at))))
        }
    }

    /// A second colon on the line: of a text without quotes, or a brace, a colon or a comma was forgotten.
    fn one_line_colon(&self, start: usize) -> Finding {
        let finding = colon_in_text(self.place(start, self.line_end(start)));
        let text = self.rest_of_line(start);
        if self.trail.open_brackets.is_some() {
            finding.help("write the comma that is missing before the next key, or put the whole text in quotes")
        } else if self.rest_of_line(self.first_letter(start)).split(':').next().is_some_and(|key| key.contains(" {")) {
            finding.help("write the colon that is missing before the `{`, or put the whole text in quotes")
        } else if text.ends_with('}') {
            finding.help("write the `{` that is missing before it, or put the whole text in quotes")
        } else {
            finding
        }
    }

    /// A line without a key where keys stand.
    fn no_key(&self) -> Finding {
        let start = self.first_letter(self.at);
        self.space_missing(start, self.rest_of_line(start)).or_else(|| self.sign_at_start()).unwrap_or_else(|| self.keyless(start))
    }

    fn keyless(&self, start: usize) -> Finding {
        Finding::fault("indent", self.spot(start), "this line has no key, and belongs to no text above it")
            .help("give it a key and a colon, or indent it deeper than the key whose text it goes on with")
    }

    /// Something begins where the list or mapping above has ended.
    fn misplaced(&self) -> Option<Finding> {
        let start = self.first_letter(self.at);
        // What comes after a dash is out of line because its dash is.
        if self.at != start && self.text.get(start..self.at)?.trim() != "-" {
            return None;
        }
        self.space_missing(start, self.rest_of_line(start)).or_else(|| Some(self.indent(start)))
    }

    fn space_missing(&self, start: usize, line: &str) -> Option<Finding> {
        let rest = line.strip_prefix('-').filter(|rest| !rest.starts_with([' ', '-']) && !rest.is_empty());
        if rest.is_some() {
            return Some(space_missing(self.place(start, start + line.len()), "-", line));
        }
        let (key, value) = line.split_once(':')?;
        (is_key(key) && !value.is_empty() && !value.starts_with([' ', '/', '\t']))
            .then(|| space_missing(self.place(start, start + line.len()), ":", line))
    }

    fn indent(&self, start: usize) -> Finding {
        let line = self.text.get(start..self.line_end(start)).unwrap_or("");
        let length = line.split(':').next().map_or(line.len(), |key| key.trim_end().len());
        let name = line.get(..length).unwrap_or(line);
        let message = if is_key(name) {
            format!("`{name}` does not line up with the keys around it")
        } else {
            "this line does not line up with the lines around it".to_owned()
        };
        Finding::fault("indent", self.place(start, start + length.max(1)), message)
            .help("begin it in the same column as the keys that it belongs with")
    }

    /// A sign at the start of a value that means something to YAML.
    fn sign_at_start(&self) -> Option<Finding> {
        let start = if self.text.get(self.at..)?.starts_with([' ', '\n']) { self.last_value() } else { self.at };
        let rest = self.text.get(start..self.line_end(start))?;
        let sign = rest.chars().next().filter(|sign| "@`%&*!|>-?[]{},".contains(*sign))?;
        let before = self.text.get(self.line_start(start)..start)?;
        let opens = before.trim_end();
        if !(opens.is_empty() || opens.ends_with([':', '-', ',', '[', '{'])) {
            return None;
        }
        let message = match sign {
            '-' => "a list can't begin on the line of its key".to_owned(),
            '|' | '>' => format!("`{sign}` begins a long text, which stands on the lines below it"),
            _ => format!("a text can't begin with `{sign}` unless it is quoted"),
        };
        let help = if sign == '-' {
            "put the items on lines below, each with its dash, or quote the text"
        } else {
            "put the whole text in quotes"
        };
        Some(Finding::fault("text-start", self.place(start, start + rest.trim_end().len()), message).help(help))
    }

    /// Where the value of the line begins, for complaints that point past it.
    fn last_value(&self) -> usize {
        let rest = self.text.get(self.trail.last_end..self.at).unwrap_or("");
        let offset = rest.find(|letter: char| !matches!(letter, ' ' | ':' | '\t' | '\n' | '\r' | ',')).unwrap_or(rest.len());
        self.trail.last_end + offset
    }

    /// The quote that opens the text in which the parser stopped: the first one after what was read whole.
    fn quote_before(&self) -> usize {
        if self.text.get(self.at..).is_some_and(|rest| rest.starts_with(['"', '\''])) && self.trail.last_end >= self.at {
            return self.at;
        }
        let rest = self.text.get(self.trail.last_end..self.at.max(self.trail.last_end)).unwrap_or("");
        rest.find(['"', '\'']).map_or(self.at, |offset| self.trail.last_end + offset)
    }

    fn place(&self, start: usize, end: usize) -> Place {
        let [start, end] = [start, end.max(start)].map(|at| u32::try_from(at).unwrap_or(u32::MAX));
        Place::new(self.file, Span::new(start, end))
    }

    fn spot(&self, at: usize) -> Place {
        self.place(at, self.line_end(at))
    }

    fn line_start(&self, at: usize) -> usize {
        line_start(self.text, u32::try_from(at).unwrap_or(u32::MAX))
    }

    /// Past the last letter of the line.
    fn line_end(&self, at: usize) -> usize {
        let line = self.text.get(at..).and_then(|rest| rest.split('\n').next()).unwrap_or("");
        at + line.trim_end().len()
    }

    /// From `at` to past the last letter of the line.
    fn rest_of_line(&self, at: usize) -> &'t str {
        self.text.get(at..self.line_end(at)).unwrap_or("")
    }

    /// How many bytes stand before `at` on its line.
    fn column(&self, at: usize) -> usize {
        at - self.line_start(at).min(at)
    }

    fn first_letter(&self, at: usize) -> usize {
        let start = self.line_start(at);
        let line = self.text.get(start..).and_then(|rest| rest.split('\n').next()).unwrap_or("");
        start + (line.len() - line.trim_start().len())
    }
}

/// True for what a key looks like: one lower-case word with hyphens.
pub(super) fn is_key(word: &str) -> bool {
    word.starts_with(|letter: char| letter.is_ascii_lowercase())
        && word.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || matches!(letter, '-' | '_'))
}

/// A tab among the blanks at the start of a line.
pub(super) fn tab_indent(place: Place) -> Finding {
    Finding::fault("tab-indent", place, "a tab stands in the indentation, where YAML takes spaces only").help("put spaces in its place")
}

/// A colon that ends a key in the middle of a text.
pub(super) fn colon_in_text(place: Place) -> Finding {
    Finding::fault("colon-in-text", place, "a colon followed by a space ends a key, and here it stands inside a text")
        .help("put the whole text in quotes")
}

/// A hash that makes a comment of the rest of a text.
pub(super) fn hash_cuts_text(place: Place) -> Finding {
    Finding::fault("hash-cuts-text", place, "a space and `#` end the text here, and the rest of the line is lost as a comment")
        .help("put the whole text in quotes, or move the comment to a line of its own")
}

/// A dash or a colon without the space that belongs after it.
pub(super) fn space_missing(place: Place, sign: &str, line: &str) -> Finding {
    let mended = if sign == "-" { line.replacen('-', "- ", 1) } else { line.replacen(':', ": ", 1) };
    let shown: String = mended.trim_end().chars().take(50).collect();
    Finding::fault("space-missing", place, format!("a space is missing after `{sign}`")).help(format!("write `{shown}`"))
}

#[cfg(test)]
mod tests;
