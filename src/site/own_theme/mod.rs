//! What is wrong with a theme of the guidebook's own, as findings that point into its files.
//!
//! The theme is compiled and every page is made with it: a mistake in a template shows only where a page asks for it. A
//! built-in theme is held by tests and never looked through here.

mod escaping;
pub(super) mod guard;
mod markup;
mod placed;
mod styles;
mod unused;

use rayon::prelude::*;

use super::Site;
use super::engine::Engine;
use super::theme::Theme;
use super::theme_error::{ThemeError, Wrong};
use crate::checks::Checked;
use crate::finding::{Finding, order};
use crate::model::Guidebook;

/// Everything that is wrong with the theme of a guidebook, sorted; nothing where it has none of its own.
#[must_use]
pub fn findings(checked: &Checked<Guidebook>) -> Vec<Finding> {
    let book = checked.value();
    if book.own_theme.files.is_empty() {
        return Vec::new();
    }
    let theme = Theme::of(book);
    let language = book.language.value().map_or("en", String::as_str);
    let mut errors = styles::wrong(&theme);
    errors.extend(escaping::unescaped(&theme));
    match Engine::with_all_errors(&theme, language) {
        Err(found) => errors.extend(found),
        Ok(engine) => {
            errors.extend(unused::unused(&theme, book, &engine.words));
            errors.extend(on_pages(checked, &theme, engine));
        }
    }
    errors.extend(unused::misplaced(&theme, book));
    let mut findings: Vec<Finding> = errors.iter().map(|error| placed::finding(error, &theme, checked)).collect();
    order::sort(&mut findings, checked.sources());
    findings
}

/// What shows only on pages: each mistake once, at the first page that has it.
fn on_pages(checked: &Checked<Guidebook>, theme: &Theme, engine: Engine) -> Vec<ThemeError> {
    let site = Site::with(checked, engine.guarded());
    let closing = site.closing();
    // A page that lists what all others came to fails with any of them, so it is tried alone once they are sound.
    let (last, pages): (Vec<String>, Vec<String>) =
        site.pages().into_iter().filter(|path| path.ends_with(".html")).partition(|path| closing.contains(path));
    let tried = |path: String| site.render(&path).err().map(|error| (path, error));
    let mut told: Vec<(String, ThemeError)> = pages.into_par_iter().filter_map(tried).collect();
    if told.is_empty() {
        told.extend(last.into_iter().filter_map(tried));
    }
    let mut once: Vec<(ThemeError, String, usize)> = Vec::new();
    for (path, error) in told.into_iter().map(|(path, error)| (path, blamed(error, theme))) {
        // What the guard tells names a step and a caution; of one template one such message is enough.
        let same = |known: &ThemeError| known.place == error.place && known.wrong == error.wrong;
        match once.iter_mut().find(|(known, _, _)| same(known) && (error.wrong != Wrong::Broken || known.message == error.message)) {
            Some((_, _, more)) => *more += 1,
            None => once.push((error, path, 0)),
        }
    }
    once.into_iter()
        .map(|(error, path, more)| {
            let also = match more {
                0 => String::new(),
                1 => " and on one more page".to_owned(),
                more => format!(" and on {more} more pages"),
            };
            let message = format!("{} (on {path}{also})", error.message);
            ThemeError { message, ..error }
        })
        .collect()
}

/// What a page lacks is most likely the doing of the template that the theme changes.
fn blamed(error: ThemeError, theme: &Theme) -> ThemeError {
    let files: &[&str] = match error.wrong {
        Wrong::Policy => &["templates/base.html"],
        Wrong::Safety => &["templates/step.html", "templates/parts.html", "templates/base.html"],
        Wrong::Broken | Wrong::Unused => &[],
    };
    let first = error.place.as_ref().map_or("", |(file, _, _)| file.as_str());
    // Where the template says how it begins, that place is meant.
    let written = std::iter::once(first).chain(files.iter().copied()).chain(theme.in_folder("templates/")).find_map(|file| {
        let text = theme.text(file).ok().filter(|_| theme.changes_file(file) && !error.begins.is_empty())?;
        Some((file, text, text.find(&error.begins)?))
    });
    if let Some((file, text, at)) = written {
        let place = ThemeError::at(file, text, at, "").place;
        return ThemeError { place, width: error.begins.chars().count(), ..error };
    }
    match files.iter().find(|file| !theme.changes_file(first) && theme.changes_file(file)) {
        Some(file) => error.at_file(file),
        None => error,
    }
}
