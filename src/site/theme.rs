//! The files of a theme: templates, one style sheet, scripts, words. The default one, `paper`, ships inside.
//!
//! A theme of one's own needs only the files that it changes; the others are those of `paper`.

use std::borrow::Cow;
use std::collections::BTreeMap;

use include_dir::{Dir, include_dir};

use super::theme_error::ThemeError;

static PAPER: Dir<'static> = include_dir!("$CARGO_MANIFEST_DIR/themes/paper");

/// A theme: its name and its files by path, such as `templates/guide.html`.
#[derive(Debug, Clone)]
pub struct Theme {
    name: String,
    files: BTreeMap<String, Cow<'static, [u8]>>,
}

impl Theme {
    /// The theme that ships inside.
    #[must_use]
    pub fn paper() -> Self {
        let mut files = BTreeMap::new();
        gather(&PAPER, &mut files);
        Self { name: "paper".to_owned(), files }
    }

    /// A theme of one's own over `paper`: these files stand in place of those of the same path, or beside them.
    #[must_use]
    pub fn over_paper(name: impl Into<String>, files: BTreeMap<String, Vec<u8>>) -> Self {
        let mut theme = Self::paper();
        theme.name = name.into();
        theme.files.extend(files.into_iter().map(|(path, bytes)| (path, Cow::Owned(bytes))));
        theme
    }

    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The text of a file that every theme has.
    pub(super) fn text(&self, path: &str) -> Result<&str, ThemeError> {
        let bytes = self.files.get(path).ok_or_else(|| ThemeError::new(format!("the theme `{}` has no `{path}`", self.name)))?;
        std::str::from_utf8(bytes).map_err(|error| {
            let at = error.valid_up_to();
            ThemeError::new(format!("`{path}` of the theme `{}` is not UTF-8 text: byte {} is wrong", self.name, at + 1))
        })
    }

    /// Paths of all files in a folder, given with its slash.
    pub(super) fn in_folder<'a>(&'a self, folder: &'a str) -> impl Iterator<Item = &'a str> {
        self.files.keys().map(String::as_str).filter(move |path| path.starts_with(folder))
    }

    /// The bytes of a file.
    pub(super) fn bytes(&self, path: &str) -> Option<&[u8]> {
        self.files.get(path).map(AsRef::as_ref)
    }
}

fn gather(folder: &Dir<'static>, files: &mut BTreeMap<String, Cow<'static, [u8]>>) {
    for file in folder.files() {
        if let Some(path) = file.path().to_str() {
            files.insert(path.replace('\\', "/"), Cow::Borrowed(file.contents()));
        }
    }
    for inner in folder.dirs() {
        gather(inner, files);
    }
}
