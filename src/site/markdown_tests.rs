//! Hostile and odd Markdown: nothing unsafe reaches a page, and what is meant stays.

use super::*;

struct Known;

impl Targets for Known {
    fn link(&self, target: &str) -> Option<String> {
        (target == "pork/loin").then(|| "../pork/loin.html".to_owned())
    }

    fn picture(&self, path: &str) -> Option<(String, u32, u32)> {
        (path == "pictures/a.svg").then(|| ("../pictures/a.svg".to_owned(), 64, 40))
    }
}

fn show(text: &str) -> String {
    blocks(text, Layout { top_heading: 3, lines: false }, &Known)
}

/// All names of elements and attributes that stand in markup.
fn markup(html: &str) -> Vec<String> {
    let mut names = Vec::new();
    for tag in html.split('<').skip(1) {
        let tag = tag.split('>').next().unwrap();
        let mut outside = String::new();
        for (at, part) in tag.split('"').enumerate() {
            if at % 2 == 0 {
                outside.push_str(part);
            }
        }
        names.extend(outside.split([' ', '=', '/']).filter(|name| !name.is_empty()).map(str::to_owned));
    }
    names
}

#[test]
fn no_spelling_of_a_script_becomes_markup() {
    let allowed = [
        "p",
        "a",
        "href",
        "em",
        "strong",
        "del",
        "code",
        "pre",
        "ul",
        "ol",
        "start",
        "li",
        "blockquote",
        "h3",
        "h4",
        "h5",
        "h6",
        "br",
        "hr",
        "img",
        "src",
        "alt",
        "width",
        "height",
        "loading",
        "div",
        "class",
        "tabindex",
        "table",
        "thead",
        "tbody",
        "tr",
        "th",
        "td",
        "scope",
    ];
    for text in [
        "<script>alert(1)</script>",
        "a <ScRiPt src=//x>alert(1)</sCrIpT> b",
        "<img src=x onerror=alert(1)>",
        "<svg/onload=alert(1)>",
        "<style>*{background:url(//x)}</style>",
        "<a href=\"javascript:alert(1)\">x</a>",
        "<!-- --><script>alert(1)</script>",
        "<![CDATA[<script>]]>",
        "<?php alert(1) ?>",
        "<iframe srcdoc='<script>alert(1)</script>'>",
        "<div\nonclick=alert(1)>x</div>",
        "**<b onmouseover=alert(1)>x</b>**",
        "- <script>\n- x",
        "> <script>alert(1)</script>",
        "| <script> | b |\n|---|---|\n| <img onerror=x> | `<script>` |",
        "`<script>alert(1)</script>`",
        "```\"><script>\n<script>alert(1)</script>\n```",
        "# x {#id .class onclick=alert(1) style=\"color:red\"}",
        "![<script>](pictures/a.svg \"x\\\" onload=alert(1)\")",
        "[x](pork/loin \"t\\\" onclick=alert(1)\")",
        "&lt;script&gt;alert(1)&lt;/script&gt;",
        "\\<script>alert(1)</script>",
        "a\u{0}<script\u{0}>",
    ] {
        let html = show(text);
        for name in markup(&html) {
            assert!(allowed.contains(&name.as_str()), "{text}\n{html}\n{name}");
        }
        assert!(!html.to_lowercase().contains("<script"), "{html}");
    }
}

#[test]
fn links_lead_only_where_they_may() {
    for text in [
        "[x](javascript:alert(1))",
        "[x](JaVaScRiPt:alert(1))",
        "[x](<java\tscript:alert(1)>)",
        "[x](&#106;avascript:alert(1))",
        "[x](java&NewLine;script:alert(1))",
        "[x](vbscript:x)",
        "[x](data:text/html,x)",
        "[x](file:///etc/passwd)",
        "[x](//example.org)",
        "[x](/\\example.org)",
        "[x](unknown/guide)",
        "[x]: javascript:alert(1)\n\n[x]",
        "<javascript:alert(1)>",
        "[x](#)",
    ] {
        let html = show(text);
        assert!(!html.contains("href"), "{text}: {html}");
    }
    assert_eq!(show("[x](https://example.org/?a=1&b=2)"), "<p><a href=\"https://example.org/?a=1&amp;b=2\">x</a></p>");
    assert_eq!(show("[x](mailto:a@example.org)"), "<p><a href=\"mailto:a@example.org\">x</a></p>");
    assert_eq!(show("[x](pork/loin) [y](pork/none)"), "<p><a href=\"../pork/loin.html\">x</a> y</p>");
}

#[test]
fn pictures_are_those_of_the_guidebook() {
    assert_eq!(
        show("![a *b*](pictures/a.svg)"),
        "<p><img src=\"../pictures/a.svg\" alt=\"a b\" width=\"64\" height=\"40\" loading=\"lazy\"></p>"
    );
    assert_eq!(show("![gone](https://example.org/a.png)"), "<p>gone</p>");
}

#[test]
fn headings_stay_below_those_of_the_page_and_skip_none() {
    assert_eq!(show("# a\n### b\n###### c\n## d"), "<h3>a</h3><h4>b</h4><h5>c</h5><h4>d</h4>");
    assert_eq!(show("### a"), "<h3>a</h3>");
}

#[test]
fn cells_are_aligned_by_class() {
    let html = show("| a | b | c |\n|--:|:-:|---|\n| 1 | 2 | 3 |");
    assert_eq!(
        html,
        "<div class=\"scroll\" tabindex=\"0\"><table><thead><tr><th scope=\"col\" class=\"right\">a</th><th scope=\"col\" class=\"middle\">b</th><th scope=\"col\" class=\"left\">c</th></tr></thead><tbody><tr><td class=\"right\">1</td><td class=\"middle\">2</td><td class=\"left\">3</td></tr></tbody></table></div>"
    );
}

#[test]
fn each_line_of_an_instruction_stands_alone() {
    let lines = |text| blocks(text, Layout { top_heading: 4, lines: true }, &Known);
    assert_eq!(lines("Weigh it.\nTurn *it\nover*."), "<p>Weigh it.</p><p>Turn <em>it\nover</em>.</p>");
    assert_eq!(lines("- a\n  b"), "<ul><li>a\nb</li></ul>");
}

#[test]
fn places_of_one_line_get_the_first_paragraph() {
    assert_eq!(first_line("Leave *5 mm*\nof [fat](x).\n\nMore."), "Leave 5\u{a0}mm of fat.");
    assert_eq!(first_line("# Title\n\ntext"), "Title");
    assert_eq!(first_line("<b>x</b> & y"), "<b>x</b> & y");
    assert_eq!(first_line(""), "");
    assert_eq!(inline("one *a*", Layout { top_heading: 4, lines: false }, &Known), "one <em>a</em>");
    assert_eq!(inline("one\n\ntwo", Layout { top_heading: 4, lines: false }, &Known), "<p>one</p><p>two</p>");
}

#[test]
fn text_that_would_grow_without_end_is_shown_plain() {
    let bombs = [
        ">".repeat(50_000),
        "[".repeat(50_000),
        "**a".repeat(20_000),
        format!("|{}\n|{}\n", "a|".repeat(5_000), "-|".repeat(5_000)).repeat(3),
    ];
    for bomb in bombs {
        let html = show(&bomb);
        assert!(html.len() < 5 * MOST_OUTPUT, "{}", html.len());
    }
}
