//! The templates of a theme, compiled; everything that is wrong with them is found at once.

use std::collections::{BTreeMap, BTreeSet};

use tera::{ErrorKind, Tera};

use super::telling::{REFERENCE, one_of, unclosed};
use super::theme::Theme;
use super::theme_error::ThemeError;

/// Filters that templates of ours use or that are of use to a theme; only to offer the nearest.
const FILTERS: &[&str] = &[
    "word",
    "piece_anchor",
    "safe",
    "join",
    "length",
    "lower",
    "upper",
    "capitalize",
    "title",
    "trim",
    "replace",
    "first",
    "last",
    "default",
];

/// The folder of the templates.
const FOLDER: &str = "templates/";

/// Compiles all templates of a theme into `tera`, whose filters are registered.
pub(super) fn compile(theme: &Theme, tera: &mut Tera) -> Result<(), Vec<ThemeError>> {
    let texts = texts(theme)?;
    let Err(error) = tera.add_raw_templates(texts.iter().copied()) else { return Ok(()) };
    match error.kind() {
        ErrorKind::SyntaxError(_) => Err(texts.iter().filter_map(|(name, text)| syntax(name, text)).collect()),
        ErrorKind::Msg(reports) if reports.starts_with("error: ") => {
            let (gone, rest) = gone(ThemeError::all_told(reports), theme);
            Err(rest.into_iter().map(|error| named(error, &texts)).chain(gone).collect())
        }
        ErrorKind::MissingParent { current, parent } => Err(vec![missing_parent(current, parent, &texts)]),
        _ => Err(vec![of_many(&error.to_string(), theme, &texts)]),
    }
}

/// Names and texts of all templates.
fn texts(theme: &Theme) -> Result<Vec<(&str, &str)>, Vec<ThemeError>> {
    let mut texts = Vec::new();
    let mut errors = Vec::new();
    for path in theme.in_folder(FOLDER) {
        match theme.text(path) {
            Ok(text) => texts.push((path.trim_start_matches(FOLDER), text)),
            Err(error) => errors.push(error),
        }
    }
    if errors.is_empty() { Ok(texts) } else { Err(errors) }
}

/// What one template alone is not written as it should be.
fn syntax(name: &str, text: &str) -> Option<ThemeError> {
    let error = Tera::new().add_raw_template(name, text).err()?;
    if !matches!(error.kind(), ErrorKind::SyntaxError(_)) {
        return None;
    }
    let (end, ended) = match error.kind() {
        ErrorKind::SyntaxError(report) if report.message().starts_with("Unexpected end") => (text.len(), ""),
        ErrorKind::SyntaxError(report) => (report.span().range.start, text.get(report.span().range.start..).unwrap_or("")),
        _ => (text.len(), ""),
    };
    let told = ThemeError::from(error);
    // Where an end is missing, the mistake is not where the engine stumbles but where the part begins.
    let opened = text
        .get(..end)
        .and_then(unclosed)
        .filter(|(_, word)| ended.is_empty() || (ended.starts_with("end") && !ended.starts_with(&format!("end{word}"))));
    Some(match opened {
        Some((at, word)) => ThemeError::at(&format!("{FOLDER}{name}"), text, at, format!("this `{{% {word} … %}}` has no end"))
            .help(format!("Write `{{% end{word} %}}` where it ends.")),
        None => told,
    })
}

/// Components that templates of `paper` call and that a file of the theme no longer has: told once, at that file. The rest
/// is given back.
fn gone(errors: Vec<ThemeError>, theme: &Theme) -> (Vec<ThemeError>, Vec<ThemeError>) {
    let mut gone: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    let mut rest = Vec::new();
    for error in errors {
        let own = error.place.as_ref().is_some_and(|(file, _, _)| theme.changes_file(file));
        let name = error.message.strip_prefix("no component is called `").and_then(|name| name.strip_suffix('`'));
        let from = name.filter(|_| !own).and_then(|name| {
            let had = |path: &&str| theme.paper_text(path).is_some_and(|text| components(text).any(|(known, _)| known == name));
            theme.of_paper().filter(|path| path.starts_with(FOLDER) && theme.changes_file(path)).find(had)
        });
        match (from, name) {
            (Some(file), Some(name)) => drop(gone.entry(file).or_default().insert(name.to_owned())),
            _ => rest.push(error),
        }
    }
    let told = |(file, names): (&str, BTreeSet<String>)| {
        let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
        let message = format!("other templates call {}, which the same file of `paper` has and this one has not", names.join(", "));
        ThemeError::new(message).help("Copy what is missing from the file of `paper`.").at_file(file)
    };
    (gone.into_iter().map(told).collect(), rest)
}

/// An unknown name, with what there is.
fn named(error: ThemeError, texts: &[(&str, &str)]) -> ThemeError {
    let Some(name) = error.message.split('`').nth(1).map(str::to_owned) else { return error };
    let known: Vec<String> = match error.message.split(' ').nth(1) {
        Some("component") => texts.iter().flat_map(|(_, text)| components(text)).map(|(name, _)| name.to_owned()).collect(),
        Some("template") => texts.iter().map(|(name, _)| (*name).to_owned()).collect(),
        Some("filter") => FILTERS.iter().map(|name| (*name).to_owned()).collect(),
        _ => Vec::new(),
    };
    let nearest = one_of(&name, &known);
    let help = if nearest.starts_with("Write") { nearest } else { format!("All that there is stands in {REFERENCE}.") };
    if error.help.is_empty() { error.help(help) } else { error }
}

fn missing_parent(current: &str, parent: &str, texts: &[(&str, &str)]) -> ThemeError {
    let text = texts.iter().find(|(name, _)| *name == current).map_or("", |(_, text)| text);
    let at = text.find(&format!("\"{parent}\"")).unwrap_or(0);
    let known: Vec<String> = texts.iter().map(|(name, _)| (*name).to_owned()).collect();
    ThemeError::at(&format!("{FOLDER}{current}"), text, at, format!("no template is called `{parent}`"))
        .wide(&format!("\"{parent}\""))
        .help(one_of(parent, &known))
}

/// Something between several templates: it is told at the one that the theme changes.
fn of_many(message: &str, theme: &Theme, texts: &[(&str, &str)]) -> ThemeError {
    let quoted: Vec<&str> = message.split(['`', '\'', '"']).collect();
    let mut own = texts.iter().filter(|(name, _)| quoted.contains(name) && theme.changes_file(&format!("{FOLDER}{name}")));
    let error = match own.next() {
        Some((name, text)) => {
            let meant = format!("component {}", quoted.get(1).unwrap_or(&""));
            ThemeError::at(&format!("{FOLDER}{name}"), text, text.find(&meant).unwrap_or(0), message)
        }
        None => ThemeError::new(message),
    };
    super::telling::told(error)
}

/// The components that a template defines, each with the byte at which its name stands.
pub(super) fn components(template: &str) -> impl Iterator<Item = (&str, usize)> {
    template.match_indices("component ").filter_map(|(at, word)| {
        let before = template.get(..at)?.trim_end().trim_end_matches('-');
        let name_at = at + word.len();
        let name = template.get(name_at..)?.split(|c: char| !(c.is_alphanumeric() || c == '_')).next()?;
        (before.ends_with("{%") && !name.is_empty()).then_some((name, name_at))
    })
}
