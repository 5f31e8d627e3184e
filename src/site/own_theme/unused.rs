//! What a theme holds and nothing uses: its author believes that it does something.

use std::collections::BTreeSet;

use crate::model::Guidebook;
use crate::model::names::nearest;
use crate::site::engine::words_named_in;
use crate::site::templates::components;
use crate::site::theme::{OWN_STYLE, Theme};
use crate::site::theme_error::{ThemeError, Wrong};
use crate::site::words::{Words, messages};

const FOLDERS: [&str; 4] = ["templates", "styles", "words", "assets"];

/// Files where no theme keeps one, or under a name that nothing asks for.
pub(super) fn misplaced(theme: &Theme, book: &Guidebook) -> Vec<ThemeError> {
    theme.changes().filter_map(|(path, _)| Some(advice(path, whats_wrong(theme, book, path)?))).collect()
}

fn advice(path: &str, (message, help): (String, String)) -> ThemeError {
    ThemeError { wrong: Wrong::Unused, ..ThemeError::new(message).help(help).at_file(path) }
}

/// What is wrong with the place of a file, and what to do.
fn whats_wrong(theme: &Theme, book: &Guidebook, path: &str) -> Option<(String, String)> {
    let (folder, name) = path.split_once('/').unwrap_or(("", path));
    if theme.is_of_paper(path) {
        return None;
    }
    let instead = |known: &mut dyn Iterator<Item = &str>| nearest(path, known).map(|near| format!("Rename it to `{near}`."));
    match folder {
        "templates" if !name.ends_with(".html") => {
            Some(("a template ends in `.html`, so that what it prints is made safe".to_owned(), "Rename it.".to_owned()))
        }
        "templates" if is_called(theme, name) => None,
        "styles" if path == OWN_STYLE => None,
        "templates" | "styles" => {
            let known = theme.of_paper().chain([OWN_STYLE]).filter(|known| known.starts_with(folder));
            let else_help =
                if folder == "styles" { "Move its rules into `styles/own.css`." } else { "Name it in another template, or delete it." };
            let help = instead(&mut known.into_iter()).unwrap_or_else(|| else_help.to_owned());
            Some((format!("no page uses this {}", if folder == "styles" { "style" } else { "template" }), help))
        }
        "words" => unused_words(book, name),
        "assets" if is_named(theme, name) => None,
        "assets" => {
            let known = theme.of_paper().filter(|known| known.starts_with(folder));
            let help = instead(&mut known.into_iter())
                .unwrap_or_else(|| format!("Write `{{{{ page.assets[\"{name}\"] }}}}` in a template, or delete it."));
            Some(("no template names this asset".to_owned(), help))
        }
        _ => {
            let near = nearest(folder, FOLDERS).map(|near| format!("Rename the folder to `{near}`."));
            let help = near.unwrap_or_else(|| "A theme keeps its files in `templates`, `styles`, `words` and `assets`.".to_owned());
            Some(("nothing uses this file of the theme".to_owned(), help))
        }
    }
}

/// A file of words is used when it is of the guidebook's language, or of one of its translations.
fn unused_words(book: &Guidebook, name: &str) -> Option<(String, String)> {
    let own = book.language.value().map_or("en", String::as_str);
    let used: BTreeSet<&str> = std::iter::once(own)
        .chain(book.also_in.iter().map(|language| language.value.as_str()))
        .flat_map(|language| [language, language.split('-').next().unwrap_or("")])
        .chain(["en"])
        .collect();
    let language = name.strip_suffix(".ftl");
    if language.is_some_and(|language| used.contains(language)) {
        return None;
    }
    let message = match language {
        Some(language) => format!("this guidebook has no page in `{language}`"),
        None => "a file of words is called by its language and ends in `.ftl`".to_owned(),
    };
    Some((message, format!("Rename it to `{own}.ftl`, or delete it.")))
}

/// True when another template extends or includes this one, or calls one of its components.
fn is_called(theme: &Theme, name: &str) -> bool {
    let own = format!("templates/{name}");
    let calls: Vec<String> =
        theme.text(&own).map_or_else(|_| Vec::new(), |text| components(text).map(|(name, _)| format!("<{name}")).collect());
    let quoted = [format!("\"{name}\""), format!("'{name}'")];
    let called = |text: &str| {
        quoted.iter().any(|name| text.contains(name.as_str()))
            || calls.iter().any(|call| {
                text.match_indices(call.as_str())
                    .any(|(at, _)| text.get(at + call.len()..).is_some_and(|rest| rest.starts_with([' ', '/', '>', '\n'])))
            })
    };
    theme.in_folder("templates/").filter(|path| *path != own).any(|path| theme.text(path).is_ok_and(called))
}

/// True when a template or a script of the theme names this asset.
fn is_named(theme: &Theme, name: &str) -> bool {
    let files = theme.in_folder("templates/").chain(theme.in_folder("assets/"));
    files.filter_map(|path| theme.text(path).ok()).any(|text| text.contains(name))
}

/// Words that no template asks for: most likely misspelt.
pub(super) fn unused(theme: &Theme, book: &Guidebook, words: &Words) -> Vec<ThemeError> {
    let Ok(files) = theme.words(book.language.value().map_or("en", String::as_str)) else { return Vec::new() };
    let known: BTreeSet<&str> = files.iter().filter(|file| !file.own).flat_map(|file| messages(file.text)).map(|(id, _)| id).collect();
    let asked: BTreeSet<&str> = theme.in_folder("templates/").filter_map(|path| theme.text(path).ok()).flat_map(words_named_in).collect();
    let mut errors = Vec::new();
    for file in files.iter().filter(|file| file.own) {
        for (id, at) in messages(file.text) {
            if known.contains(id) || asked.contains(id) || !words.has(id) {
                continue;
            }
            let near = nearest(id, known.iter().copied())
                .map_or_else(|| "Delete it, or ask for it in a template.".to_owned(), |near| format!("Write `{near}`."));
            let told = ThemeError::at(&file.path, file.text, at, format!("no template asks for the word `{id}`")).wide(id).help(near);
            errors.push(ThemeError { wrong: Wrong::Unused, ..told });
        }
    }
    errors
}
