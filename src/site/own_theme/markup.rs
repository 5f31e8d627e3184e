//! A page as a browser would take it apart, roughly: its tags with their attributes, and its words. It refuses nothing.

/// A tag that opens an element.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Tag {
    /// In lower case.
    pub(super) name: String,
    /// Names in lower case, values with references resolved.
    pub(super) attributes: Vec<(String, String)>,
    /// What stands in it, for styles and scripts alone.
    pub(super) raw: String,
}

impl Tag {
    /// The value of an attribute.
    pub(super) fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
    }
}

/// A page taken apart.
#[derive(Debug, Clone, Default)]
pub(super) struct Markup {
    /// In the order in which they stand.
    pub(super) tags: Vec<Tag>,
    /// All words, with one space where there is any.
    pub(super) text: String,
}

impl Markup {
    /// Takes a page, or a part of one, apart.
    pub(super) fn of(html: &str) -> Self {
        let mut page = Self::default();
        let mut text = String::new();
        let mut rest = html;
        while let Some(at) = rest.find('<') {
            text.push_str(rest.get(..at).unwrap_or(""));
            rest = rest.get(at..).unwrap_or("");
            if let Some(comment) = rest.strip_prefix("<!--") {
                rest = comment.split_once("-->").map_or("", |(_, after)| after);
            } else if rest.starts_with("</") || rest.starts_with("<!") {
                rest = rest.split_once('>').map_or("", |(_, after)| after);
            } else if rest.get(1..).is_some_and(|name| name.starts_with(|c: char| c.is_ascii_alphabetic())) {
                let (mut tag, after) = tag(rest.get(1..).unwrap_or(""));
                rest = after;
                if matches!(tag.name.as_str(), "style" | "script") {
                    let end = format!("</{}", tag.name);
                    let (raw, after) = rest.split_once(end.as_str()).unwrap_or((rest, ""));
                    tag.raw = raw.to_owned();
                    rest = after.split_once('>').map_or("", |(_, after)| after);
                }
                page.tags.push(tag);
            } else {
                text.push('<');
                rest = rest.get(1..).unwrap_or("");
            }
        }
        text.push_str(rest);
        page.text = words(&resolved(&text));
        page
    }
}

/// The words of a text with one space where there is any, so that what is the same to a reader is the same here.
pub(super) fn words(text: &str) -> String {
    text.split(|c: char| c.is_whitespace() || c == '\u{a0}').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

/// A tag from behind its `<`, and what follows it.
fn tag(text: &str) -> (Tag, &str) {
    let end = text.find(|c: char| c.is_whitespace() || c == '>' || c == '/').unwrap_or(text.len());
    let mut tag = Tag { name: text.get(..end).unwrap_or("").to_ascii_lowercase(), ..Tag::default() };
    let mut rest = text.get(end..).unwrap_or("");
    loop {
        rest = rest.trim_start_matches(|c: char| c.is_whitespace() || c == '/');
        if let Some(after) = rest.strip_prefix('>') {
            return (tag, after);
        }
        if rest.is_empty() {
            return (tag, "");
        }
        let end = rest.find(|c: char| c.is_whitespace() || matches!(c, '=' | '>' | '/')).unwrap_or(rest.len()).max(1);
        let name = rest.get(..end).unwrap_or("").to_ascii_lowercase();
        rest = rest.get(end..).unwrap_or("");
        let mut value = "";
        if let Some(after) = rest.trim_start().strip_prefix('=') {
            let after = after.trim_start();
            let quote = after.chars().next().filter(|c| matches!(c, '"' | '\''));
            (value, rest) = match quote {
                Some(quote) => after.get(1..).and_then(|inside| inside.split_once(quote)).unwrap_or((after, "")),
                None => after.split_at(after.find(|c: char| c.is_whitespace() || c == '>').unwrap_or(after.len())),
            };
        }
        tag.attributes.push((name, resolved(value)));
    }
}

/// The text with the references resolved that pages of ours hold; others stay as they are.
fn resolved(text: &str) -> String {
    const KNOWN: &[(&str, &str)] =
        &[("lt", "<"), ("gt", ">"), ("quot", "\""), ("#39", "'"), ("#x27", "'"), ("#x2F", "/"), ("nbsp", "\u{a0}"), ("amp", "&")];
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find('&') {
        out.push_str(rest.get(..at).unwrap_or(""));
        rest = rest.get(at + 1..).unwrap_or("");
        let met = KNOWN.iter().find_map(|(name, letter)| Some((letter, rest.strip_prefix(name)?.strip_prefix(';')?)));
        match met {
            Some((letter, after)) => {
                out.push_str(letter);
                rest = after;
            }
            None => out.push('&'),
        }
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_and_words_part() {
        let page = Markup::of("<!doctype html><p class='a' HIDDEN data-x=1>5&nbsp;kg &amp; <b>more</b><!-- <i> --> a < b</p><br/>");
        let names: Vec<&str> = page.tags.iter().map(|tag| tag.name.as_str()).collect();
        assert_eq!(names, ["p", "b", "br"]);
        assert_eq!(page.text, "5 kg & more a < b");
        let first = page.tags.first().unwrap();
        assert_eq!((first.get("class"), first.get("hidden"), first.get("data-x")), (Some("a"), Some(""), Some("1")));
    }

    #[test]
    fn styles_and_scripts_are_no_words() {
        let page = Markup::of("<style>a>b{}</style>x<SCRIPT src=\"a.js\">if (1 < 2) {}</script>");
        assert_eq!(page.text, "x");
        assert_eq!(page.tags.iter().map(|tag| tag.raw.as_str()).collect::<Vec<_>>(), ["a>b{}", "if (1 < 2) {}"]);
    }

    #[test]
    fn nothing_stops_it() {
        for odd in ["<", "<a", "<a b", "<a b=", "<a b=\"", "<!--", "</", "&", "<script>", "a<b c=d>&#"] {
            let _ = Markup::of(odd);
        }
    }
}
