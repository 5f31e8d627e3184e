//! What a file of the guidebook is, told from its path alone.
//!
//! This file reads nothing; where a file stands out of place it says so in words, and `load` makes the finding.

use crate::finding::Level;

/// What a path holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Role {
    Guidebook,
    Procedure,
    Cuts,
    Anatomy,
    Cautions,
    Tools,
    Course,
    CuttingTest,
    Prices,
    Page,
    Picture,
    /// A file of the theme folder.
    Theme,
    /// A text in another language beside a document.
    Translation,
    /// A file that is no business of ours; a link or a folder in its place may be.
    Other,
    /// Hidden, left behind by an editor, or kept beside any work.
    Ignored,
    /// Out of place.
    Stray(Stray),
}

/// Why a file is out of place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Stray {
    pub(super) level: Level,
    pub(super) message: String,
    pub(super) help: String,
    /// The path at which the document is known all the same, so that references to it stay silent.
    pub(super) meant: Option<String>,
}

/// Folders whose files are no procedures.
pub(super) const RESERVED: &[&str] = &["cuts", "anatomy", "courses", "cutting-tests", "pages", "pictures"];
/// Documents that stand beside `guidebook.yaml`.
const BESIDE: &[&str] = &["guidebook.yaml", "cautions.yaml", "tools.yaml", "prices.yaml"];
/// Files that people keep beside any work.
const KEPT: &[&str] = &["readme", "license", "licence", "copying", "notice", "changelog", "changes", "contributing", "authors", "security"];

/// Endings of pictures that a browser shows.
pub(super) const PICTURES: &[&str] = &["svg", "jpg", "jpeg", "png", "webp", "avif", "gif"];

/// The path without its ending.
pub(super) fn without_ending(path: &str) -> &str {
    let name_at = path.rfind('/').map_or(0, |slash| slash + 1);
    match path.rfind('.') {
        Some(dot) if dot > name_at => path.get(..dot).unwrap_or(path),
        _ => path,
    }
}

/// The ending of a path, without its dot.
pub(super) fn ending(path: &str) -> &str {
    path.get(without_ending(path).len()..).unwrap_or("").trim_start_matches('.')
}

/// What `path` holds. `theme` is the theme folder of the guidebook, if it has one of its own.
pub(super) fn role(path: &str, theme: Option<&str>) -> Role {
    let parts: Vec<&str> = path.split('/').collect();
    let name = parts.last().copied().unwrap_or("");
    if theme.is_some_and(|theme| path.strip_prefix(theme).is_some_and(|rest| rest.starts_with('/'))) {
        return if name.starts_with('.') || of_editor(name) || is_kept(name) { Role::Ignored } else { Role::Theme };
    }
    let hidden = parts.iter().any(|part| part.starts_with('.') || part.starts_with('_'));
    let editors = of_editor(name);
    if hidden || editors || is_kept(name) {
        return Role::Ignored;
    }
    let written = ending(name);
    match written.to_ascii_lowercase().as_str() {
        "yaml" if written == "yaml" => document(&parts),
        "yaml" | "yml" => other_ending(path, &parts),
        "csv" => match parts.as_slice() {
            ["cutting-tests", _, _] => Role::CuttingTest,
            _ => stray(
                Level::Advice,
                "no one reads this table here",
                "move it to `cutting-tests/<species>/<name>.csv`, or out of the guidebook",
            ),
        },
        "md" => match parts.as_slice() {
            ["pages", _] if is_translation(name) => Role::Translation,
            ["pages", _] => Role::Page,
            _ => stray(Level::Advice, "no one reads this page here", "move it to `pages/`, or out of the guidebook"),
        },
        _ if parts.first() == Some(&"pictures") && parts.len() > 1 => Role::Picture,
        lower if PICTURES.contains(&lower) && parts.len() <= 2 => {
            stray(Level::Advice, "no one shows this picture here", "move it to `pictures/`, or out of the guidebook")
        }
        _ => Role::Other,
    }
}

fn document(parts: &[&str]) -> Role {
    let name = parts.last().copied().unwrap_or("");
    if is_translation(name) {
        return if parts.len() <= 2 { Role::Translation } else { nested() };
    }
    match parts {
        ["guidebook.yaml"] => Role::Guidebook,
        ["cautions.yaml"] => Role::Cautions,
        ["tools.yaml"] => Role::Tools,
        ["prices.yaml"] => Role::Prices,
        [name] => {
            let near = BESIDE.iter().find(|known| strsim::damerau_levenshtein(known, name) <= 2);
            let help = near.map_or_else(
                || "a procedure stands in the folder of its species: `<species>/<name>.yaml`".to_owned(),
                |known| format!("rename it to `{known}`"),
            );
            Role::Stray(Stray { level: Level::Advice, message: "no document of the guidebook has this name".to_owned(), help, meant: None })
        }
        [_, name] if without_ending(name).contains('.') => {
            stray(Level::Advice, "no one reads this file, for a dot stands in its name", "put a hyphen in place of the dot")
        }
        ["cuts", _] => Role::Cuts,
        ["anatomy", _] => Role::Anatomy,
        ["courses", _] => Role::Course,
        ["cutting-tests", ..] => stray(Level::Advice, "a cutting test is a table, and this is none", "save it as `.csv`, a run a row"),
        [folder, _] if RESERVED.contains(folder) => stray(
            Level::Advice,
            &format!("no one reads this file: `{folder}` holds no documents"),
            "move it to the folder where it belongs",
        ),
        [_, _] => Role::Procedure,
        _ => nested(),
    }
}

fn nested() -> Role {
    stray(
        Level::Advice,
        "no one reads this file, for it stands too deep",
        "move it up: documents stand in a folder of the guidebook, not deeper",
    )
}

/// A `.yml` that would be a document if it ended in `.yaml`: its author believes that it is read.
fn other_ending(path: &str, parts: &[&str]) -> Role {
    let renamed = format!("{}.yaml", without_ending(path));
    let mut as_yaml = parts.to_vec();
    let name = renamed.rsplit('/').next().unwrap_or("");
    if let Some(last) = as_yaml.last_mut() {
        *last = name;
    }
    match document(&as_yaml) {
        Role::Stray(stray) => Role::Stray(stray),
        _ => Role::Stray(Stray {
            level: Level::Fault,
            message: format!("this file is not read, for it ends in `.{}`", ending(path)),
            help: format!("rename it to `{name}`"),
            meant: Some(renamed),
        }),
    }
}

fn stray(level: Level, message: &str, help: &str) -> Role {
    Role::Stray(Stray { level, message: message.to_owned(), help: help.to_owned(), meant: None })
}

/// True for the name of a file that an editor keeps beside another.
fn of_editor(name: &str) -> bool {
    name.ends_with('~') || (name.starts_with('#') && name.ends_with('#')) || is_leftover(ending(name))
}

/// What editors, systems and syncing programs leave behind.
fn is_leftover(ending: &str) -> bool {
    matches!(ending.to_ascii_lowercase().as_str(), "swp" | "swo" | "bak" | "orig" | "rej" | "tmp" | "old")
}

fn is_kept(name: &str) -> bool {
    let stem = name.split('.').next().unwrap_or("").to_ascii_lowercase();
    KEPT.contains(&stem.as_str()) && !ending(name).to_ascii_lowercase().starts_with('y')
}

/// True for `<name>.<language>.yaml`: a language of two or three letters, perhaps with a region.
fn is_translation(name: &str) -> bool {
    let Some((_, tag)) = without_ending(name).rsplit_once('.') else { return false };
    let mut parts = tag.split('-');
    let language = parts.next().is_some_and(|part| (2..=3).contains(&part.len()) && part.chars().all(|letter| letter.is_ascii_lowercase()));
    language && parts.all(|part| (2..=4).contains(&part.len()) && part.chars().all(|letter| letter.is_ascii_alphanumeric()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_path_has_its_role() {
        let cases: &[(&str, Role)] = &[
            ("guidebook.yaml", Role::Guidebook),
            ("pork/loin-boneless.yaml", Role::Procedure),
            ("cuts/pork.yaml", Role::Cuts),
            ("anatomy/pork.yaml", Role::Anatomy),
            ("cautions.yaml", Role::Cautions),
            ("tools.yaml", Role::Tools),
            ("prices.yaml", Role::Prices),
            ("courses/first-term.yaml", Role::Course),
            ("cutting-tests/pork/loin.csv", Role::CuttingTest),
            ("pages/about.md", Role::Page),
            ("pictures/a/b.svg", Role::Picture),
            ("pork/loin.es.yaml", Role::Translation),
            ("pages/about.pt-BR.md", Role::Translation),
            ("cautions.es.yaml", Role::Translation),
            (".git/config.yaml", Role::Ignored),
            ("_drafts/loin.yaml", Role::Ignored),
            ("pork/.loin.yaml", Role::Ignored),
            ("pork/loin.yaml~", Role::Ignored),
            ("pork/.loin.yaml.swp", Role::Ignored),
            ("README.md", Role::Ignored),
            ("LICENSE", Role::Ignored),
            ("pork/notes.txt", Role::Other),
            ("pork", Role::Other),
            ("themes/ours/base.html", Role::Other),
        ];
        for (path, expected) in cases {
            assert_eq!(role(path, None), *expected, "{path}");
        }
        assert_eq!(role("themes/ours/words.yaml", Some("themes/ours")), Role::Theme);
    }

    #[test]
    fn files_out_of_place_are_told() {
        let level = |path| match role(path, None) {
            Role::Stray(stray) => Some((stray.level, stray.help, stray.meant)),
            _ => None,
        };
        let renamed = level("pork/loin.yml");
        assert_eq!(renamed, Some((Level::Fault, "rename it to `loin.yaml`".to_owned(), Some("pork/loin.yaml".to_owned()))));
        assert_eq!(level("tools.yml").map(|told| told.0), Some(Level::Fault));
        assert_eq!(level("caution.yaml").map(|told| told.1), Some("rename it to `cautions.yaml`".to_owned()));
        for path in ["pork/primal/loin.yaml", "pork/loin.v2.yaml", "pictures/a.yaml", "loin.jpg", "pork/runs.csv", "notes.md", "a/b/c.yml"]
        {
            assert_eq!(level(path).map(|told| told.0), Some(Level::Advice), "{path}");
        }
    }
}
