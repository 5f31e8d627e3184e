//! Texts that a template would pass unescaped: only what `markdown` made safe may go into a page so, and the style.

use crate::site::theme::Theme;
use crate::site::theme_error::{ThemeError, Wrong};

/// Fields that stand before the filter `safe` in templates of the theme's own, and are no markup.
pub(super) fn unescaped(theme: &Theme) -> Vec<ThemeError> {
    let mut errors = Vec::new();
    for (path, bytes) in theme.changes().filter(|(path, _)| path.starts_with("templates/")) {
        let Ok(text) = std::str::from_utf8(bytes) else { continue };
        for (at, _) in text.match_indices('|') {
            let filter = text.get(at + 1..).unwrap_or("").trim_start();
            let is_safe = filter.strip_prefix("safe").is_some_and(|rest| !rest.starts_with(|c: char| c.is_alphanumeric() || c == '_'));
            let before = text.get(..at).unwrap_or("").trim_end();
            let field = before.rsplit(|c: char| !(c.is_alphanumeric() || matches!(c, '_' | '.'))).next().unwrap_or("");
            if !is_safe || field.ends_with("_html") || field == "page.style" {
                continue;
            }
            let from = before.len() - field.len();
            let message = format!("`{field}` is plain text, and `safe` would pass a `<` in it as markup");
            let help = "Take out `| safe`; only fields that end in `_html` are made for it.";
            errors.push(ThemeError { wrong: Wrong::Policy, ..ThemeError::at(path, text, from, message).wide(field).help(help) });
        }
    }
    errors
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    #[test]
    fn only_markup_and_the_style_pass() {
        let told = |text: &str| {
            let files = BTreeMap::from([("templates/home.html".to_owned(), text.as_bytes().to_vec())]);
            unescaped(&Theme::over_paper("own", files)).iter().map(ToString::to_string).collect::<Vec<_>>()
        };
        assert_eq!(told("{{ page.style | safe }}{{ step.do_html|safe }}{{ a | safely }}"), [""; 0]);
        assert_eq!(
            told("\n{{ guide.title | safe }}"),
            ["templates/home.html:2:4: `guide.title` is plain text, and `safe` would pass a `<` in it as markup"]
        );
    }
}
