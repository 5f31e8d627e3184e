//! The text of a guide as lines, and ways to change one of them.

use std::ops::Range;

/// One mistake in a guide, and the one fault that must be told of it.
#[derive(Debug, Clone)]
pub(crate) struct Mistake {
    /// What was done to the text.
    pub(crate) kind: &'static str,
    /// The spoilt text.
    pub(crate) bytes: Vec<u8>,
    /// The check that must tell it.
    pub(crate) check: &'static str,
    /// The line on which it must be told, from 1.
    pub(crate) line: usize,
}

/// A guide of the demonstration. Its steps begin with `  - name:`, their keys stand at column 5, outputs at column 7.
pub(crate) struct Guide {
    /// The path of its file.
    pub(crate) path: String,
    /// Its lines.
    pub(crate) lines: Vec<String>,
    /// The lines of each step.
    pub(crate) steps: Vec<Range<usize>>,
}

/// An output that stands on one line.
#[derive(Debug, Clone)]
pub(crate) struct Output {
    /// Its line, from 0.
    pub(crate) at: usize,
    /// The piece.
    pub(crate) piece: String,
    /// Low and high end, in percent.
    pub(crate) share: (f64, f64),
    /// The share as it is written, without the sign.
    pub(crate) written: String,
    /// True for the mapping form.
    pub(crate) long: bool,
}

impl Guide {
    pub(crate) fn new(path: &str, text: &str) -> Self {
        let lines: Vec<String> = text.lines().map(str::to_owned).collect();
        let begins: Vec<usize> = (0..lines.len()).filter(|at| lines[*at].starts_with("  - name:")).collect();
        let ends = |from: usize| {
            let next = (from + 1..lines.len())
                .find(|at| lines[*at].starts_with("  - name:") || lines[*at].starts_with(|c: char| c.is_ascii_lowercase()));
            let mut end = next.unwrap_or(lines.len());
            // Comments and blank lines before the next step belong to it.
            while end > from + 1 && (lines[end - 1].trim().is_empty() || lines[end - 1].trim_start().starts_with('#')) {
                end -= 1;
            }
            end
        };
        let steps = begins
            .iter()
            .map(|from| *from..ends(*from))
            .filter(|step| lines[step.clone()].iter().any(|line| line.starts_with("    give:")))
            .collect();
        Self { path: path.to_owned(), lines, steps }
    }

    /// The first line in `range` that begins so.
    pub(crate) fn find(&self, range: Range<usize>, start: &str) -> Option<usize> {
        range.into_iter().find(|at| self.lines[*at].starts_with(start))
    }

    /// The first line of the guide that begins so.
    pub(crate) fn top(&self, start: &str) -> Option<usize> {
        self.find(0..self.lines.len(), start)
    }

    /// The lines of the mapping under a key at the left edge: those that are indented.
    pub(crate) fn below(&self, key: &str) -> Option<Range<usize>> {
        let from = self.top(key)? + 1;
        let end = (from..self.lines.len())
            .find(|at| !self.lines[*at].starts_with(' ') && !self.lines[*at].is_empty())
            .unwrap_or(self.lines.len());
        Some(from..end)
    }

    /// The lines of a key and of what is indented below it.
    pub(crate) fn block(&self, at: usize) -> Range<usize> {
        let depth = |line: &str| line.len() - line.trim_start().len();
        let own = depth(&self.lines[at]);
        let end = (at + 1..self.lines.len())
            .find(|next| !self.lines[*next].trim().is_empty() && depth(&self.lines[*next]) <= own)
            .unwrap_or(self.lines.len());
        at..end
    }

    /// The outputs of a step, without the loss.
    pub(crate) fn outputs(&self, step: &Range<usize>) -> Vec<Output> {
        let Some(give) = self.find(step.clone(), "    give:") else { return Vec::new() };
        self.block(give)
            .skip(1)
            .filter(|at| self.lines[*at].starts_with("      ") && !self.lines[*at].trim_start().starts_with('#'))
            .filter_map(|at| self.output(at))
            .collect()
    }

    fn output(&self, at: usize) -> Option<Output> {
        let (key, value) = self.lines[at].trim().split_once(": ")?;
        // In the long form over several lines the piece stands above its share, and other keys are no outputs.
        let piece = match (self.lines[at].starts_with("        "), key) {
            (true, "share") => self.lines[..at].iter().rev().find(|line| !line.starts_with("        "))?.trim().trim_end_matches(':'),
            (true, _) => return None,
            (false, piece) => piece,
        };
        let long = value.starts_with('{');
        let written = if long { value.split("share: ").nth(1)?.split([',', '}']).next()? } else { value };
        let written = written.trim().trim_end_matches('%').trim();
        let (low, high) = written.split_once('–')?;
        Some(Output { at, piece: piece.to_owned(), share: (low.parse().ok()?, high.parse().ok()?), written: written.to_owned(), long })
    }

    /// The mistake of writing `text` in place of line `at`, told on that line.
    pub(crate) fn instead(&self, kind: &'static str, at: usize, text: &str, check: &'static str) -> Mistake {
        self.replaced(kind, at..at + 1, &[text], check, at + 1)
    }

    /// The mistake of replacing `from` in line `at` by `to`, told on that line; nothing when it does not stand there.
    pub(crate) fn swapped(&self, kind: &'static str, at: usize, from: &str, to: &str, check: &'static str) -> Option<Mistake> {
        let line = &self.lines[at];
        line.contains(from).then(|| self.instead(kind, at, &line.replacen(from, to, 1), check))
    }

    /// The mistake of putting other lines in place of `range`, told on `line` of the new text.
    pub(crate) fn replaced(&self, kind: &'static str, range: Range<usize>, texts: &[&str], check: &'static str, line: usize) -> Mistake {
        let mut lines: Vec<&str> = self.lines.iter().map(String::as_str).collect();
        lines.splice(range, texts.iter().copied());
        Mistake { kind, bytes: format!("{}\n", lines.join("\n")).into_bytes(), check, line }
    }
}

/// The first, the middle and the last of a list, each once: mistakes are made in varied places.
pub(crate) fn spread<T: Clone>(all: &[T]) -> Vec<T> {
    let mut picked = vec![0, all.len() / 2, all.len().saturating_sub(1)];
    picked.dedup();
    picked.into_iter().filter_map(|at| all.get(at).cloned()).collect()
}
