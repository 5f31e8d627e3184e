//! What can be wrong with a theme: its files, its templates, its words.

use std::fmt;

use tera::ErrorKind;

use super::telling;

/// What a mistake in a theme does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Wrong {
    /// Pages cannot be made.
    #[default]
    Broken,
    /// The policy of a page is gone, or keeps something out.
    Policy,
    /// What keeps people safe is not shown.
    Safety,
    /// Nothing: no page uses it.
    Unused,
}

/// A theme that cannot make a page, with the place where that is known.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ThemeError {
    /// What it does.
    pub wrong: Wrong,
    /// File of the theme, line and column, both from 1, the column in characters.
    pub place: Option<(String, usize, usize)>,
    /// How many characters are meant from there on, at least 1.
    pub width: usize,
    /// What is wrong, as a phrase.
    pub message: String,
    /// What to do, in sentences; may be empty.
    pub help: String,
    /// The line of the template with a mark under the place; may be empty.
    pub excerpt: String,
    /// How it begins in a template, where only the page was looked at: `<script`; may be empty.
    pub begins: String,
}

impl ThemeError {
    /// Something is wrong, and no place is known.
    #[must_use]
    pub fn new(message: impl Into<String>) -> Self {
        Self { width: 1, message: message.into(), ..Self::default() }
    }

    /// Something is wrong at a byte of a text.
    #[must_use]
    pub fn at(file: &str, text: &str, byte: usize, message: impl Into<String>) -> Self {
        let before = text.get(..byte).unwrap_or(text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
        Self { place: Some((file.to_owned(), line, column)), ..Self::new(message) }
    }

    /// Something is wrong with a whole file.
    #[must_use]
    pub fn at_file(self, file: &str) -> Self {
        Self { place: Some((file.to_owned(), 1, 1)), ..self }
    }

    /// The text that is meant, so that all of it is marked.
    #[must_use]
    pub fn wide(self, meant: &str) -> Self {
        Self { width: meant.chars().count().max(1), ..self }
    }

    /// Says what to do.
    #[must_use]
    pub fn help(self, help: impl Into<String>) -> Self {
        Self { help: help.into(), ..self }
    }
}

impl ThemeError {
    /// From reports, each of which begins `error: …` and names the place in its second line: ` --> home.html:2:5`.
    #[must_use]
    pub(super) fn all_told(reports: &str) -> Vec<Self> {
        let mut errors: Vec<Self> = Vec::new();
        for line in reports.lines() {
            if let Some(message) = line.strip_prefix("error: ") {
                errors.push(Self::new(message));
            } else if let Some(error) = errors.last_mut() {
                error.reads(line);
            }
        }
        if errors.is_empty() {
            errors.push(Self::new(reports.lines().next().unwrap_or("")));
        }
        errors.into_iter().map(telling::told).collect()
    }

    /// Takes the place and the width from a line of a report.
    fn reads(&mut self, line: &str) {
        let mut parts = line.trim_start().strip_prefix("--> ").unwrap_or("").rsplitn(3, ':');
        let (column, row, file) = (parts.next(), parts.next(), parts.next());
        if let (Some(Ok(column)), Some(Ok(row)), Some(file)) = (column.map(|n| n.trim().parse()), row.map(str::parse), file) {
            self.place.get_or_insert((in_theme(file), row, column));
        } else if line.contains(" | ") && line.ends_with('^') {
            self.width = line.chars().rev().take_while(|c| *c == '^').count();
        }
        self.excerpt.push_str(line);
        self.excerpt.push('\n');
    }
}

/// The path of a template inside its theme.
fn in_theme(template: &str) -> String {
    format!("templates/{template}")
}

impl From<tera::Error> for ThemeError {
    fn from(error: tera::Error) -> Self {
        match error.kind() {
            ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => {
                let span = report.span();
                let one_line = span.start_line == span.end_line;
                telling::told(Self {
                    place: Some((in_theme(report.filename()), span.start_line.max(1), span.start_col + 1)),
                    width: if one_line { span.end_col.saturating_sub(span.start_col).max(1) } else { 1 },
                    message: report.message().to_owned(),
                    excerpt: error.to_string(),
                    ..Self::default()
                })
            }
            _ => Self::all_told(&error.to_string()).into_iter().next().unwrap_or_default(),
        }
    }
}

impl fmt::Display for ThemeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.place {
            Some((file, line, column)) => write!(f, "{file}:{line}:{column}: {}", self.message),
            None => f.write_str(&self.message),
        }
    }
}

impl std::error::Error for ThemeError {}
