//! Free text in Markdown: what is in it that no page can show, and the links that stay inside the guidebook.
//!
//! The text is kept as it stands. Places inside it are exact where the same letters stand in the file; else the
//! value as a whole is pointed at.

use std::ops::Range;

use pulldown_cmark::{Event, LinkType, Parser, Tag};

use super::step::leaves_the_guidebook;
use crate::finding::{Finding, Place, Span};
use crate::model::links::{Link, candidates};

/// Schemes that a link to elsewhere may have.
const SCHEMES: &[&str] = &["https", "http", "mailto", "tel"];

/// A free text, and how it stands in its file.
pub(super) struct Whole<'a> {
    /// The text, after quotes and indentation are resolved.
    pub(super) text: &'a str,
    /// The same as it stands in the file.
    pub(super) raw: &'a str,
    /// Where it stands.
    pub(super) place: Place,
    /// The folder of its file.
    pub(super) folder: &'a str,
}

/// Reports raw HTML (once a text) and links that no page may hold, and gathers those that stay inside.
pub(super) fn look(whole: &Whole<'_>, findings: &mut Vec<Finding>, links: &mut Vec<Link>) {
    let mut html_told = false;
    for (event, range) in Parser::new(whole.text).into_offset_iter() {
        match event {
            Event::Html(_) | Event::InlineHtml(_) if !html_told => {
                html_told = true;
                findings.push(raw_html(whole, range));
            }
            Event::Start(Tag::Link { link_type: LinkType::Email, .. }) => {}
            Event::Start(Tag::Link { dest_url, .. }) => link(whole, range, &dest_url, false, findings, links),
            Event::Start(Tag::Image { dest_url, .. }) => link(whole, range, &dest_url, true, findings, links),
            _ => {}
        }
    }
}

fn raw_html(whole: &Whole<'_>, range: Range<usize>) -> Finding {
    let line = whole.text.get(range.clone()).unwrap_or("").trim();
    let written: String = line.chars().take_while(|letter| *letter != '\n').take(30).collect();
    let place = whole.exact(range.start..range.start + written.len());
    Finding::advice("raw-html", place, format!("`{written}` is HTML, and a page shows it as plain text"))
        .help("Write it in Markdown: `**bold**`, `- item`, or `\\<` for a plain `<`.")
}

fn link(whole: &Whole<'_>, range: Range<usize>, target: &str, picture: bool, findings: &mut Vec<Finding>, links: &mut Vec<Link>) {
    let place = whole.exact(range);
    let shown: String = target.chars().filter(|letter| !letter.is_control()).take(50).collect();
    let unsafe_link = |message: String, help: &str| Finding::fault("link-unsafe", place, message).help(help);
    // Browsers drop control characters and leading blanks before they look for a scheme, so they can hide one.
    if target.chars().any(|letter| letter.is_control() || letter == '\\') || target.starts_with(char::is_whitespace) {
        findings.push(unsafe_link(
            format!("the link `{shown}` holds characters that no address has"),
            "Write a plain address, or a path inside the guidebook.",
        ));
        return;
    }
    if target.starts_with("//") {
        findings.push(unsafe_link(format!("the link `{shown}` does not say how to get there"), "Write `https:` before it."));
        return;
    }
    if let Some(scheme) = scheme(target) {
        let known = SCHEMES.contains(&scheme.to_ascii_lowercase().as_str());
        if !known {
            let message = format!("a link may not begin with `{scheme}:`");
            findings.push(unsafe_link(message, "Begin it with `https://`, or write a path inside the guidebook."));
        } else if picture {
            let message = format!("the picture `{shown}` lies elsewhere, and pages fetch nothing from elsewhere");
            findings.push(unsafe_link(message, "Copy the picture into `pictures/` and name it from there."));
        }
        return;
    }
    let path = target.split(['#', '?']).next().unwrap_or("");
    if path.starts_with('/') || (!path.is_empty() && candidates(whole.folder, target).is_empty()) {
        debug_assert!(path.starts_with('/') || leaves_the_guidebook(path));
        let finding = Finding::fault("link-leaves-guidebook", place, format!("`{shown}` leads out of the guidebook"));
        findings.push(finding.help("Write a path inside the guidebook, without a slash at its beginning."));
        return;
    }
    links.push(Link { place, folder: whole.folder.to_owned(), target: target.to_owned(), picture });
}

/// The scheme of an address: what stands before its first colon, when that can be one.
fn scheme(target: &str) -> Option<&str> {
    let (scheme, _) = target.split_once(':')?;
    let letters = scheme.starts_with(|letter: char| letter.is_ascii_alphabetic())
        && scheme.chars().all(|letter| letter.is_ascii_alphanumeric() || matches!(letter, '+' | '-' | '.'));
    letters.then_some(scheme)
}

impl Whole<'_> {
    /// The place of a part of the text: the same occurrence of the same letters in the file, else the whole value.
    fn exact(&self, range: Range<usize>) -> Place {
        self.find(range).unwrap_or(self.place)
    }

    fn find(&self, range: Range<usize>) -> Option<Place> {
        let part = self.text.get(range.clone())?.lines().next().filter(|part| !part.is_empty())?;
        let earlier = self.text.get(..range.start)?.matches(part).count();
        if self.text.matches(part).count() != self.raw.matches(part).count() {
            return None;
        }
        let (at, _) = self.raw.match_indices(part).nth(earlier)?;
        let start = self.place.span.start.checked_add(u32::try_from(at).ok()?)?;
        Some(Place::new(self.place.file, Span::new(start, start.checked_add(u32::try_from(part.len()).ok()?)?)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FileId;

    fn told(text: &str, raw: &str) -> (Vec<(&'static str, u32)>, Vec<String>) {
        let place = Place::new(FileId(0), Span::new(10, 10 + u32::try_from(raw.len()).unwrap_or(0)));
        let (mut findings, mut links) = (Vec::new(), Vec::new());
        look(&Whole { text, raw, place, folder: "pork" }, &mut findings, &mut links);
        let told = findings.iter().map(|finding| (finding.check, finding.place.span.start)).collect();
        (told, links.into_iter().map(|link| link.target).collect())
    }

    #[test]
    fn places_are_exact_where_the_same_letters_stand_in_the_file() {
        let text = "Cut.\n\nSee <b>this</b>.\n";
        assert_eq!(told(text, text).0, [("raw-html", 20)]);
        assert_eq!(told(text, "|\n  Cut.\n\n  See <b>this</b>.\n").0, [("raw-html", 26)]);
        // An escape in quotes: the letters differ, so the value as a whole is shown.
        assert_eq!(told("See <b>", "\"See \\x3Cb>\"").0, [("raw-html", 10)]);
    }

    #[test]
    fn schemes_are_held_against_a_list_that_only_allows() {
        let check = |target: &str| told(&format!("[x]({target})"), "").0.first().map(|told| told.0);
        for sound in
            ["https://example.org/a:b", "HTTP://example.org", "mailto:a@example.org", "side.yaml", "#step", "a/b:c", "../pages/about.md"]
        {
            assert_eq!(check(sound), None, "{sound}");
        }
        for wrong in [
            "javascript:alert(1)",
            "JavaScript:x",
            "data:text/html,x",
            "file:///etc/passwd",
            "//example.org",
            "java&#9;script:x",
            "C:\\\\a",
        ] {
            assert_eq!(check(wrong), Some("link-unsafe"), "{wrong}");
        }
        for wrong in ["/etc/passwd", "../../x"] {
            assert_eq!(check(wrong), Some("link-leaves-guidebook"), "{wrong}");
        }
        assert_eq!(told("![x](https://example.org/x.png)", "").0, [("link-unsafe", 10)]);
        assert_eq!(told("<https://example.org> and <a@example.org>", "").0, []);
    }

    #[test]
    fn links_inside_are_gathered() {
        assert_eq!(told("[a](side.yaml), [b](#x) and ![c](../pictures/c.svg)", "").1, ["side.yaml", "#x", "../pictures/c.svg"]);
    }
}
