//! The style of each kind of page: only the files that it needs, without comments and needless space, so that page and
//! style arrive together in the first flight.
//!
//! Nothing else is changed: what is served is what was written.

use super::policy::Digested;
use super::theme::Theme;
use super::theme_error::ThemeError;

/// Kinds of pages by what they look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Look {
    /// The home page: lists, and search.
    Home,
    /// Lists of guides.
    List,
    /// A guide.
    Guide,
    /// Tables.
    Table,
    /// All pieces with their names.
    Pieces,
    /// Texts: pages of the owner, checks, source files.
    Text,
}

impl Look {
    /// All kinds.
    pub(super) const ALL: &[Self] = &[Self::Home, Self::List, Self::Guide, Self::Table, Self::Pieces, Self::Text];

    /// The style files of the theme that such a page carries, in their order.
    pub(super) const fn files(self) -> &'static [&'static str] {
        match self {
            Self::Home => &["styles/base.css", "styles/list.css", "styles/search.css"],
            Self::List => &["styles/base.css", "styles/list.css"],
            Self::Guide => &["styles/base.css", "styles/table.css", "styles/guide.css"],
            Self::Table => &["styles/base.css", "styles/table.css", "styles/list.css"],
            Self::Pieces => &["styles/base.css", "styles/pieces.css"],
            Self::Text => &["styles/base.css", "styles/table.css", "styles/text.css"],
        }
    }
}

/// A style as pages carry it.
#[derive(Debug, Clone)]
pub(super) struct Style {
    text: String,
    digested: Digested,
}

impl Style {
    /// These files of a theme, one after the other.
    pub(super) fn of(theme: &Theme, files: &[&str]) -> Result<Self, ThemeError> {
        let mut text = String::new();
        for file in files {
            text.push_str(&small(theme.text(file)?));
        }
        if text.contains("</") {
            return Err(ThemeError::new(format!("a style of the theme `{}` holds `</`, which would end it in a page", theme.name())));
        }
        Ok(Self { digested: Digested::of(&text), text })
    }

    /// The style with a few rules of one page behind it, and its source expression in the policy of that page.
    pub(super) fn with(&self, own: &str) -> (String, String) {
        (format!("{}{own}", self.text), self.digested.source(own))
    }
}

/// Without comments, line breaks and indentation. Strings and `url(…)` are kept as they are.
fn small(css: &str) -> String {
    let mut out = String::with_capacity(css.len());
    let mut rest = css;
    let mut quote: Option<char> = None;
    while let Some(character) = rest.chars().next() {
        if quote.is_none() && rest.starts_with("/*") {
            rest = rest.split_once("*/").map_or("", |(_, after)| after);
            continue;
        }
        rest = rest.get(character.len_utf8()..).unwrap_or("");
        match quote {
            Some(open) => {
                out.push(character);
                if character == '\\'
                    && let Some(next) = rest.chars().next()
                {
                    out.push(next);
                    rest = rest.get(next.len_utf8()..).unwrap_or("");
                } else if character == open {
                    quote = None;
                }
            }
            None if character.is_whitespace() => {
                let idle = out.is_empty() || out.ends_with([' ', '{', '}', ';', ',']);
                if !idle {
                    out.push(' ');
                }
            }
            None => {
                if matches!(character, '{' | '}' | ';') && out.ends_with(' ') {
                    out.pop();
                }
                if character == '}' && out.ends_with(';') {
                    out.pop();
                }
                if matches!(character, '"' | '\'') {
                    quote = Some(character);
                }
                out.push(character);
            }
        }
    }
    out.truncate(out.trim_end().len());
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comments_and_needless_space_go() {
        assert_eq!(small("/* a */\na {\n  b: c d;\n  /* e */ f: g;\n}\n\nh, i > j { k: l }\n"), "a{b: c d;f: g}h,i > j{k: l}");
    }

    #[test]
    fn strings_stay() {
        assert_eq!(small("a::before { content: \"  /* \\\" */ \" }"), "a::before{content: \"  /* \\\" */ \"}");
    }

    #[test]
    fn conditions_keep_the_space_that_they_need() {
        assert_eq!(small("@media print, (min-width: 64rem)\n{ a { b: c } }"), "@media print,(min-width: 64rem){a{b: c}}");
        assert_eq!(small("@media (a) and (b) { c d { e: calc(1px + 2px) } }"), "@media (a) and (b){c d{e: calc(1px + 2px)}}");
    }
}
