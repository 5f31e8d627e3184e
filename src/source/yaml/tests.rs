//! Trees with exact places, held against a second reader, and bounds that hold quickly.
#![expect(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "a failing test may panic")]

use std::fmt;
use std::time::{Duration, Instant};

use proptest::prelude::*;
use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};

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
            Kind::Text { comment, .. } => comment.map(|comment| (comment.blanks, comment.goes_on, comment.end)),
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

#[test]
fn what_could_make_reading_slow_is_refused_quickly() {
    let start = Instant::now();
    assert_eq!(told(&"[".repeat(20_000)), ["too-deep 1:65"]);
    assert_eq!(told(&"{a: ".repeat(20_000)), ["too-deep 1:257"]);
    assert_eq!(told(&"- ".repeat(20_000)), ["too-deep 1:129"]);
    let stairs: String = (0..500).map(|depth| format!("{}a:\n", " ".repeat(depth))).collect();
    assert_eq!(told(&stairs), ["too-deep 65:65"]);
    let bomb: String = std::iter::once("a0: &a0 [x, x, x, x, x, x, x, x, x]\n".to_owned())
        .chain((1..12).map(|at| format!("a{at}: &a{at} [{}]\n", vec![format!("*a{}", at - 1); 9].join(", "))))
        .collect();
    assert!(told(&bomb).len() <= REFUSAL_LIMIT + 1);
    assert_eq!(told(&"- a\n".repeat(NODE_LIMIT)), ["too-large 1:1"]);
    assert_eq!(told(&"a".repeat(BYTE_LIMIT + 1)), ["too-large 1:1"]);
    assert_eq!(told(&format!("a: \"{}", "x".repeat(BYTE_LIMIT - 9))), ["unclosed-quote 1:4"]);
    assert!(start.elapsed() < Duration::from_secs(10), "{:?}", start.elapsed());
}

/// Walks the other reader along our tree, and holds every text against ours.
struct Same<'n>(&'n Node);

impl<'de> DeserializeSeed<'de> for Same<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, other: D) -> Result<(), D::Error> {
        match &self.0.kind {
            // Where nothing stands, the other reader gives an empty text.
            Kind::Text { .. } => other.deserialize_str(self),
            Kind::List(_) => other.deserialize_seq(self),
            Kind::Mapping(_) => other.deserialize_map(self),
            Kind::Broken => Err(de::Error::custom("broken")),
        }
    }
}

impl<'de> Visitor<'de> for Same<'_> {
    type Value = ();

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{:?}", self.0.kind)
    }

    fn visit_str<E: de::Error>(self, theirs: &str) -> Result<(), E> {
        let Kind::Text { text, .. } = &self.0.kind else { return Err(E::custom("no text")) };
        if text == theirs { Ok(()) } else { Err(E::custom(format!("{text:?} here, {theirs:?} there"))) }
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut theirs: A) -> Result<(), A::Error> {
        let Kind::List(items) = &self.0.kind else { return Err(de::Error::custom("no list")) };
        for item in items {
            theirs.next_element_seed(Same(item))?.ok_or_else(|| de::Error::custom("too few"))?;
        }
        theirs.next_element::<de::IgnoredAny>()?.map_or(Ok(()), |_| Err(de::Error::custom("too many")))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut theirs: A) -> Result<(), A::Error> {
        let Kind::Mapping(pairs) = &self.0.kind else { return Err(de::Error::custom("no mapping")) };
        for (key, value) in pairs {
            theirs.next_key_seed(Same(key))?.ok_or_else(|| de::Error::custom("too few"))?;
            theirs.next_value_seed(Same(value))?;
        }
        theirs.next_key::<de::IgnoredAny>()?.map_or(Ok(()), |_| Err(de::Error::custom("too many")))
    }
}

/// Sound snippets, read by both readers to the same structure and the same texts.
#[test]
fn a_second_reader_reads_the_same() {
    let snippets = [
        "a: 1\nb: no\nc: 0415\nd: 3–5\ne: 1e3\nf: .5\ng: 0x1F\nh: true\n",
        "a: ~\nb: null\nc: \"\"\nd: ''\n",
        "a: 'it''s'\nb: \"tab\\tquote\\\"é\\u00e9\"\n",
        "do: |\n  Fold # each\n    deeper: line\n\n  Cut.\n\n\nnext: 1\n",
        "a: |-\n  x\nb: |+\n  y\n\nc: >\n  one\n  two\n\n  three\nd: >-\n  z\n",
        "a: one\n  two\n\n  three\nb: x\n",
        "steps:\n- name: A\n  take: [a, b]\n  give: { c: 5–7 %, d: rest }\n-   name: B\n    ask:\n    - question: Why?\n      answer: So.\n",
        "# c\n---\n# d\na: b # e\n...\n",
        "a: [ [1, 2], [3, [4]], {x: y}, 'q, r' ]\n",
        "a:\r\n  - x\r\n  - y: 1\r\n    z: |\r\n      line\r\n      more\r\n",
        "\"quoted key\": 1\n? long\n: 2\n",
        "a: http://x.example/y#z\nb: 12:30\nc: a:b\nd: - -\n".trim_end_matches("d: - -\n"),
        "a: {b: 1, \"c\": 2,}\nd: [1, 2,]\n",
        "a: 2026-10-12\nb: -20 to -18 °C\nc: 18 lb 10 oz\nd: 3.40 / kg\n",
        "- \n- a\n-\n  b: c\n",
    ];
    for text in snippets {
        let node = tree(text);
        Same(&node).deserialize(serde_yaml::Deserializer::from_str(text)).unwrap_or_else(|error| panic!("{text}\n{error}"));
    }
}

/// The sound documents of the project's own guidebook, by both readers.
#[test]
fn a_second_reader_reads_the_demonstration_the_same() {
    let mut folders = vec![std::path::PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("procedures")];
    let mut count = 0;
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "yaml") {
                let text = std::fs::read_to_string(&path).unwrap();
                let node = tree(&text);
                Same(&node).deserialize(serde_yaml::Deserializer::from_str(&text)).unwrap_or_else(|error| panic!("{path:?}\n{error}"));
                count += 1;
            }
        }
    }
    assert!(count > 0);
}

proptest! {
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
