//! The files of a theme: templates, styles, scripts, words. `paper` ships inside, and so do others that change some of it.
//!
//! A theme needs only the files that it changes; the others are those of `paper`. Of words it needs only those that
//! it changes. What can be wrong with a theme of the guidebook's own is told by `own_theme`.

use std::borrow::Cow;
use std::collections::BTreeMap;

use include_dir::{Dir, include_dir};

use super::theme_error::ThemeError;
use crate::model::Guidebook;
use crate::model::own_theme::{BUILT_IN, folder_named};

static PAPER: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/themes/paper");
static STEEL: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/themes/steel");

/// The style that stands after all others on every page; `paper` has none.
pub(super) const OWN_STYLE: &str = "styles/own.css";

type Files = BTreeMap<String, Cow<'static, [u8]>>;

/// A theme: its name and its files by path, such as `templates/guide.html`.
#[derive(Debug, Clone)]
pub struct Theme {
    name: String,
    /// The files of `paper`.
    base: Files,
    /// The files that stand in their place or beside them.
    changes: Files,
}

impl Theme {
    /// The theme that is used when none is named.
    #[must_use]
    pub fn paper() -> Self {
        Self { name: "paper".to_owned(), base: all(&PAPER), changes: Files::new() }
    }

    /// A theme that ships inside, by its name.
    #[must_use]
    pub fn built_in(name: &str) -> Option<Self> {
        let changes = match BUILT_IN.iter().find(|known| **known == name)? {
            &"steel" => all(&STEEL),
            _ => Files::new(),
        };
        Some(Self { name: name.to_owned(), changes, ..Self::paper() })
    }

    /// A theme of one's own over `paper`: these files stand in place of those of the same path, or beside them.
    #[must_use]
    pub fn over_paper(name: impl Into<String>, files: BTreeMap<String, Vec<u8>>) -> Self {
        let changes = files.into_iter().map(|(path, bytes)| (path, Cow::Owned(bytes))).collect();
        Self { name: name.into(), changes, ..Self::paper() }
    }

    /// The theme that a guidebook asks for: its own folder, else the built-in one of that name, else `paper`.
    #[must_use]
    pub fn of(book: &Guidebook) -> Self {
        let name = book.theme.value().map_or("", |theme| folder_named(theme));
        if book.own_theme.files.is_empty() {
            return Self::built_in(name).unwrap_or_else(Self::paper);
        }
        Self::over_paper(name, book.own_theme.files.iter().map(|(path, file)| (path.clone(), file.bytes.clone())).collect())
    }

    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The files that it has in place of those of `paper`, or beside them, by path.
    pub(super) fn changes(&self) -> impl Iterator<Item = (&str, &[u8])> {
        self.changes.iter().map(|(path, bytes)| (path.as_str(), bytes.as_ref()))
    }

    /// True when it has this file itself.
    pub(super) fn changes_file(&self, path: &str) -> bool {
        self.changes.contains_key(path)
    }

    /// True when `paper` has this file.
    pub(super) fn is_of_paper(&self, path: &str) -> bool {
        self.base.contains_key(path)
    }

    /// The files of `paper`, by path.
    pub(super) fn of_paper(&self) -> impl Iterator<Item = &str> {
        self.base.keys().map(String::as_str)
    }

    /// The text of a file of `paper`, changed or not.
    pub(super) fn paper_text(&self, path: &str) -> Option<&str> {
        std::str::from_utf8(self.base.get(path)?).ok()
    }

    /// The text of a file that every theme has.
    pub(super) fn text(&self, path: &str) -> Result<&str, ThemeError> {
        let bytes = self.bytes(path).ok_or_else(|| ThemeError::new(format!("the theme `{}` has no `{path}`", self.name)))?;
        self.read(path, bytes)
    }

    /// Paths of all files in a folder, given with its slash, sorted.
    pub(super) fn in_folder<'a>(&'a self, folder: &'a str) -> impl Iterator<Item = &'a str> {
        let mut paths: Vec<&str> = self.base.keys().chain(self.changes.keys()).map(String::as_str).collect();
        paths.sort_unstable();
        paths.dedup();
        paths.into_iter().filter(move |path| path.starts_with(folder))
    }

    /// The bytes of a file.
    pub(super) fn bytes(&self, path: &str) -> Option<&[u8]> {
        self.changes.get(path).or_else(|| self.base.get(path)).map(AsRef::as_ref)
    }

    /// The files of words for a language, each with the language that it is of; a later one stands over the earlier ones.
    /// English is below all, then the language without its region, then with it; of each that of `paper` first.
    pub(super) fn words(&self, language: &str) -> Result<Vec<WordFile<'_>>, ThemeError> {
        let broad = language.split('-').next().unwrap_or(language);
        let mut languages = vec!["en", broad, language];
        languages.dedup();
        let mut files = Vec::new();
        for language in languages {
            let path = format!("words/{language}.ftl");
            for (held, own) in [(&self.base, false), (&self.changes, true)] {
                if let Some(bytes) = held.get(&path) {
                    let text = self.read(&path, bytes)?;
                    files.push(WordFile { path: path.clone(), language: language.to_owned(), text, own });
                }
            }
        }
        Ok(files)
    }

    fn read<'a>(&self, path: &str, bytes: &'a [u8]) -> Result<&'a str, ThemeError> {
        std::str::from_utf8(bytes).map_err(|error| {
            let at = error.valid_up_to();
            ThemeError::new(format!("`{path}` of the theme `{}` is not UTF-8 text: byte {} is wrong", self.name, at + 1))
        })
    }
}

/// A file of words.
#[derive(Debug, Clone)]
pub(super) struct WordFile<'a> {
    /// Its path in the theme.
    pub(super) path: String,
    /// The language.
    pub(super) language: String,
    /// What stands in it.
    pub(super) text: &'a str,
    /// True when it is not of `paper`.
    pub(super) own: bool,
}

fn all(folder: &Dir<'static>) -> Files {
    let mut files = Files::new();
    gather(folder, &mut files);
    files
}

fn gather(folder: &Dir<'static>, files: &mut Files) {
    for file in folder.files() {
        if let Some(path) = file.path().to_str() {
            files.insert(path.replace('\\', "/"), Cow::Borrowed(file.contents()));
        }
    }
    for inner in folder.dirs() {
        gather(inner, files);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn built_in_themes_are_those_that_are_named() {
        for name in BUILT_IN {
            assert_eq!(Theme::built_in(name).map(|theme| theme.name), Some((*name).to_owned()));
        }
        assert!(Theme::built_in("steel").is_some_and(|theme| theme.changes_file(OWN_STYLE)));
        assert!(Theme::built_in("slate").is_none());
    }

    #[test]
    fn a_file_of_ones_own_stands_before_that_of_paper() {
        let own = BTreeMap::from([("styles/base.css".to_owned(), b"a{}".to_vec()), ("words/de-AT.ftl".to_owned(), b"home = A\n".to_vec())]);
        let theme = Theme::over_paper("own", own);
        assert_eq!(theme.text("styles/base.css"), Ok("a{}"));
        assert!(theme.text("styles/guide.css").is_ok_and(|text| text.len() > 100));
        assert!(theme.text("styles/none.css").is_err());
        let layers = |language: &str| {
            let files = theme.words(language).unwrap_or_default();
            files.iter().map(|file| (file.path.clone(), file.own)).collect::<Vec<_>>()
        };
        assert_eq!(layers("en"), [("words/en.ftl".to_owned(), false)]);
        assert_eq!(layers("de-AT"), [("words/en.ftl".to_owned(), false), ("words/de-AT.ftl".to_owned(), true)]);
    }
}
