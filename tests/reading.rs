//! Reading held against a second reader of YAML, and against texts made to keep a reader busy.
//!
//! These tests meet the disk, so they stand outside of the library.
#![expect(clippy::unwrap_used, clippy::disallowed_methods, reason = "a failing test may panic, and these read the demonstration")]

use std::fmt;

use seamwise::finding::{FileId, Finding, SourceMap};
use seamwise::source::yaml::{BYTE_LIMIT, Kind, NODE_LIMIT, Node, parse};
use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};

fn tree(text: &str) -> Node {
    let (node, findings) = parse(text, FileId(0));
    assert_eq!(findings, [], "{text}");
    node.unwrap()
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
fn what_could_make_reading_slow_is_refused_at_once() {
    assert_eq!(told(&"[".repeat(20_000)), ["too-deep 1:65"]);
    assert_eq!(told(&"{a: ".repeat(20_000)), ["too-deep 1:257"]);
    assert_eq!(told(&"- ".repeat(20_000)), ["too-deep 1:129"]);
    let stairs: String = (0..500).map(|depth| format!("{}a:\n", " ".repeat(depth))).collect();
    assert_eq!(told(&stairs), ["too-deep 65:65"]);
    let bomb: String = std::iter::once("a0: &a0 [x, x, x, x, x, x, x, x, x]\n".to_owned())
        .chain((1..12).map(|at| format!("a{at}: &a{at} [{}]\n", vec![format!("*a{}", at - 1); 9].join(", "))))
        .collect();
    assert!(told(&bomb).len() <= 21);
    assert_eq!(told(&"- a\n".repeat(NODE_LIMIT)), ["too-large 1:1"]);
    assert_eq!(told(&"a".repeat(BYTE_LIMIT + 1)), ["too-large 1:1"]);
    assert_eq!(told(&format!("a: \"{}", "x".repeat(BYTE_LIMIT - 9))), ["unclosed-quote 1:4"]);
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
