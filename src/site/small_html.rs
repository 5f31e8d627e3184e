//! Makes a page shorter without changing what a browser reads from it: end tags that HTML lets one leave out, line
//! breaks between blocks, quotes that a value does not need, and references that a plain character says as well.
//!
//! It is for pages of our own templates, in which every element is closed and every value stands in double quotes. What
//! stands in `pre`, `style`, `script` and `textarea` is kept as it is. The rules are those of the HTML standard (WHATWG,
//! living standard, section 13.1.2.4, optional tags, and 13.1.2.3, attributes).

use std::borrow::Cow;

/// Elements whose content is kept as it is.
const KEPT: &[&str] = &["pre", "style", "script", "textarea"];

/// Elements beside which white space says nothing.
const BLOCKS: &[&str] = &[
    "aside",
    "body",
    "blockquote",
    "caption",
    "dd",
    "defs",
    "details",
    "div",
    "dl",
    "dt",
    "figcaption",
    "figure",
    "footer",
    "form",
    "h1",
    "h2",
    "h3",
    "h4",
    "h5",
    "h6",
    "head",
    "header",
    "hr",
    "html",
    "li",
    "link",
    "main",
    "meta",
    "nav",
    "ol",
    "p",
    "pattern",
    "pre",
    "script",
    "section",
    "style",
    "summary",
    "table",
    "tbody",
    "td",
    "tfoot",
    "th",
    "thead",
    "title",
    "tr",
    "ul",
];

/// Elements that end a paragraph by beginning.
const END_PARAGRAPH: &[&str] = &[
    "aside",
    "blockquote",
    "details",
    "div",
    "dl",
    "figcaption",
    "figure",
    "footer",
    "form",
    "h1",
    "h2",
    "h3",
    "h4",
    "h5",
    "h6",
    "header",
    "hr",
    "main",
    "nav",
    "ol",
    "p",
    "pre",
    "section",
    "table",
    "ul",
];

/// Elements that must see the end of a paragraph inside them.
const OPEN_AROUND: &[&str] = &["a", "audio", "del", "ins", "map", "noscript", "video"];

/// A part of a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Token<'a> {
    /// Text between tags, and whatever is kept as it is.
    Text(&'a str),
    /// A start tag: its name, and all of it.
    Start(&'a str, &'a str),
    /// An end tag: its name, and all of it.
    End(&'a str, &'a str),
}

/// The page, shorter.
pub(super) fn small(html: &str) -> String {
    let tokens: Vec<Token<'_>> = without_idle_space(tokens(html));
    let mut out = String::with_capacity(html.len());
    for (at, token) in tokens.iter().enumerate() {
        match *token {
            // What is kept as it is stands behind its start tag.
            Token::Text(text) if kept(at.checked_sub(1).and_then(|before| tokens.get(before))) => out.push_str(text),
            Token::Text(text) => out.push_str(&plain(text)),
            Token::Start(_, tag) => start(tag, &mut out),
            Token::End(name, tag) => {
                if !may_go(name, tokens.get(at + 1)) {
                    out.push_str(tag);
                }
            }
        }
    }
    out
}

/// Cuts a page into its parts. Markup that is not as expected is taken as text.
fn tokens(html: &str) -> Vec<Token<'_>> {
    let (mut all, mut rest) = (Vec::new(), html);
    while !rest.is_empty() {
        let Some(length) = tag_length(rest) else {
            let end = rest.char_indices().skip(1).find(|(_, character)| *character == '<').map_or(rest.len(), |(at, _)| at);
            let (text, after) = rest.split_at(end);
            all.push(Token::Text(text));
            rest = after;
            continue;
        };
        let (tag, after) = rest.split_at(length);
        rest = after;
        if let Some(inside) = tag.strip_prefix("</") {
            all.push(Token::End(name_of(inside), tag));
            continue;
        }
        let name = name_of(tag.trim_start_matches('<'));
        all.push(Token::Start(name, tag));
        if KEPT.contains(&name) {
            let (kept, after) = rest.split_at(rest.find(&format!("</{name}>")).unwrap_or(rest.len()));
            all.push(Token::Text(kept));
            rest = after;
        }
    }
    all
}

/// How long the tag is with which a text begins; `None` when it begins with none.
fn tag_length(text: &str) -> Option<usize> {
    let after = text.strip_prefix("</").or_else(|| text.strip_prefix('<'))?;
    if !after.starts_with(|first: char| first.is_ascii_alphabetic()) {
        return None;
    }
    let mut quoted = false;
    let end = text.char_indices().find(|(_, character)| {
        quoted ^= *character == '"';
        *character == '>' && !quoted
    });
    end.map(|(at, _)| at + 1)
}

fn name_of(inside: &str) -> &str {
    inside.split([' ', '>', '/', '\n']).next().unwrap_or("")
}

/// Without white space that holds a line break and stands beside a block.
fn without_idle_space(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let beside_block = |token: Option<&Token<'_>>| match token {
        Some(Token::Start(name, _) | Token::End(name, _)) => BLOCKS.contains(name),
        Some(Token::Text(_)) => false,
        None => true,
    };
    let idle = |at: usize, text: &str| {
        let before = at.checked_sub(1).and_then(|before| tokens.get(before));
        let blank = text.contains('\n') && text.chars().all(|character| matches!(character, ' ' | '\n' | '\t'));
        blank && !kept(before) && (beside_block(before) || beside_block(tokens.get(at + 1)))
    };
    tokens
        .iter()
        .enumerate()
        .filter(|(at, token)| !matches!(token, Token::Text(text) if idle(*at, text)))
        .map(|(_, token)| *token)
        .collect()
}

/// True for the start of an element whose content is kept as it is.
fn kept(token: Option<&Token<'_>>) -> bool {
    matches!(token, Some(Token::Start(name, _)) if KEPT.contains(name))
}

/// With the signs themselves in place of references that nothing needs in a text or between double quotes.
fn plain(text: &str) -> Cow<'_, str> {
    if !text.contains("&#39;") && !text.contains("&nbsp;") {
        return Cow::Borrowed(text);
    }
    Cow::Owned(text.replace("&#39;", "'").replace("&nbsp;", "\u{a0}"))
}

/// True when the end tag of this element may be left out before what follows.
fn may_go(name: &str, next: Option<&Token<'_>>) -> bool {
    let begins = |names: &[&str]| matches!(next, Some(Token::Start(next, _)) if names.contains(next));
    let parent_ends = matches!(next, Some(Token::End(..)));
    match name {
        "p" => begins(END_PARAGRAPH) || matches!(next, Some(Token::End(parent, _)) if !OPEN_AROUND.contains(parent)),
        "li" => begins(&["li"]) || parent_ends,
        "dt" => begins(&["dt", "dd"]),
        "dd" => begins(&["dt", "dd"]) || parent_ends,
        "td" | "th" => begins(&["td", "th"]) || parent_ends,
        "tr" => begins(&["tr"]) || parent_ends,
        "thead" => begins(&["tbody", "tfoot"]),
        "tbody" => begins(&["tbody", "tfoot"]) || parent_ends,
        "tfoot" => parent_ends,
        "body" | "html" => parent_ends || next.is_none(),
        _ => false,
    }
}

/// Adds a start tag without the quotes that it can do without.
fn start(tag: &str, out: &mut String) {
    let mut rest = tag;
    while let Some((before, after)) = rest.split_once("=\"") {
        out.push_str(before);
        let Some((value, after)) = after.split_once('"') else {
            out.push_str("=\"");
            rest = after;
            continue;
        };
        let value = plain(value);
        let safe = |character: char| character.is_ascii_alphanumeric() || matches!(character, '#' | '.' | '_' | '%' | '-' | '/');
        // A slash before the end of a tag must not fall to the value.
        let free = !value.is_empty() && !value.ends_with('/') && value.chars().all(safe) && after.starts_with([' ', '>']);
        out.push('=');
        if free {
            out.push_str(&value);
        } else {
            out.push('"');
            out.push_str(&value);
            out.push('"');
        }
        rest = after;
    }
    out.push_str(rest);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_html_lets_one_leave_out_goes() {
        let page = "<!doctype html>\n<html lang=\"en\">\n<head>\n<title>a b</title>\n</head>\n<body>\n<main id=\"main\">\n\
                    <dl class=\"a b\"><div><dt>x</dt><dd>y</dd></div></dl>\n<ul>\n<li><p>one</p></li>\n<li>two</li>\n</ul>\n<table><thead><tr>\
                    <th>h</th></tr></thead><tbody><tr><td>1</td><td></td></tr></tbody></table></main>\n</body>\n</html>\n";
        assert_eq!(
            small(page),
            "<!doctype html>\n<html lang=en><head><title>a b</title></head><body><main id=main><dl class=\"a b\"><div><dt>x<dd>y</div></dl>\
             <ul><li><p>one<li>two</ul><table><thead><tr><th>h<tbody><tr><td>1<td></table></main>"
        );
    }

    #[test]
    fn signs_stand_for_themselves_where_they_may() {
        assert_eq!(
            small("<a title=\"it&#39;s &quot;x&quot;\">5&nbsp;% &amp; &#39;a&#39;</a>"),
            "<a title=\"it's &quot;x&quot;\">5\u{a0}% &amp; 'a'</a>"
        );
        assert_eq!(small("<pre>&#39;</pre>"), "<pre>&#39;</pre>");
    }

    #[test]
    fn what_must_stay_stays() {
        for kept in [
            // A paragraph before what belongs to a line would take it in.
            "<li><p>a</p><strong>b</strong>",
            "<p>a</p><svg><rect/></svg>",
            "<a><p>a</p></a>",
            "<dl><dt>a</dt></dl>",
            "<p>a</p>\nb",
            "<li>a</li> b",
            // Space between words.
            "<em>a</em>\n<b>c</b>",
            "<pre>\n<b>\n  x</b>\n</pre>",
            "<style>a{b:\"</p>\"}</style>",
            // Values that need their quotes, and a slash that is no part of one.
            "<a href=\"?a=b\" title=\"\">x</a>",
            "<a href=\"../\">x</a>",
            "<rect width=\"5%\"/>",
            "<img alt=\"a > b\">",
            // What is no markup of ours.
            "a < b <",
            "<",
            "",
        ] {
            assert_eq!(small(kept), kept);
        }
    }
}
