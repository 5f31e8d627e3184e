//! The style of each kind of page: only the files that it needs, without comments and needless space, so that page and
//! style arrive together in the first flight.
//!
//! Nothing else is changed: what is served is what was written. Where a page must be light, what a phone in the hand
//! does not need at once stands in files of their own: rules for paper and wide screens, and rules for what comes far
//! below.

use std::collections::BTreeMap;

use super::paths;
use super::policy::Digested;
use super::style_apart::{Apart, apart};
use super::theme::{OWN_STYLE, Theme};
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
    /// A guide at the bench.
    Bench,
    /// A guide for a projector.
    Room,
    /// Tables.
    Table,
    /// A course.
    Course,
    /// All pieces with their names.
    Pieces,
    /// Limits, each with its source.
    Limits,
    /// Time out of the cold.
    Cold,
    /// Parts of the animal.
    Anatomy,
    /// A card for the wall.
    Card,
    /// A sheet for the class.
    ClassSheet,
    /// Texts: pages of the owner, checks, source files.
    Text,
    /// What is kept on this device.
    Offline,
}

impl Look {
    /// All kinds.
    pub(super) const ALL: &[Self] = &[
        Self::Home,
        Self::List,
        Self::Guide,
        Self::Bench,
        Self::Room,
        Self::Table,
        Self::Course,
        Self::Pieces,
        Self::Limits,
        Self::Cold,
        Self::Anatomy,
        Self::Card,
        Self::ClassSheet,
        Self::Text,
        Self::Offline,
    ];

    /// All style files of the theme that such a page uses, in their order.
    pub(super) fn all_files(self) -> impl Iterator<Item = &'static str> {
        self.files().iter().chain(self.later()).chain(&[STATE_STYLE]).copied()
    }

    /// The style files of the theme that such a page carries, in their order.
    const fn files(self) -> &'static [&'static str] {
        match self {
            Self::Home => &["styles/base.css", "styles/list.css", "styles/search.css"],
            Self::List => &["styles/base.css", "styles/list.css"],
            Self::Guide => &["styles/base.css", "styles/guide.css"],
            Self::Bench => &["styles/base.css", "styles/bench.css"],
            Self::Room => &["styles/base.css", "styles/room.css"],
            Self::Table => &["styles/base.css", "styles/table.css", "styles/list.css"],
            Self::Course => &["styles/base.css", "styles/list.css", "styles/course.css"],
            Self::Pieces => &["styles/base.css", "styles/pieces.css"],
            Self::Limits => &["styles/base.css", "styles/cards.css", "styles/limits.css"],
            Self::Cold => &["styles/base.css", "styles/table.css", "styles/cold.css"],
            Self::Anatomy => &["styles/base.css", "styles/cards.css"],
            Self::Card => &["styles/base.css", "styles/sheet.css", "styles/card.css"],
            Self::ClassSheet => &["styles/base.css", "styles/sheet.css", "styles/class.css"],
            Self::Text => &["styles/base.css", "styles/table.css", "styles/text.css"],
            Self::Offline => &["styles/base.css", "styles/offline.css"],
        }
    }

    /// The name of the file that holds what such a page loads beside its own style; empty when it carries all of it.
    const fn apart(self) -> &'static str {
        match self {
            Self::Guide => "guide",
            _ => "",
        }
    }

    /// Style files for what stands below the first view, linked where that begins.
    const fn later(self) -> &'static [&'static str] {
        match self {
            Self::Guide => &["styles/table.css", "styles/guide-below.css"],
            _ => &[],
        }
    }
}

/// A style in a file of its own.
#[derive(Debug, Clone)]
pub(super) struct Linked {
    /// Its path in the site.
    pub(super) path: String,
    /// The media that it is for; empty for all.
    pub(super) media: String,
}

/// The style of the band that tells the state of a guide that is not in force.
const STATE_STYLE: &str = "styles/state.css";

/// A text of style with its digest.
#[derive(Debug, Clone)]
struct Text {
    text: String,
    digested: Digested,
}

impl Text {
    fn new(text: String) -> Self {
        Self { digested: Digested::of(&text), text }
    }
}

/// A style as pages carry it.
#[derive(Debug, Clone)]
pub(super) struct Style {
    /// Of pages that show no state.
    plain: Text,
    /// Of pages that show one.
    stated: Text,
    /// Rules for paper, wide screens and the colours of a system, which no phone waits for.
    pub(super) apart: Option<Linked>,
    /// Rules for what comes far below.
    pub(super) later: Option<Linked>,
}

impl Style {
    /// The style of a kind of page; what it keeps in files of its own is added to `assets`.
    pub(super) fn of(theme: &Theme, look: Look, assets: &mut BTreeMap<String, (String, Vec<u8>)>) -> Result<Self, ThemeError> {
        // What a theme adds of its own comes after all others, also after those that are linked far below.
        let own: &[&str] = if theme.bytes(OWN_STYLE).is_some() { &[OWN_STYLE] } else { &[] };
        let mut text = joined(theme, &[look.files(), own].concat())?;
        let (mut beside, mut later) = (None, None);
        if !look.apart().is_empty() {
            let Apart { here, there, media } = apart(&text);
            text = here;
            if !there.is_empty() {
                beside = Some(Linked { path: kept(assets, &format!("{}-apart.css", look.apart()), there), media });
            }
            let below = joined(theme, &[look.later(), own].concat())?;
            if !below.is_empty() {
                later = Some(Linked { path: kept(assets, &format!("{}-below.css", look.apart()), below), media: String::new() });
            }
        }
        let stated = joined(theme, &[STATE_STYLE])? + &text;
        Ok(Self { plain: Text::new(text), stated: Text::new(stated), apart: beside, later })
    }

    /// The style with a few rules of one page behind it, and its source expressions in the policy of that page. `stated`
    /// is true for a page that shows the state of its guide.
    pub(super) fn with(&self, own: &str, stated: bool) -> (String, String) {
        let Text { text, digested } = if stated { &self.stated } else { &self.plain };
        let mut source = digested.source(own);
        if self.apart.is_some() || self.later.is_some() {
            source.push_str(" 'self'");
        }
        (format!("{text}{own}"), source)
    }
}

/// These files of a theme, one after the other.
fn joined(theme: &Theme, files: &[&str]) -> Result<String, ThemeError> {
    let mut text = String::new();
    for file in files {
        let written = theme.text(file)?;
        let short = small(written);
        if short.contains("</") {
            let message = "this holds `</`, which would end the style in a page";
            return Err(ThemeError::at(file, written, written.rfind("</").unwrap_or(0), message).wide("</").help("Write it as `<\\/`."));
        }
        text.push_str(&short);
    }
    Ok(text)
}

/// Keeps a style among the files of the site and says where it lies.
fn kept(assets: &mut BTreeMap<String, (String, Vec<u8>)>, name: &str, css: String) -> String {
    let path = paths::asset(name, &paths::mark(css.as_bytes()));
    assets.insert(name.to_owned(), (path.clone(), css.into_bytes()));
    path
}

/// Without comments, line breaks and indentation. Strings and `url(…)` are kept as they are.
pub(super) fn small(css: &str) -> String {
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
