//! What templates get, read from the templates and from the types that fill them, as the second half of `themes/README.md`.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

/// Where the types stand that templates get.
const TYPES: &[&str] = &["src/site/context", "src/site/views/search.rs", "src/figures"];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The files at a path, sorted.
fn files(path: &str) -> Vec<PathBuf> {
    let path = root().join(path);
    if path.is_file() {
        return vec![path];
    }
    let mut files: Vec<PathBuf> = fs::read_dir(path).unwrap().map(|entry| entry.unwrap().path()).filter(|path| path.is_file()).collect();
    files.sort();
    files
}

/// A type that templates get.
pub(crate) struct Type {
    pub(crate) name: String,
    /// The file that holds it.
    file: String,
    /// The names of its fields, and of what type each is.
    pub(crate) fields: Vec<(String, String)>,
    /// Types whose fields stand among its own.
    pub(crate) with: Vec<String>,
}

/// All types that can be written into a page.
pub(crate) fn types() -> Vec<Type> {
    let mut all = Vec::new();
    for file in TYPES.iter().flat_map(|path| files(path)) {
        let text = fs::read_to_string(&file).unwrap();
        let file = file.strip_prefix(root()).unwrap().to_string_lossy().replace('\\', "/");
        for (at, _) in text.match_indices("pub struct ") {
            let derived = text[..at].rsplit("\n\n").next().unwrap();
            let (Some((name, body)), true) = (text[at + 11..].split_once(" {\n"), derived.contains("Serialize")) else { continue };
            if !name.chars().all(char::is_alphanumeric) {
                continue;
            }
            let body = body.split("\n}").next().unwrap();
            let mut fields = Vec::new();
            let mut with = Vec::new();
            let mut flat = false;
            for line in body.lines().map(str::trim) {
                flat |= line.contains("serde(flatten)");
                let Some((field, kind)) = line.strip_prefix("pub ").and_then(|line| line.trim_end_matches(',').split_once(": ")) else {
                    continue;
                };
                if std::mem::take(&mut flat) { with.push(kind.to_owned()) } else { fields.push((field.to_owned(), kind.to_owned())) }
            }
            all.push(Type { name: name.to_owned(), file: file.clone(), fields, with });
        }
    }
    all
}

/// The comment at the head of a template, and its components with what they take.
fn templates() -> Vec<(String, String, Vec<String>)> {
    let read = |path: PathBuf| {
        let text = fs::read_to_string(&path).unwrap();
        let head = text.strip_prefix("{#-").and_then(|text| text.split_once("-#}")).map_or("", |(head, _)| head);
        let head = head.split_whitespace().collect::<Vec<_>>().join(" ");
        let components = text
            .match_indices("{% component ")
            .filter_map(|(at, word)| text[at + word.len()..].split_once(" -%}"))
            .map(|(taken, _)| taken.to_owned());
        (path.file_name().unwrap().to_string_lossy().into_owned(), head, components.collect())
    };
    files("themes/paper/templates").into_iter().map(read).collect()
}

/// The whole half.
pub(crate) fn reference() -> String {
    let types = types();
    let by_name: BTreeMap<&str, &Type> = types.iter().map(|one| (one.name.as_str(), one)).collect();
    let mut out = String::from("\n## Templates and their components\n\n");
    for (name, head, components) in templates() {
        let _ = writeln!(out, "- `{name}`: {head}");
        for component in components {
            let _ = writeln!(out, "  - `{component}`");
        }
    }
    out.push_str("\n## Types\n\nA field without an arrow is a text, a number, or true or false; `[…]` is a list. What each means stands beside it in the file.\n");
    let mut file = "";
    for one in &types {
        if one.file != file {
            file = &one.file;
            let _ = writeln!(out, "\n`{file}`\n");
        }
        let shown = |(field, kind): &(String, String)| {
            let inner = kind.trim_start_matches("Option<").trim_start_matches("Vec<").trim_end_matches('>');
            let list = kind.contains("Vec<");
            match (by_name.contains_key(inner), list) {
                (true, true) => format!("`{field}` → [`{inner}`]"),
                (true, false) => format!("`{field}` → `{inner}`"),
                (false, true) => format!("`{field}` → […]"),
                (false, false) => format!("`{field}`"),
            }
        };
        let fields: Vec<String> = one.fields.iter().map(shown).chain(one.with.iter().map(|with| format!("all of `{with}`"))).collect();
        let _ = writeln!(out, "- **{}**: {}.", one.name, fields.join(", "));
    }
    out.push_str("\n## Styles\n\n");
    for file in files("themes/paper/styles") {
        let text = fs::read_to_string(&file).unwrap();
        let head = text.strip_prefix("/*").and_then(|text| text.split_once("*/")).map_or("", |(head, _)| head);
        let first = head.split_whitespace().collect::<Vec<_>>().join(" ");
        let first = first.split_once(". ").map_or(first.as_str(), |(first, _)| first).trim_end_matches('.').to_owned();
        let _ = writeln!(out, "- `{}`: {first}.", file.file_name().unwrap().to_string_lossy());
    }
    out
}
