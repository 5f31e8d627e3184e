//! Numbers that a comma between braces has cut apart: `{ share: 5,5–7,5 % }`.
//!
//! YAML makes keys of what follows the comma. One finding tells of the number as a whole, and nothing of its parts.

use super::Sink;
use crate::finding::{Finding, Span};
use crate::source::yaml::{Kind, Node};

/// How many of the pairs after `at` are the rest of a number that begins in its value.
pub(super) fn rest_of_number(pairs: &[(Node, Node)], at: usize) -> usize {
    let Some((_, value)) = pairs.get(at) else { return 0 };
    let Some(mut text) = plain(value) else { return 0 };
    let mut end = value.span.end;
    let mut parts = 0;
    for (key, nothing) in pairs.get(at + 1..).unwrap_or_default() {
        let Some(next) = plain(key) else { break };
        let joined = text.ends_with(|letter: char| letter.is_ascii_digit()) && next.starts_with(|letter: char| letter.is_ascii_digit());
        if !joined || !nothing.is_nothing() || key.span.start != end + 1 {
            break;
        }
        (text, end, parts) = (next, key.span.end, parts + 1);
    }
    parts
}

/// Tells of the number whose parts are the value at `at` and the next `parts` keys.
pub(super) fn tell(pairs: &[(Node, Node)], at: usize, parts: usize, sink: &Sink) {
    let Some((_, value)) = pairs.get(at) else { return };
    let keys = || pairs.get(at + 1..=at + parts).unwrap_or_default().iter().map(|(key, _)| key);
    let texts: Vec<&str> = std::iter::once(value).chain(keys()).filter_map(plain).collect();
    let end = keys().next_back().map_or(value.span.end, |key| key.span.end);
    let finding =
        Finding::fault("decimal-comma", sink.place(Span::new(value.span.start, end)), format!("a decimal comma in `{}`", texts.join(",")));
    sink.push(finding.help(format!("write a decimal point: `{}`", texts.join("."))));
}

fn plain(node: &Node) -> Option<&str> {
    match &node.kind {
        Kind::Text { text, plain: true, .. } => Some(text),
        _ => None,
    }
}
