//! The authored line of a finding with carets below it, and the lines of related places near by.
//!
//! Lines that are too long are cut to a window around the carets; what can't be drawn is handed back in words.

use annotate_snippets::{AnnotationKind, Group, Level as DrawnLevel, Renderer, Snippet};
use unicode_width::UnicodeWidthChar;

use super::text::{Style, clean};
use super::{Finding, Level, LineColumn, Place, SourceMap, SourceText};

/// Related places this many lines away are drawn; others are told in words.
const NEAR: u32 = 8;
/// Letters shown before the caret of a line that is cut.
const BEFORE: usize = 16;
/// How wide a tab is drawn.
const TAB: usize = 4;

/// A related place and what is said of it.
pub(super) struct Mark<'a> {
    pub(super) place: Place,
    pub(super) text: &'a str,
}

/// An excerpt as text.
pub(super) struct Excerpt {
    /// The header with path, line and column, and the lines, each with a line break.
    pub(super) text: String,
    /// What could not be drawn, as phrases.
    pub(super) left_over: Vec<String>,
    /// How wide the column of line numbers is.
    pub(super) gutter: usize,
}

/// One caret row: columns of a drawn line, in bytes of the drawn line.
struct Caret {
    line: u32,
    from: usize,
    to: usize,
    label: String,
    primary: bool,
}

/// Draws the excerpt of a finding.
pub(super) fn draw(finding: &Finding, related: &[Mark<'_>], sources: &SourceMap, style: Style) -> Excerpt {
    let at = sources.line_column(finding.place);
    let path = clean(sources.path(finding.place.file));
    let source = sources.get(finding.place.file);
    let near: Vec<&Mark<'_>> = related.iter().filter(|mark| mark.place.file == finding.place.file && close(sources, mark, at)).collect();
    let lines = |mark: &&Mark<'_>| sources.line_column(mark.place).line;
    let first = near.iter().map(lines).chain([at.line]).min().unwrap_or(at.line);
    let last = near.iter().map(lines).chain([at.line]).max().unwrap_or(at.line);
    let gutter = last.to_string().len();
    let mut left_over = Vec::new();
    let mut text = format!("{}--> {path}:{}:{}\n", " ".repeat(gutter), at.line, at.column);
    let drawable = source.filter(|source| !source.text().trim().is_empty());
    if let Some(source) = drawable {
        let room = style.width.saturating_sub(gutter + 4);
        let mut page = Page::new(source, room, at);
        page.add(finding.place, at, &finding.label, true, &mut left_over);
        for mark in &near {
            page.add(mark.place, sources.line_column(mark.place), mark.text, false, &mut left_over);
        }
        text.push_str(&page.draw(first, last, finding.level, style));
    } else if !finding.label.is_empty() {
        left_over.push(clean(&finding.label));
    }
    for mark in related {
        if mark.place.file != finding.place.file || !close(sources, mark, at) || drawable.is_none() {
            let there = sources.line_column(mark.place);
            left_over.push(format!("{} ({}:{}:{})", clean(mark.text), clean(sources.path(mark.place.file)), there.line, there.column));
        }
    }
    Excerpt { text, left_over, gutter }
}

fn close(sources: &SourceMap, mark: &Mark<'_>, at: LineColumn) -> bool {
    sources.line_column(mark.place).line.abs_diff(at.line) <= NEAR
}

/// A line as it is drawn.
struct Drawn {
    /// With a sign where something is left out at an end.
    text: String,
    /// How many bytes of the authored line are left out before it.
    from: usize,
    /// How many bytes the sign before it takes.
    lead: usize,
    /// Past the last byte of the authored line.
    end: usize,
}

impl Drawn {
    /// The nearest offset at or before `at` that begins a letter.
    fn floor(&self, at: usize) -> usize {
        (0..=at.min(self.text.len())).rev().find(|offset| self.text.is_char_boundary(*offset)).unwrap_or(0)
    }
}

/// The lines that are drawn, each cut to its window.
struct Page<'s> {
    source: &'s SourceText,
    room: usize,
    main: LineColumn,
    /// First byte of the window of the main line.
    window: usize,
    carets: Vec<Caret>,
}

impl<'s> Page<'s> {
    fn new(source: &'s SourceText, room: usize, main: LineColumn) -> Self {
        let mut page = Self { source, room, main, window: 0, carets: Vec::new() };
        let line = page.line(main.line);
        let column = main.column.saturating_sub(1) as usize;
        if width(line) > room && column > BEFORE {
            // Keep the indentation out of the window, but some letters before the caret in it.
            page.window = line.char_indices().nth(column - BEFORE).map_or(0, |(at, _)| at);
        }
        page
    }

    fn line(&self, number: u32) -> &'s str {
        self.source.line(number)
    }

    fn drawn(&self, number: u32) -> Drawn {
        let line = self.line(number);
        let from = if number == self.main.line { self.window } else { 0 };
        let mut text = String::from(if from > 0 { "…" } else { "" });
        let lead = text.len();
        let rest = line.get(from..).unwrap_or("");
        let room = self.room.saturating_sub(width(&text));
        if width(rest) <= room {
            text.push_str(rest);
            return Drawn { from, lead, end: text.len(), text };
        }
        let mut used = 1;
        for letter in rest.chars() {
            used += width_of(letter);
            if used > room {
                break;
            }
            text.push(letter);
        }
        let end = text.len();
        text.push('…');
        Drawn { from, lead, end, text }
    }

    fn add(&mut self, place: Place, at: LineColumn, label: &str, primary: bool, left_over: &mut Vec<String>) {
        let line = self.line(at.line);
        let start: usize = line.chars().take(at.column.saturating_sub(1) as usize).map(char::len_utf8).sum();
        let length = (place.span.end.saturating_sub(place.span.start) as usize).max(1);
        let end = (start + length).min(line.trim_end().len()).max(start);
        let drawn = self.drawn(at.line);
        if start < drawn.from || start - drawn.from + drawn.lead > drawn.end {
            left_over.push(format!("{} (column {})", clean(label), at.column));
            return;
        }
        let from = drawn.floor(start - drawn.from + drawn.lead);
        let to = drawn.floor((end - drawn.from + drawn.lead).min(drawn.end)).max(from);
        let label = clean(label);
        let reach = width(drawn.text.get(..to).unwrap_or(&drawn.text)) + 1 + width(&label);
        let shown = if reach <= self.room {
            label
        } else {
            left_over.push(label);
            String::new()
        };
        self.carets.push(Caret { line: at.line, from, to, label: shown, primary });
    }

    fn draw(&self, first: u32, last: u32, level: Level, style: Style) -> String {
        let mut text = String::new();
        let mut starts = Vec::new();
        for number in first..=last {
            starts.push(text.len());
            text.push_str(&self.drawn(number).text);
            if number != last {
                text.push('\n');
            }
        }
        let annotations = self.carets.iter().map(|caret| {
            let start = starts.get((caret.line - first) as usize).copied().unwrap_or(0);
            let kind = if caret.primary { AnnotationKind::Primary } else { AnnotationKind::Context };
            let drawn = kind.span(start + caret.from..start + caret.to);
            if caret.label.is_empty() { drawn } else { drawn.label(caret.label.clone()) }
        });
        let drawn_level = match level {
            Level::Fault => DrawnLevel::ERROR,
            Level::Advice => DrawnLevel::WARNING,
        };
        let snippet = Snippet::source(text.as_str()).line_start(first as usize).annotations(annotations);
        let renderer = if style.color { Renderer::styled() } else { Renderer::plain() };
        let group = Group::with_level(drawn_level.no_name()).element(snippet);
        let mut drawn = renderer.term_width(style.width).render(&[group]);
        drawn.push('\n');
        drawn
    }
}

fn width(text: &str) -> usize {
    text.chars().map(width_of).sum()
}

fn width_of(letter: char) -> usize {
    if letter == '\t' { TAB } else { letter.width().unwrap_or(1) }
}
