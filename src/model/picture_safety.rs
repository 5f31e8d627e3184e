//! Whether a drawing in SVG can do more than be looked at: run a script, or fetch something.
//!
//! A pure look at the bytes; it repairs nothing. Pages show drawings as images, where browsers run nothing, but a
//! reader may open the file by itself. Photographs hold no code and are always fine.

use std::fmt;

/// Why a drawing is not safe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Danger {
    /// It is not UTF-8 text, so that it may be read otherwise than it was looked at.
    NotUtf8,
    /// It declares another encoding, or entities, or a style sheet of its own outside.
    Declaration(String),
    /// An element that runs or holds foreign content.
    Element(String),
    /// An attribute that runs something.
    Attribute(String),
    /// Something that leads out of the file.
    Outside(String),
    /// Text that is no well-formed markup.
    Malformed,
}

impl fmt::Display for Danger {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotUtf8 => f.write_str("it is not UTF-8 text"),
            Self::Declaration(text) => write!(f, "it holds the declaration `{text}`"),
            Self::Element(name) => write!(f, "it holds an element `{name}`"),
            Self::Attribute(name) => write!(f, "it holds an attribute `{name}`, which can run code"),
            Self::Outside(target) => write!(f, "it leads out of the file, to `{target}`"),
            Self::Malformed => f.write_str("its markup is broken"),
        }
    }
}

/// Elements, by local name in lower case, that run code, hold foreign content or change attributes later.
const REFUSED: &[&str] = &[
    "script",
    "foreignobject",
    "iframe",
    "object",
    "embed",
    "audio",
    "video",
    "handler",
    "listener",
    "set",
    "animate",
    "animatemotion",
    "animatetransform",
    "animatecolor",
    "discard",
    "html",
    "body",
    "link",
    "meta",
    "base",
    "form",
    "input",
    "button",
    "portal",
];

/// Attributes, by local name, whose value is a target.
const TARGETS: &[&str] = &["href", "src", "action", "formaction", "data", "srcset", "ping", "background"];

/// The first danger in a picture; `None` for a photograph or a drawing that can only be looked at.
#[must_use]
pub fn danger(bytes: &[u8]) -> Option<Danger> {
    let photograph = matches!(bytes, [0x89, b'P', b'N', b'G', ..] | [0xff, 0xd8, 0xff, ..] | [b'G', b'I', b'F', b'8', ..])
        || (bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP"))
        || bytes.get(4..8) == Some(b"ftyp");
    if photograph {
        return None;
    }
    let Ok(text) = std::str::from_utf8(bytes) else { return Some(Danger::NotUtf8) };
    look(text).err()
}

/// Goes through all markup of the text.
fn look(text: &str) -> Result<(), Danger> {
    let mut rest = text;
    let mut in_style = false;
    while let Some(at) = rest.find('<') {
        let (between, after) = rest.split_at(at);
        if in_style {
            style(between)?;
        }
        rest = if let Some(comment) = after.strip_prefix("<!--") {
            comment.split_once("-->").ok_or(Danger::Malformed)?.1
        } else if let Some(data) = after.strip_prefix("<![CDATA[") {
            let (inside, after) = data.split_once("]]>").ok_or(Danger::Malformed)?;
            if in_style {
                style(inside)?;
            }
            after
        } else if after.starts_with("<?") || after.starts_with("<!") {
            let (inside, after) = after.split_once('>').ok_or(Danger::Malformed)?;
            declaration(inside)?;
            after
        } else {
            let (tag, after) = tag(after.get(1..).unwrap_or(""))?;
            let name = local(tag.split(|c: char| c.is_whitespace() || c == '/').find(|part| !part.is_empty()).unwrap_or(""));
            if tag.starts_with('/') {
                in_style = in_style && name != "style";
            } else {
                element(&name, tag)?;
                in_style = name == "style" && !tag.ends_with('/');
            }
            after
        };
    }
    Ok(())
}

/// The inside of a tag up to its end outside of quotes, and what follows.
fn tag(text: &str) -> Result<(&str, &str), Danger> {
    let mut quote = None;
    for (at, character) in text.char_indices() {
        match (quote, character) {
            (None, '"' | '\'') => quote = Some(character),
            (Some(open), close) if open == close => quote = None,
            (None, '>') => return Ok((text.get(..at).unwrap_or(""), text.get(at + 1..).unwrap_or(""))),
            (None, '<') => return Err(Danger::Malformed),
            _ => {}
        }
    }
    Err(Danger::Malformed)
}

/// The name without its prefix, in lower case.
fn local(name: &str) -> String {
    name.rsplit(':').next().unwrap_or("").to_ascii_lowercase()
}

fn declaration(inside: &str) -> Result<(), Danger> {
    let lower = inside.to_ascii_lowercase();
    let refused = || Err(Danger::Declaration(inside.trim_start_matches(['<', '?', '!']).chars().take(40).collect()));
    if lower.starts_with("<!doctype") {
        return if lower.contains('[') { refused() } else { Ok(()) };
    }
    if lower.starts_with("<!") || lower.contains("stylesheet") {
        return refused();
    }
    match lower.split_once("encoding") {
        Some((_, encoding)) if lower.starts_with("<?xml") => {
            let encoding = encoding.trim_start_matches([' ', '=', '"', '\'']);
            let known = ["utf-8", "utf8", "us-ascii"].iter().any(|name| encoding.starts_with(name));
            if known { Ok(()) } else { refused() }
        }
        _ => Ok(()),
    }
}

fn element(name: &str, tag: &str) -> Result<(), Danger> {
    if REFUSED.contains(&name) {
        return Err(Danger::Element(name.to_owned()));
    }
    let mut rest = tag.split_once(char::is_whitespace).map_or("", |(_, rest)| rest);
    while let Some((key, after)) = rest.split_once('=') {
        let key = key.split(|c: char| c.is_whitespace() || c == '/').rfind(|part| !part.is_empty()).unwrap_or("");
        let after = after.trim_start();
        let quote = after.chars().next().filter(|c| matches!(c, '"' | '\'')).ok_or(Danger::Malformed)?;
        let (value, after) = after.get(1..).unwrap_or("").split_once(quote).ok_or(Danger::Malformed)?;
        attribute(key, value)?;
        rest = after;
    }
    Ok(())
}

fn attribute(key: &str, value: &str) -> Result<(), Danger> {
    let name = local(key);
    if name.starts_with("on") {
        return Err(Danger::Attribute(key.to_owned()));
    }
    let value = plain(value);
    let shown = || value.chars().take(60).collect::<String>();
    if key.to_ascii_lowercase().starts_with("xmlns") {
        return if value.contains("xhtml") { Err(Danger::Outside(shown())) } else { Ok(()) };
    }
    if ["javascript:", "vbscript:", "data:text", "data:application"].iter().any(|scheme| value.contains(scheme)) {
        return Err(Danger::Outside(shown()));
    }
    let picture = ["data:image/png", "data:image/jpeg", "data:image/gif", "data:image/webp"].iter().any(|kind| value.starts_with(kind));
    if TARGETS.contains(&name.as_str()) && !(value.starts_with('#') || value.is_empty() || picture) {
        return Err(Danger::Outside(shown()));
    }
    style(&value)
}

/// A style sheet, or the value of an attribute that may hold one: `url(…)` leads inside only, nothing is imported.
fn style(text: &str) -> Result<(), Danger> {
    let text = plain(text);
    let shown = |at: &str| Err(Danger::Outside(at.chars().take(60).collect()));
    // An escape inside a style could spell `url` or `@import` in a way that is not seen here.
    let escaped = text.contains('\\') && (text.contains('(') || text.contains('@'));
    if escaped || text.contains("@import") || text.contains("image-set(") || text.contains("expression(") || text.contains("-moz-binding") {
        return shown(&text);
    }
    for (at, _) in text.match_indices("url(") {
        let target = text.get(at + 4..).unwrap_or("").trim_start_matches(['"', '\'']);
        let inside = target.starts_with('#') || target.starts_with("data:image/png") || target.starts_with("data:image/jpeg");
        if !inside {
            return shown(target);
        }
    }
    Ok(())
}

/// The value as a browser takes it: references to characters resolved, white space and control characters dropped,
/// in lower case.
fn plain(value: &str) -> String {
    let mut out = String::new();
    let mut rest = value;
    while let Some((before, after)) = rest.split_once('&') {
        out.push_str(before);
        let Some((name, after)) = after.split_once(';') else {
            out.push('&');
            rest = after;
            continue;
        };
        let number = name.strip_prefix("#x").or(name.strip_prefix("#X")).and_then(|hex| u32::from_str_radix(hex, 16).ok());
        let number = number.or_else(|| name.strip_prefix('#')?.parse().ok());
        match (number.and_then(char::from_u32), name.to_ascii_lowercase().as_str()) {
            (Some(character), _) => out.push(character),
            (None, "colon") => out.push(':'),
            (None, "quot") => out.push('"'),
            (None, "apos") => out.push('\''),
            (None, "tab" | "newline") => {}
            (None, _) => {
                out.push('&');
                out.push_str(name);
            }
        }
        rest = after;
    }
    out.push_str(rest);
    out.chars().filter(|c| !c.is_whitespace() && !c.is_control()).collect::<String>().to_lowercase()
}

#[cfg(test)]
#[path = "picture_safety_tests.rs"]
mod tests;
