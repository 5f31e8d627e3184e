//! An error of a theme as a finding: at the line of the theme's own file, or where the guidebook names the theme.

use crate::checks::Checked;
use crate::finding::{Finding, Place, Span};
use crate::model::Guidebook;
use crate::site::theme::Theme;
use crate::site::theme_error::{ThemeError, Wrong};

/// The finding.
pub(super) fn finding(error: &ThemeError, theme: &Theme, checked: &Checked<Guidebook>) -> Finding {
    let book = checked.value();
    let own = error.place.as_ref().and_then(|(path, line, column)| {
        let file = book.own_theme.files.get(path)?.file;
        let text = checked.sources().get(file)?.text();
        Some(Place::new(file, span(text, *line, *column, error.width)))
    });
    let (place, message) = match (own, &error.place) {
        (Some(place), _) => (place, error.message.clone()),
        // The mistake shows in a file of `paper`, which the theme did not change: what it changed does not go with it.
        (None, Some((path, line, _))) => {
            (named(book), format!("this theme does not go with `{path}` of `paper`: line {line}: {}", error.message))
        }
        (None, None) => (named(book), error.message.clone()),
    };
    let finding = match error.wrong {
        Wrong::Broken => Finding::fault("theme-broken", place, message),
        Wrong::Policy => Finding::fault("theme-breaks-policy", place, message),
        Wrong::Safety => Finding::fault("theme-hides-safety", place, message),
        Wrong::Unused => Finding::advice("theme-part-unused", place, message),
    };
    let help = if error.help.is_empty() {
        format!("Look at the same file of `paper`, which `{}` stands over.", theme.name())
    } else {
        error.help.clone()
    };
    finding.help(help)
}

/// Where the guidebook names its theme.
fn named(book: &Guidebook) -> Place {
    book.theme.given().map_or(book.place, |theme| theme.place)
}

/// The bytes of a place that is given by line and column, both from 1, the column in characters.
fn span(text: &str, line: usize, column: usize, width: usize) -> Span {
    let start: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let rest = text.get(start..).unwrap_or("").lines().next().unwrap_or("");
    let byte = |characters: usize| rest.char_indices().nth(characters).map_or(rest.len(), |(at, _)| at);
    let (from, to) = (byte(column.saturating_sub(1)), byte(column.saturating_sub(1) + width));
    let at = |offset: usize| u32::try_from(start + offset).unwrap_or(u32::MAX);
    Span::new(at(from), at(to))
}

#[cfg(test)]
mod tests {
    use super::span;
    use crate::finding::Span;

    #[test]
    fn a_place_is_found_by_line_and_column() {
        let text = "é{{ a }}\nü {{ title }}\n";
        assert_eq!(span(text, 1, 2, 2), Span::new(2, 4));
        assert_eq!(span(text, 2, 6, 5), Span::new(16, 21));
        assert_eq!(span(text, 2, 99, 5), Span::new(24, 24));
        assert_eq!(span(text, 9, 1, 1), Span::new(25, 25));
    }
}
