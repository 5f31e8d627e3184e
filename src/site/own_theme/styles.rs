//! Styles of a theme's own: braces that close, nothing that a page cannot load, cautions that stay in sight, and the marks that
//! every sheet carries.

use crate::site::style::{Look, small};
use crate::site::theme::{OWN_STYLE, Theme};
use crate::site::theme_error::{ThemeError, Wrong};

/// Classes of what must stay in sight.
const KEPT: &[&str] = &[".caution", ".danger", ".warning", ".notice", ".before", ".state"];
/// Declarations that take something out of sight.
const HIDES: &[&str] = &["display:none", "visibility:hidden", "opacity:0}", "opacity:0;", "font-size:0}", "font-size:0;"];

/// What is wrong with the styles that a theme has of its own.
pub(super) fn wrong(theme: &Theme) -> Vec<ThemeError> {
    let mut errors = Vec::new();
    for (path, bytes) in theme.changes().filter(|(path, _)| path.starts_with("styles/")) {
        let Ok(text) = std::str::from_utf8(bytes) else { continue };
        errors.extend(unclosed(path, text));
        errors.extend(loads(path, text));
        errors.extend(hides(path, text));
    }
    errors.extend(unmarked(theme));
    errors
}

/// A brace without its other half: all rules behind it would be lost.
fn unclosed(path: &str, text: &str) -> Option<ThemeError> {
    let mut open = Vec::new();
    for (at, character) in code(text) {
        match character {
            '{' => open.push(at),
            '}' if open.pop().is_none() => {
                return Some(
                    ThemeError::at(path, text, at, "this `}` closes nothing").help("Take it out, or write the rule that it ends."),
                );
            }
            _ => {}
        }
    }
    let at = open.pop()?;
    Some(
        ThemeError::at(path, text, at, "this `{` is never closed, so that all rules behind it are lost")
            .help("Write `}` where the rule ends."),
    )
}

/// What a style would load: pages lie in many folders, and their policy allows no fonts and no other style sheets.
fn loads(path: &str, text: &str) -> Vec<ThemeError> {
    let plain: String = code(text).map(|(_, character)| character).collect();
    let found = [("@import", "a page loads no other style sheet"), ("@font-face", "a page loads no fonts"), ("url(", "")];
    let mut errors = Vec::new();
    for (word, why) in found {
        for (at, _) in text.match_indices(word).filter(|_| plain.contains(word)) {
            let rest = text.get(at + word.len()..).unwrap_or("").trim_start_matches(['"', '\'']);
            let message = match why {
                "" if rest.starts_with("data:") || rest.starts_with('#') => continue,
                "" => "this is looked for in the folder of each page, where it does not lie",
                why => why,
            };
            let help = "Write a picture into the style as `data:`, or show it in a template: `<img src=\"{{ page.assets[\"name.svg\"] }}\" alt=\"\">`.";
            let help = if why.is_empty() {
                help
            } else {
                "Write the rules themselves here; `font-family` can name the fonts of the reader's system."
            };
            errors.push(ThemeError { wrong: Wrong::Policy, ..ThemeError::at(path, text, at, message).wide(word).help(help) });
        }
    }
    errors
}

/// A rule that takes cautions out of sight.
fn hides(path: &str, text: &str) -> Vec<ThemeError> {
    let mut errors = Vec::new();
    let mut start = 0;
    for (at, character) in code(text) {
        match character {
            '{' => {
                let selectors = text.get(start..at).unwrap_or("");
                let body = text.get(at + 1..).unwrap_or("");
                let rule = small(body.split(['{', '}']).next().unwrap_or("")).replace(": ", ":") + "}";
                let kept = selectors.split(',').find_map(|selector| {
                    let last = selector.trim().rsplit([' ', '>', '+', '~']).next()?;
                    KEPT.iter().find(|class| last.ends_with(**class))
                });
                if let (Some(class), Some(_)) = (kept, HIDES.iter().find(|hidden| rule.contains(**hidden))) {
                    let from = start + selectors.rfind(*class).unwrap_or(0);
                    let message = format!("this takes `{class}` out of sight");
                    let help = "Let cautions and the state of a guide be seen on every screen and sheet.";
                    errors.push(ThemeError { wrong: Wrong::Safety, ..ThemeError::at(path, text, from, message).wide(class).help(help) });
                }
                start = at + 1;
            }
            '}' | ';' => start = at + 1,
            _ => {}
        }
    }
    errors
}

/// Sheets without the line that says which revision they are of, or that a guide is not in force.
fn unmarked(theme: &Theme) -> Option<ThemeError> {
    let files = Look::Guide.all_files().chain([OWN_STYLE]);
    let all: String = files.filter_map(|file| theme.text(file).ok()).map(small).collect::<String>().replace(": ", ":");
    let missing = ["content:var(--state)", "content:var(--card)"].into_iter().find(|mark| !all.contains(mark))?;
    let changed = Look::Guide.all_files().find(|file| theme.changes_file(file)).unwrap_or(OWN_STYLE);
    let message = format!("no sheet of paper carries `{missing}`, so that its revision and its state are not on it");
    let help = "Keep the boxes of `@page` that `styles/base.css` of `paper` has.";
    Some(ThemeError { wrong: Wrong::Safety, ..ThemeError::new(message).help(help).at_file(changed) })
}

/// The characters of a style that are neither comment nor string, each with its byte.
fn code(css: &str) -> impl Iterator<Item = (usize, char)> {
    let mut quote: Option<char> = None;
    let mut comment = false;
    let mut skip = false;
    css.char_indices().filter(move |(at, character)| {
        let rest = css.get(*at..).unwrap_or("");
        if std::mem::take(&mut skip) {
            return false;
        }
        match quote {
            _ if comment => {
                if rest.starts_with("*/") {
                    comment = false;
                    skip = true;
                }
                false
            }
            Some(open) => {
                skip = *character == '\\';
                if *character == open {
                    quote = None;
                }
                false
            }
            None if rest.starts_with("/*") => {
                comment = true;
                skip = true;
                false
            }
            None => {
                if matches!(character, '"' | '\'') {
                    quote = Some(*character);
                }
                true
            }
        }
    })
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;

    fn told(css: &str) -> Vec<String> {
        let theme = Theme::over_paper("own", BTreeMap::from([(OWN_STYLE.to_owned(), css.as_bytes().to_vec())]));
        wrong(&theme).iter().map(ToString::to_string).collect()
    }

    #[test]
    fn sound_rules_are_silent() {
        assert_eq!(told("/* { */ a::before{content:\"}\\\"{\";background:url(data:image/svg+xml,x)}"), [""; 0]);
        assert_eq!(told(".caution .soft{display:none}@media print{.kit{display:none}.caution{color:#000;opacity:.9}}"), [""; 0]);
    }

    #[test]
    fn braces_and_loads_are_told() {
        assert_eq!(told("a{b:c}\n}"), ["styles/own.css:2:1: this `}` closes nothing"]);
        assert!(told("a{b:c}\n d{e:f").first().unwrap().starts_with("styles/own.css:2:3: this `{` is never closed"));
        assert_eq!(told("a{b:url( c.png)}").len(), 1);
        assert_eq!(told("@import 'x.css';").len(), 1);
    }

    #[test]
    fn cautions_are_not_hidden() {
        assert_eq!(
            told("@media print { .step .caution.notice, b { display: none } }"),
            ["styles/own.css:1:30: this takes `.notice` out of sight"]
        );
        let base = Theme::over_paper("own", BTreeMap::from([("styles/base.css".to_owned(), b"a{}".to_vec())]));
        assert!(wrong(&base).first().unwrap().to_string().contains("content:var(--state)"));
    }
}
