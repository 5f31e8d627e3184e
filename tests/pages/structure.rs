//! What holds on every page: ids, links, headings, pictures, the policy, no inline styles or scripts.

use std::collections::BTreeSet;

use super::html::Page;
use super::made::{DEMO, ODD, all_html};

#[test]
fn ids_are_unique_and_labels_lead_to_them() {
    for (path, page) in all_html() {
        let mut ids = BTreeSet::new();
        for element in &page.elements {
            if let Some(id) = element.get("id") {
                assert!(ids.insert(id.to_owned()), "{path}: the id `{id}` twice");
            }
        }
        for element in &page.elements {
            for reference in ["aria-labelledby", "for"].iter().filter_map(|name| element.get(name)) {
                assert!(ids.contains(reference), "{path}: nothing has the id `{reference}`");
            }
        }
    }
}

/// The path to which a link leads, and its fragment.
fn target(from: &str, href: &str) -> (String, Option<String>) {
    let (path, fragment) = href.split_once('#').map_or((href, None), |(path, fragment)| (path, Some(fragment.to_owned())));
    if path.is_empty() {
        return (from.to_owned(), fragment);
    }
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in path.split('/') {
        if part == ".." {
            parts.pop().unwrap();
        } else {
            parts.push(part);
        }
    }
    (decoded(&parts.join("/")), fragment)
}

fn decoded(path: &str) -> String {
    let bytes = path.as_bytes();
    let mut out = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        if bytes[at] == b'%' {
            out.push(u8::from_str_radix(&path[at + 1..at + 3], 16).unwrap());
            at += 3;
        } else {
            out.push(bytes[at]);
            at += 1;
        }
    }
    String::from_utf8(out).unwrap()
}

#[test]
fn every_link_leads_to_a_page_or_an_anchor_of_the_site() {
    let pages: Vec<(String, Page)> = all_html();
    let mut seen = 0;
    for (path, page) in &pages {
        for element in &page.elements {
            let links = ["href", "src"].iter().filter_map(|name| element.get(name));
            for href in links {
                if element.name == "a" && ["https:", "http:", "mailto:", "tel:"].iter().any(|scheme| href.starts_with(scheme)) {
                    continue;
                }
                assert!(!href.contains(':') && !href.starts_with('/'), "{path}: `{href}` leaves the site");
                let (to, fragment) = target(path, href);
                let (book, inside) = to.split_once('/').unwrap();
                let site = if book == "demo" { &DEMO } else { &ODD };
                assert!(site.contains_key(inside), "{path}: `{href}` leads to `{inside}`, which is no page");
                if let Some(fragment) = fragment.as_ref().filter(|_| inside.ends_with(".svg")) {
                    let drawing = std::str::from_utf8(&site[inside]).unwrap();
                    assert!(drawing.contains(&format!(" id=\"{fragment}\"")), "{path}: `{href}` leads to no part");
                } else if let Some(fragment) = fragment {
                    let other = &pages.iter().find(|(known, _)| *known == to).unwrap().1;
                    let fragment = decoded(&fragment);
                    let found = other.elements.iter().any(|element| element.get("id") == Some(fragment.as_str()));
                    assert!(found, "{path}: `{href}` leads to no anchor");
                }
                seen += 1;
            }
        }
    }
    assert!(seen > 450, "only {seen} links were looked at");
}

#[test]
fn one_first_heading_and_no_level_skipped() {
    for (path, page) in all_html() {
        let levels: Vec<u32> =
            page.elements.iter().filter_map(|element| element.name.strip_prefix('h').and_then(|level| level.parse().ok())).collect();
        assert_eq!(levels.iter().filter(|level| **level == 1).count(), 1, "{path}: {levels:?}");
        assert_eq!(levels.first(), Some(&1), "{path}");
        for pair in levels.windows(2) {
            assert!(pair[1] <= pair[0] + 1, "{path}: a heading of level {} follows one of level {}", pair[1], pair[0]);
        }
    }
}

#[test]
fn every_picture_has_words_and_room() {
    let mut seen = 0;
    for (path, page) in all_html() {
        for (_, image) in page.all("img") {
            for name in ["alt", "width", "height", "src"] {
                assert!(image.get(name).is_some_and(|value| !value.is_empty()), "{path}: a picture without {name}: {image:?}");
            }
            seen += 1;
        }
    }
    assert!(seen > 15, "only {seen} pictures were looked at");
}

#[test]
fn nothing_is_styled_or_scripted_inline() {
    for (path, page) in all_html() {
        for element in &page.elements {
            for (name, value) in &element.attributes {
                assert!(name != "style" && !name.starts_with("on"), "{path}: <{}> has `{name}`", element.name);
                assert!(!value.to_lowercase().replace(char::is_whitespace, "").contains("javascript:"), "{path}: {value}");
            }
            if element.name == "script" {
                assert!(element.text.is_empty() && element.get("src").is_some(), "{path}: an inline script");
            }
            assert!(!["iframe", "object", "embed", "base"].contains(&element.name.as_str()), "{path}: <{}>", element.name);
            let harmless = |rel: &str| ["icon", "canonical", "alternate", "stylesheet", "manifest"].contains(&rel);
            assert!(element.name != "link" || element.get("rel").is_some_and(harmless), "{path}: {element:?}");
        }
    }
}

#[test]
fn the_policy_names_every_inlined_style_and_allows_nothing_else() {
    use sha2::Digest;
    for (path, page) in all_html() {
        let policies: Vec<&str> =
            page.all("meta").filter(|(_, meta)| meta.get("http-equiv").is_some()).filter_map(|(_, meta)| meta.get("content")).collect();
        let [policy] = policies.as_slice() else { panic!("{path}: {} policies", policies.len()) };
        let mut expected = Vec::new();
        for (_, style) in page.all("style") {
            expected.push(format!("'sha256-{}'", base64(&sha2::Sha256::digest(style.text.as_bytes()))));
        }
        if page.all("link").any(|(_, link)| link.get("rel") == Some("stylesheet")) {
            expected.push("'self'".to_owned());
        }
        let styles = expected.join(" ");
        assert_eq!(
            *policy,
            format!(
                "default-src 'none'; img-src 'self' data:; style-src {styles}; script-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'"
            ),
            "{path}"
        );
    }
}

/// A second writing of base 64, bit by bit, so that the pages are not held against the code that made them.
fn base64(bytes: &[u8]) -> String {
    let bits: String = bytes.iter().map(|byte| format!("{byte:08b}")).collect();
    let alphabet: Vec<char> = ('A'..='Z').chain('a'..='z').chain('0'..='9').chain(['+', '/']).collect();
    let mut text: String = bits
        .as_bytes()
        .chunks(6)
        .map(|chunk| {
            let six = format!("{:0<6}", std::str::from_utf8(chunk).unwrap());
            alphabet[usize::from_str_radix(&six, 2).unwrap()]
        })
        .collect();
    while !text.len().is_multiple_of(4) {
        text.push('=');
    }
    text
}

#[test]
fn pages_say_their_language_their_title_and_what_they_are_about() {
    for (path, page) in all_html() {
        let (_, html) = page.all("html").next().unwrap();
        assert_eq!(html.get("lang"), Some("en"), "{path}");
        let (_, title) = page.all("title").next().unwrap();
        assert!(!title.text.trim().is_empty(), "{path}");
        let about: Vec<&str> = page
            .all("meta")
            .filter(|(_, meta)| meta.get("name") == Some("description"))
            .filter_map(|(_, meta)| meta.get("content"))
            .collect();
        let [about] = about.as_slice() else { panic!("{path}: {} descriptions", about.len()) };
        assert!((20..=120).contains(&about.chars().count()), "{path}: {about}");
        let skip = page.with_class("skip").next().unwrap().1.get("href").unwrap();
        assert!(page.elements.iter().any(|element| Some(element.get("id").unwrap_or("")) == skip.strip_prefix('#')), "{path}: {skip}");
    }
}
