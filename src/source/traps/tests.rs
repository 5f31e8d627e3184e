//! Broken texts, and the one finding that each gets.

use crate::finding::SourceMap;
use crate::source::yaml::parse;

/// `check line:column`, one finding a text.
fn told(text: &str) -> String {
    let mut sources = SourceMap::default();
    let file = sources.add("a.yaml", text);
    let (node, findings) = parse(text, file);
    assert!(node.is_none(), "{text}");
    let lines: Vec<String> = findings
        .iter()
        .map(|finding| {
            let at = sources.line_column(finding.place);
            format!("{} {}:{}", finding.check, at.line, at.column)
        })
        .collect();
    lines.join(", ")
}

const BROKEN: &[(&str, &str)] = &[
    // A colon inside a text.
    ("title: x\ndo: Cut: through the joint\n", "colon-in-text 2:5"),
    ("steps:\n  - name: Legs: off\n    do: x\n", "colon-in-text 2:11"),
    ("a: { caption: Open: first, b: 1 }\n", "colon-in-text 1:15"),
    ("a: { caption: Open: first }\n", "colon-in-text 1:15"),
    ("do: Fold the leg\n  back like so: then cut\nb: 1\n", "colon-in-text 1:5"),
    ("good: It is done: nothing is left\r\nb: 1\r\n", "colon-in-text 1:7"),
    ("a: one: two: three\n", "colon-in-text 1:4"),
    ("crème: très: bon\n", "colon-in-text 1:8"),
    // A hash that cuts a text over several lines.
    ("do: Fold # each leg\n  back\nb: 1\n", "hash-cuts-text 1:5"),
    // Tabs.
    ("a:\n\tb: 1\n", "tab-indent 2:1"),
    ("a:\n  b: 1\n\tc: 2\n", "tab-indent 3:1"),
    ("a:\n  - b: 1\n  \t c: 2\n", "tab-indent 3:3"),
    ("\ta: 1\n", "tab-indent 1:1"),
    ("a:\n  -\tb: 1\n  -\tc: 2\n\td: 3\n", "tab-indent 4:1"),
    // Indentation.
    ("title: Whole\n  species: chicken\nb: 1\n", "indent 2:3"),
    ("a:\n  b: 1\n c: 2\n", "indent 3:2"),
    ("a:\n    b: 1\n  c: 2\n", "indent 3:3"),
    ("steps:\n  - name: x\n    do: y\n   take: z\n", "indent 4:4"),
    ("steps:\n  - name: x\n     do: y\n", "indent 3:6"),
    ("  a: 1\nb: 2\n", "indent 2:1"),
    ("a: |\n   x\n  y\nb: 1\n", "indent 3:3"),
    ("a: b\nfoo bar\nc: d\n", "indent 2:1"),
    ("steps:\n  - name: x\n  take: y\n", "indent 3:3"),
    ("title Pork loin\nspecies: pork\n", "indent 1:1"),
    ("steps:\n  - name Take out\n    take: x\n", "indent 2:5"),
    ("do: |\n  Cut.\n\tFold.\nb: 1\n", "tab-indent 3:1"),
    ("a:\n    - b: 1\n      c: 2\n  - d: 3\n    e: 4\n", "indent 4:3"),
    ("a:\n  b:\n    - c: 1\n  - d: 3\n", "indent 4:3"),
    // A space that is missing.
    ("steps:\n  -name: x\n    take: y\n", "space-missing 2:3"),
    ("a: 1\nminutes:5\nb: 1\n", "space-missing 2:1"),
    ("minutes:5\nb: 1\n", "space-missing 1:1"),
    ("steps:\n  - name: x\n    minutes:5\n    do: y\n", "space-missing 3:5"),
    ("tools:\n  - a\n  -b\n", "space-missing 3:3"),
    ("a: 1\n-b\n", "space-missing 2:1"),
    // Quotes.
    ("a: \"x\nb: 1\n", "unclosed-quote 1:4"),
    ("a: 'x\nb: 1\n", "unclosed-quote 1:4"),
    ("a: 1\nb:\n  - \"x\n  - \"y\"\n", "unclosed-quote 3:5"),
    ("a: 'the bird's back'\n", "quote-in-text 1:4"),
    ("a: \"the\" back\n", "quote-in-text 1:4"),
    ("alt: \"x\" and \"y\"\n", "quote-in-text 1:6"),
    // Brackets.
    ("a: [1, 2\nb: 3\n", "unclosed-bracket 1:4"),
    ("a: {b: 1\nc: 2\n", "unclosed-bracket 1:4"),
    ("a: {b: [1, 2}\n", "unclosed-bracket 1:8"),
    ("give: { share: 5 %, pieces: 2\n", "unclosed-bracket 1:7"),
    ("a: [x\n", "unclosed-bracket 1:4"),
    ("a: [x, # y]\nb: [z]\nc: 1\n", "unclosed-bracket 1:4"),
    // Signs that can't begin a text.
    ("a: @b c\n", "text-start 1:4"),
    ("a: `b`\n", "text-start 1:4"),
    ("a: % of it\n", "text-start 1:4"),
    ("a:\n  - %x\n", "text-start 2:5"),
    ("a: - b\n", "text-start 1:4"),
    ("a: > 5 kg\n", "text-start 1:4"),
    ("a: |x\n  t\n", "text-start 1:4"),
    ("a: ? b\n", "text-start 1:4"),
    ("a: ]\n", "text-start 1:4"),
    ("a: ,b\n", "text-start 1:4"),
    ("a: & sons\n", "text-start 1:4"),
    // Everything else.
    ("a: [x] y\n", "yaml-refused 1:8"),
    ("a: {x: 1} y\n", "yaml-refused 1:11"),
    ("a: \"\\q\"\n", "yaml-refused 1:4"),
];

#[test]
fn each_broken_text_gets_one_finding_at_its_place() {
    let missed: Vec<String> = BROKEN
        .iter()
        .filter_map(|(text, expected)| {
            let found = told(text);
            (found != *expected).then(|| format!("{text:?}: expected {expected}, found {found}"))
        })
        .collect();
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}

#[test]
fn what_was_forgotten_is_offered() {
    let help = |text: &str| parse(text, crate::finding::FileId(0)).1.first().map(|finding| finding.help.clone()).unwrap_or_default();
    assert!(help("give:\n  a: { share: 5 % use: retail }\n").contains("comma that is missing"));
    assert!(help("give:\n  a { share: 5 %, use: retail }\n").contains("colon that is missing"));
    assert!(help("give:\n  a: share: 5 %, use: retail }\n").contains("`{` that is missing"));
    assert_eq!(help("do: Cut: now\n"), "Put the whole text in quotes.");
    assert_eq!(help("a: 1\nminutes:5\n"), "Write `minutes: 5`.");
}
