//! Markdown to the plain words in it.

use pulldown_cmark::{Event, Parser, Tag, TagEnd};

/// The text without marks, on one line; addresses of links and raw HTML are left out.
pub(super) fn plain(markdown: &str) -> String {
    let mut out = String::new();
    for event in Parser::new(markdown) {
        match event {
            Event::Text(text) | Event::Code(text) => out.push_str(&text),
            Event::SoftBreak | Event::HardBreak | Event::End(TagEnd::Paragraph | TagEnd::Item | TagEnd::Heading(_) | TagEnd::CodeBlock) => {
                out.push(' ');
            }
            _ => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The text of the first heading.
pub(super) fn first_heading(markdown: &str) -> Option<String> {
    let mut inside = false;
    let mut out = String::new();
    for event in Parser::new(markdown) {
        match event {
            Event::Start(Tag::Heading { .. }) => inside = true,
            Event::End(TagEnd::Heading(_)) => return Some(out.trim().to_owned()).filter(|heading| !heading.is_empty()),
            Event::Text(text) | Event::Code(text) if inside => out.push_str(&text),
            _ => {}
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_words_remain() {
        assert_eq!(
            plain("# About\n\n- The **course lead** [writes](https://example.org/x)\n- `steel`\n"),
            "About The course lead writes steel"
        );
        assert_eq!(plain("Fold each leg back.\nCut <b>through</b>."), "Fold each leg back. Cut through.");
    }

    #[test]
    fn the_first_heading_is_a_title() {
        assert_eq!(first_heading("text\n\n## About the *shop*\n\n# Later"), Some("About the shop".to_owned()));
        assert_eq!(first_heading("no heading"), None);
    }
}
