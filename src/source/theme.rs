//! Which folder of the guidebook holds its theme, and which of its files are texts.
//!
//! A folder is a theme when a file stands below it where themes keep one: in `templates`, `styles`, `words` or `assets`. So
//! the name of a species or of the pictures never takes their files away. What the files hold is judged by `site`.

use std::collections::BTreeSet;

use super::documents::guidebook::Guidebook;
use super::layout::RESERVED;
use super::load::GUIDEBOOK;
use super::{Entry, Files, bytes, decode, yaml};
use crate::finding::FileId;

/// A file of the guidebook's own theme.
#[derive(Debug, Clone)]
pub struct ThemeFile {
    /// Where findings about it point.
    pub file: FileId,
    /// Its bytes; of a text without the byte order mark.
    pub bytes: Vec<u8>,
}

/// Folders of a theme that hold texts.
const TEXTS: &[&str] = &["templates", "styles", "words"];
/// The one that holds anything.
const ASSETS: &str = "assets";

/// The folder of the guidebook that holds its theme, if it has one of its own: the one that `theme` names.
pub(super) fn own(files: &Files) -> Option<String> {
    let Some(Entry::File(bytes)) = files.get(GUIDEBOOK) else { return None };
    let text = bytes::text_of(bytes.clone()).ok()?;
    let (node, _) = yaml::parse(&text, FileId(0));
    let (guidebook, _) = decode::decode::<Guidebook>(&node?, FileId(0));
    let named = guidebook?.theme.value()?.trim_start_matches("./").trim_end_matches('/').to_owned();
    files.keys().any(|path| theme_of(path) == Some(&named)).then_some(named)
}

/// All folders that could be a theme, and all others.
pub(super) fn folders(files: &Files) -> (BTreeSet<String>, BTreeSet<String>) {
    let themes: BTreeSet<String> = files.keys().filter_map(|path| theme_of(path)).map(str::to_owned).collect();
    let mut others = BTreeSet::new();
    for path in files.keys() {
        let folders = path.match_indices('/').filter_map(|(slash, _)| path.get(..slash));
        others.extend(folders.filter(|folder| !themes.contains(*folder)).map(str::to_owned));
    }
    (themes, others)
}

/// True for a file that must be text, by its path in the guidebook.
pub(super) fn is_text(path: &str) -> bool {
    path.rsplit('/').skip(1).any(|folder| TEXTS.contains(&folder)) && !path.split('/').any(|folder| folder == ASSETS)
}

/// The folder that this file makes a theme.
fn theme_of(path: &str) -> Option<&str> {
    let mut at = 0;
    for part in path.split('/') {
        let end = at + part.len();
        let holds = path.get(end..).is_some_and(|rest| rest.starts_with('/'));
        if at > 0 && holds && (part == ASSETS || TEXTS.contains(&part)) {
            let folder = path.get(..at - 1)?;
            let reserved = folder.split('/').any(|name| RESERVED.contains(&name) || name.starts_with(['.', '_']));
            return (!reserved).then_some(folder);
        }
        at = end + 1;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(paths: &[&str]) -> Files {
        paths.iter().map(|path| ((*path).to_owned(), Entry::File(Vec::new()))).collect()
    }

    #[test]
    fn a_folder_is_a_theme_by_what_lies_in_it() {
        let all = files(&["pork/loin.yaml", "ours/styles/own.css", "looks/dark/assets/icon.svg", "pictures/assets/a.svg", "assets/a.svg"]);
        let (themes, others) = folders(&all);
        assert_eq!(themes.into_iter().collect::<Vec<_>>(), ["looks/dark", "ours"]);
        assert!(others.contains("pork") && others.contains("looks") && others.contains("pictures"));
    }

    #[test]
    fn only_a_folder_that_holds_a_theme_is_taken() {
        let with = |theme: &str| {
            let mut all = files(&["pork/loin.yaml", "ours/words/en.ftl"]);
            all.insert(GUIDEBOOK.to_owned(), Entry::File(format!("title: G\ntheme: {theme}\n").into_bytes()));
            own(&all)
        };
        for named in ["ours", "./ours", "ours/", "./ours/"] {
            assert_eq!(with(named).as_deref(), Some("ours"), "{named}");
        }
        for other in ["paper", "pork", ".", "../ours", "/ours", ""] {
            assert_eq!(with(other), None, "{other}");
        }
    }

    #[test]
    fn what_lies_in_assets_may_be_anything() {
        assert!(is_text("ours/templates/home.html") && is_text("ours/words/en.ftl") && is_text("looks/dark/styles/own.css"));
        assert!(!is_text("ours/assets/words/logo.png") && !is_text("ours/notes.txt") && !is_text("words.txt"));
    }
}
