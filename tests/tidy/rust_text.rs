//! A rough reading of Rust text, enough for house rules: comments and strings blanked, functions measured.

/// The text with comments, strings and characters blanked, line breaks kept.
pub(crate) fn code_only(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let taken = match first {
            '/' if rest.starts_with("//") => rest.find('\n').unwrap_or(rest.len()),
            '"' => string_end(rest),
            'r' if rest.starts_with("r\"") || rest.starts_with("r#") => raw_string_end(rest),
            '\'' => character_end(rest),
            _ => 0,
        };
        if taken == 0 {
            out.push(first);
            rest = &rest[first.len_utf8()..];
        } else {
            out.extend(rest[..taken].chars().filter(|c| *c == '\n'));
            rest = &rest[taken..];
        }
    }
    out
}

fn string_end(text: &str) -> usize {
    let mut escaped = false;
    for (at, character) in text.char_indices().skip(1) {
        match character {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    text.len()
}

fn raw_string_end(text: &str) -> usize {
    let hashes = text[1..].chars().take_while(|c| *c == '#').count();
    if !text[1 + hashes..].starts_with('"') {
        return 0;
    }
    let close = format!("\"{}", "#".repeat(hashes));
    text[2 + hashes..].find(&close).map_or(text.len(), |at| 2 + hashes + at + close.len())
}

/// A character literal; a lifetime is left alone.
fn character_end(text: &str) -> usize {
    let mut characters = text.char_indices().skip(1);
    let Some((_, first)) = characters.next() else { return 0 };
    if first == '\\' {
        return text[2..].find('\'').map_or(0, |at| 2 + at + 1 + usize::from(text[2..].starts_with('\'')));
    }
    match characters.next() {
        Some((at, '\'')) => at + 1,
        _ => 0,
    }
}

/// Rooms named after `crate::`, with the line; those inside `crate::{…}` too.
pub(crate) fn imported_rooms(code: &str) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for (at, _) in code.match_indices("crate::") {
        let line = code[..at].matches('\n').count() + 1;
        let rest = &code[at + "crate::".len()..];
        let names = rest
            .strip_prefix('{')
            .map_or_else(|| vec![rest], |inner| inner.split_once('}').map_or(inner, |(inside, _)| inside).split(',').collect());
        for name in names {
            let word: String = name.trim_start().chars().take_while(|c| c.is_ascii_lowercase() || *c == '_').collect();
            found.push((line, word));
        }
    }
    found
}

/// Name, line and length of each function, measured by the indentation of its closing brace.
pub(crate) fn functions(text: &str) -> Vec<(String, usize, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let mut found = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        let start = line.trim_start();
        let Some(name) = start.split_once("fn ").filter(|(before, _)| before.split_whitespace().all(is_qualifier)).map(|(_, rest)| rest)
        else {
            continue;
        };
        let indent = line.len() - start.len();
        let close = format!("{}}}", " ".repeat(indent));
        let end = lines[at..].iter().position(|line| *line == close).unwrap_or(0);
        let name: String = name.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
        found.push((name, at + 1, end + 1));
    }
    found
}

fn is_qualifier(word: &str) -> bool {
    word.starts_with("pub") || ["const", "async", "unsafe", "in", "crate)", "super)"].contains(&word) || word.ends_with(')')
}
