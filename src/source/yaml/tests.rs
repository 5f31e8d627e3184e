//! Trees with exact places. Speed and a second reader are held against in `tests/reading.rs`, outside of the library.

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;

use super::*;
use crate::finding::SourceMap;

fn tree(text: &str) -> Node {
    let (node, findings) = parse(text, FileId(0));
    assert_eq!(findings, [], "{text}");
    node.unwrap()
}

/// Every node with what stands at its place, keys before values.
fn written<'t>(text: &'t str, node: &Node, out: &mut Vec<&'t str>) {
    out.push(&text[node.span.range()]);
    match &node.kind {
        Kind::List(items) => items.iter().for_each(|item| written(text, item, out)),
        Kind::Mapping(pairs) => pairs.iter().for_each(|(key, value)| {
            written(text, key, out);
            written(text, value, out);
        }),
        Kind::Text { .. } | Kind::Broken => {}
    }
}

fn spans(text: &str) -> Vec<&str> {
    let mut out = Vec::new();
    written(text, &tree(text), &mut out);
    out
}

#[test]
fn keys_and_values_stand_where_they_were_written() {
    assert_eq!(spans("crème: brûlée  # c\nb: 'it''s'\n"), ["crème: brûlée  # c\nb: 'it''s'", "crème", "brûlée", "b", "'it''s'"]);
    let carriage = "# top\r\n\r\na:\r\n  - x: 1\r\n    y: [2, { z: 3 }]\r\n\r\nb: 4\r\n";
    assert_eq!(spans(carriage)[2..8], ["- x: 1\r\n    y: [2, { z: 3 }]", "x: 1\r\n    y: [2, { z: 3 }]", "x", "1", "y", "[2, { z: 3 }]"]);
    let nested = "a:\n  b: 1\n  c:\n    d: two words\n\n# end\ne: f\n";
    assert_eq!(
        spans(nested),
        [
            "a:\n  b: 1\n  c:\n    d: two words\n\n# end\ne: f",
            "a",
            "b: 1\n  c:\n    d: two words",
            "b",
            "1",
            "c",
            "d: two words",
            "d",
            "two words",
            "e",
            "f"
        ]
    );
    assert_eq!(
        spans("a: { b: [1, 2] , c: 3 }\n"),
        ["a: { b: [1, 2] , c: 3 }", "a", "{ b: [1, 2] , c: 3 }", "b", "[1, 2]", "1", "2", "c", "3"]
    );
    assert_eq!(spans("- a\n- - b\n  - c\n"), ["- a\n- - b\n  - c", "a", "- b\n  - c", "b", "c"]);
    assert_eq!(spans("k:\n- a\n- b\n"), ["k:\n- a\n- b", "k", "- a\n- b", "a", "b"]);
    assert_eq!(spans("a: one\n  two\n"), ["a: one\n  two", "a", "one\n  two"]);
}

#[test]
fn block_texts_start_at_their_sign() {
    assert_eq!(spans("do: |\n  One.\n\n  Two. # no comment\n\nb: 1\n")[2], "|\n  One.\n\n  Two. # no comment");
    assert_eq!(spans("do: >-  # folded | here\n\n   One\n   two\n")[2], ">-  # folded | here\n\n   One\n   two");
    assert_eq!(spans("\"a|\": |2+\n   One\n")[2], "|2+\n   One");
    assert_eq!(spans("- |\n  One\r\n  two\r\n- b\r\n")[1], "|\n  One\r\n  two");
}

#[test]
fn nothing_stands_at_its_key_or_dash() {
    let text = "a:\nb: ~\nc: null\nd: []\ne:\n- 1\n-\n- # c\n";
    let Kind::Mapping(pairs) = tree(text).kind else { panic!("a mapping") };
    assert!(pairs[0].1.is_nothing());
    assert!(matches!(&pairs[1].1.kind, Kind::Text { text, .. } if text == "~"));
    assert!(matches!(&pairs[2].1.kind, Kind::Text { text, .. } if text == "null"));
    let Kind::List(items) = &pairs[4].1.kind else { panic!("a list") };
    assert_eq!(items.iter().map(|item| &text[item.span.range()]).collect::<Vec<_>>(), ["1", "-", "-"]);
    assert!(items[1].is_nothing() && items[2].is_nothing());
}

#[test]
fn comments_after_texts_are_measured() {
    let of = |text: &str| match tree(text).kind {
        Kind::Mapping(pairs) => match &pairs[0].1.kind {
            Kind::Text { comment, .. } => comment.map(|comment| (comment.blanks, comment.numbered, comment.end)),
            _ => None,
        },
        _ => None,
    };
    assert_eq!(of("a: b #3 c  \n"), Some((1, true, 9)));
    assert_eq!(of("a: b # 3\n"), Some((1, true, 8)));
    assert_eq!(of("a: b   # why\r\n"), Some((3, false, 12)));
    assert_eq!(of("a: b#3\n"), None);
    assert_eq!(of("a: 'b' # c\n"), None);
}

/// `check line:column` of every finding.
fn told(text: &str) -> Vec<String> {
    let mut sources = SourceMap::default();
    let file = sources.add("a.yaml", text);
    let line = |finding: &Finding| {
        let at = sources.line_column(finding.place);
        format!("{} {}:{}", finding.check, at.line, at.column)
    };
    parse(text, file).1.iter().map(line).collect()
}

#[test]
fn what_yaml_can_do_and_a_guidebook_does_not_is_refused() {
    assert_eq!(told(""), ["empty-file 1:1"]);
    assert_eq!(told("# only words\n"), ["empty-file 1:1"]);
    assert_eq!(told("---\na: 1\n"), [""; 0]);
    assert_eq!(told("a: 1\n---\nb: 2\n---\nc: 3\n"), ["several-documents 2:1"]);
    assert_eq!(told("a: &x 1\nb: *x\n"), ["anchor-or-alias 1:4", "anchor-or-alias 2:4"]);
    assert_eq!(told("a: **Never** reach in\nb: 1\n"), ["anchor-or-alias 1:4"]);
    assert_eq!(told("a: !!int 5\nb: !x [1]\n"), ["yaml-tag 1:4", "yaml-tag 2:4"]);
    assert_eq!(told("a: &x [*x]\n"), ["anchor-or-alias 1:4", "anchor-or-alias 1:8"]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/yaml.txt"))), ..ProptestConfig::default() })]
    /// Places lie inside the text, begin and end at letters, and children lie inside of their parents.
    #[test]
    fn places_are_sound_for_any_text(text in "([a-z]: |- |\\[|\\]|\\{|\\}|, |\n|  |é|\"|'|#|&a|\\*a|!|\\||>|\t|x|\r\n|---|%|@){0,40}") {
        fn inside(text: &str, node: &Node, outer: Span) {
            assert!(node.span.start <= node.span.end && text.get(node.span.range()).is_some(), "{text:?} {node:?}");
            assert!(outer.start <= node.span.start && node.span.end <= outer.end, "{text:?} {node:?} {outer:?}");
            match &node.kind {
                Kind::List(items) => items.iter().for_each(|item| inside(text, item, node.span)),
                Kind::Mapping(pairs) => pairs.iter().for_each(|(key, value)| {
                    inside(text, key, node.span);
                    inside(text, value, node.span);
                }),
                Kind::Text { .. } | Kind::Broken => {}
            }
        }
        let (node, findings) = parse(&text, FileId(0));
        let whole = Span::new(0, u32::try_from(text.len()).unwrap());
        if let Some(node) = &node {
            inside(&text, node, whole);
        } else {
            assert!(!findings.is_empty());
        }
        for finding in &findings {
            assert!(finding.place.span.end <= whole.end + 1 && text.is_char_boundary(finding.place.span.start as usize), "{text:?} {finding:?}");
        }
    }
}
