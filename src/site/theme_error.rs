//! What can be wrong with a theme: its files, its templates, its words.

use std::fmt;

use tera::ErrorKind;

/// A theme that cannot make a page, with the place where that is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ThemeError {
    /// File of the theme, line and column, both from 1, the column in characters.
    pub place: Option<(String, usize, usize)>,
    /// What is wrong, as a phrase.
    pub message: String,
    /// The line of the template with a mark under the place; may be empty.
    pub excerpt: String,
}

impl ThemeError {
    /// Something is wrong, and no place is known.
    #[must_use]
    pub fn new(message: impl Into<String>) -> Self {
        Self { place: None, message: message.into(), excerpt: String::new() }
    }

    /// Something is wrong at a byte of a text.
    #[must_use]
    pub fn at(file: &str, text: &str, byte: usize, message: impl Into<String>) -> Self {
        let before = text.get(..byte).unwrap_or(text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
        Self { place: Some((file.to_owned(), line, column)), message: message.into(), excerpt: String::new() }
    }
}

impl ThemeError {
    /// From a report whose second line names the place: ` --> home.html:2:5`.
    fn told(report: &str) -> Self {
        let message = report.lines().next().unwrap_or("").trim_start_matches("error: ").to_owned();
        let place = report.lines().find_map(|line| {
            let mut parts = line.trim_start().strip_prefix("--> ")?.rsplitn(3, ':');
            let (column, line) = (parts.next()?.trim().parse().ok()?, parts.next()?.parse().ok()?);
            Some((in_theme(parts.next()?), line, column))
        });
        Self { place, message, excerpt: report.to_owned() }
    }
}

/// The path of a template inside its theme.
fn in_theme(template: &str) -> String {
    format!("templates/{template}")
}

impl From<tera::Error> for ThemeError {
    fn from(error: tera::Error) -> Self {
        match error.kind() {
            ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => Self {
                place: Some((in_theme(report.filename()), report.span().start_line, report.span().start_col + 1)),
                message: report.message().to_owned(),
                excerpt: error.to_string(),
            },
            _ => Self::told(&error.to_string()),
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
