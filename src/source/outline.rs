//! Where each key of a file stands, by the keys that lead to it, for waivers that name a place by its key.
//!
//! Made only where a file has waivers. What a name means to the work is the checks' business.

use super::yaml::{Kind, Node};
use crate::finding::{Part, Span};

/// All parts of a file that has `waivers`; none of any other.
pub(super) fn outline(node: &Node) -> Vec<Part> {
    let mut parts = Vec::new();
    if let Kind::Mapping(pairs) = &node.kind
        && pairs.iter().any(|(key, _)| text(key) == Some("waivers"))
    {
        gather("", node, &mut parts);
    }
    parts
}

/// The reader bounds how deep nodes stand in one another, so this ends.
fn gather(above: &str, node: &Node, parts: &mut Vec<Part>) {
    let named = |name: &str| if above.is_empty() { name.to_owned() } else { format!("{above}.{name}") };
    match &node.kind {
        Kind::Mapping(pairs) => {
            for (key, value) in pairs {
                let Some(name) = text(key) else { continue };
                let path = named(name);
                gather(&path, value, parts);
                parts.push(Part { path, span: Span::new(key.span.start, value.span.end.max(key.span.end)) });
            }
        }
        Kind::List(items) => {
            for (number, item) in (1_usize..).zip(items) {
                let path = named(&number.to_string());
                gather(&path, item, parts);
                parts.push(Part { path, span: item.span });
            }
        }
        Kind::Text { .. } | Kind::Broken => {}
    }
}

fn text(node: &Node) -> Option<&str> {
    match &node.kind {
        Kind::Text { text, .. } => Some(text),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::FileId;
    use crate::source::yaml;

    fn parts(source: &str) -> Vec<(String, String)> {
        let (node, _) = yaml::parse(source, FileId(0));
        let node = node.unwrap_or_else(|| panic!("{source}"));
        outline(&node).into_iter().map(|part| (part.path, source.get(part.span.range()).unwrap_or("").to_owned())).collect()
    }

    #[test]
    fn each_key_stands_with_its_value() {
        let found = parts("start: { piece: loin }\nsteps:\n  - do: |\n      Cut.\n  - give:\n      loin: 5 %\nwaivers: []\n");
        let expected = [
            ("start.piece", "piece: loin"),
            ("start", "start: { piece: loin }"),
            ("steps.1.do", "do: |\n      Cut."),
            ("steps.1", "do: |\n      Cut."),
            ("steps.2.give.loin", "loin: 5 %"),
            ("steps.2.give", "give:\n      loin: 5 %"),
            ("steps.2", "give:\n      loin: 5 %"),
            ("steps", "steps:\n  - do: |\n      Cut.\n  - give:\n      loin: 5 %"),
            ("waivers", "waivers: []"),
        ];
        assert_eq!(found, expected.map(|(path, text)| (path.to_owned(), text.to_owned())));
    }

    #[test]
    fn a_file_without_waivers_has_none() {
        assert_eq!(parts("start: { piece: loin }\n"), []);
    }
}
