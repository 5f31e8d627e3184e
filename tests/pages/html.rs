//! A small reader of our own pages: elements in the order in which they stand, with parents, attributes and text.
//! It demands what the pages promise: values in quotes where they need them, and elements that are closed in order,
//! where HTML does not let one leave the end tag out (WHATWG, HTML, living standard, section 13.1.2.4).

/// One element.
#[derive(Debug, Clone)]
pub(crate) struct Element {
    pub(crate) name: String,
    pub(crate) attributes: Vec<(String, String)>,
    /// The position of the parent.
    pub(crate) parent: Option<usize>,
    /// All text inside, references resolved.
    pub(crate) text: String,
}

impl Element {
    pub(crate) fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
    }

    pub(crate) fn has_class(&self, class: &str) -> bool {
        self.get("class").is_some_and(|classes| classes.split(' ').any(|known| known == class))
    }
}

/// A page.
#[derive(Debug)]
pub(crate) struct Page {
    pub(crate) elements: Vec<Element>,
}

const VOID: &[&str] = &["meta", "img", "br", "hr", "input", "link"];

/// Elements whose end tag may be left out where their parent ends.
const ENDS_WITH_PARENT: &[&str] = &["p", "li", "dd", "td", "th", "tr", "tbody", "tfoot", "body"];

/// True where an open element ends because another begins.
fn ends_before(open: &str, begins: &str) -> bool {
    match open {
        "li" => begins == "li",
        "dt" | "dd" => ["dt", "dd"].contains(&begins),
        "td" | "th" => ["td", "th", "tr", "tbody", "tfoot"].contains(&begins),
        "tr" => ["tr", "tbody", "tfoot"].contains(&begins),
        "thead" | "tbody" => ["tbody", "tfoot"].contains(&begins),
        "p" => {
            [
                "div", "dl", "ol", "ul", "p", "h1", "h2", "h3", "h4", "section", "details", "figure", "table", "form", "nav", "aside",
                "pre", "hr",
            ]
            .contains(&begins)
                || ["li", "dt", "dd", "td", "th", "tr"].contains(&begins)
        }
        _ => false,
    }
}

impl Page {
    /// Reads a page, or says what is wrong with its markup.
    pub(crate) fn read(html: &str) -> Result<Self, String> {
        let mut elements: Vec<Element> = Vec::new();
        let mut open: Vec<usize> = Vec::new();
        let mut rest = html.strip_prefix("<!doctype html>").ok_or("no doctype")?;
        while !rest.is_empty() {
            let Some(after) = rest.strip_prefix('<') else {
                let end = rest.find('<').unwrap_or(rest.len());
                let text = resolved(&rest[..end])?;
                for at in &open {
                    elements[*at].text.push_str(&text);
                }
                rest = &rest[end..];
                continue;
            };
            if let Some(closing) = after.strip_prefix('/') {
                let (name, after) = closing.split_once('>').ok_or("an end tag without end")?;
                while open.last().is_some_and(|at| elements[*at].name != name && ENDS_WITH_PARENT.contains(&elements[*at].name.as_str())) {
                    open.pop();
                }
                let at = open.pop().ok_or_else(|| format!("</{name}> closes nothing"))?;
                if elements[at].name != name {
                    return Err(format!(
                        "</{name}> closes <{}> ({})",
                        elements[at].name,
                        elements[at].text.chars().take(60).collect::<String>()
                    ));
                }
                rest = after;
                continue;
            }
            let (mut element, empty, after) = tag(after, None)?;
            rest = after;
            while open.last().is_some_and(|at| ends_before(&elements[*at].name, &element.name)) {
                open.pop();
            }
            element.parent = open.last().copied();
            let raw = matches!(element.name.as_str(), "style" | "script");
            let void = VOID.contains(&element.name.as_str());
            elements.push(element);
            let at = elements.len() - 1;
            if raw {
                let end = format!("</{}>", elements[at].name);
                let (inside, after) = rest.split_once(end.as_str()).ok_or("raw text without end")?;
                elements[at].text = inside.to_owned();
                rest = after;
            } else if !void && !empty {
                open.push(at);
            }
        }
        while open.last().is_some_and(|at| ["body", "html"].contains(&elements[*at].name.as_str())) {
            open.pop();
        }
        if let Some(at) = open.last() {
            return Err(format!("<{}> is never closed", elements[*at].name));
        }
        Ok(Self { elements })
    }

    pub(crate) fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = (usize, &'a Element)> {
        self.elements.iter().enumerate().filter(move |(_, element)| element.name == name)
    }

    pub(crate) fn with_class<'a>(&'a self, class: &'a str) -> impl Iterator<Item = (usize, &'a Element)> {
        self.elements.iter().enumerate().filter(move |(_, element)| element.has_class(class))
    }

    /// True when `inner` lies inside `outer`.
    pub(crate) fn is_inside(&self, inner: usize, outer: usize) -> bool {
        let mut at = self.elements[inner].parent;
        while let Some(parent) = at {
            if parent == outer {
                return true;
            }
            at = self.elements[parent].parent;
        }
        false
    }

    /// The elements of this name inside of another.
    pub(crate) fn inside<'a>(&'a self, outer: usize, name: &'a str) -> impl Iterator<Item = (usize, &'a Element)> {
        self.all(name).filter(move |(at, _)| self.is_inside(*at, outer))
    }
}

fn tag(text: &str, parent: Option<usize>) -> Result<(Element, bool, &str), String> {
    let end = text.find([' ', '>', '/', '\n']).ok_or("a tag without end")?;
    let mut element = Element { name: text[..end].to_owned(), attributes: Vec::new(), parent, text: String::new() };
    let mut rest = text[end..].trim_start();
    loop {
        if let Some(after) = rest.strip_prefix("/>") {
            return Ok((element, true, after));
        }
        if let Some(after) = rest.strip_prefix('>') {
            return Ok((element, false, after));
        }
        let end = rest.find(['=', ' ', '>', '/']).ok_or("an attribute without end")?;
        let name = rest[..end].to_owned();
        if name.is_empty() || name.contains(['"', '\'', '<']) {
            return Err(format!("a malformed attribute in <{}>: {}", element.name, &rest[..rest.len().min(40)]));
        }
        if element.get(&name).is_some() {
            return Err(format!("`{name}` twice in <{}>", element.name));
        }
        rest = &rest[end..];
        let mut value = String::new();
        if let Some(after) = rest.strip_prefix("=\"") {
            let (inside, after) = after.split_once('"').ok_or("an attribute value without end")?;
            value = resolved(inside)?;
            rest = after;
        } else if let Some(after) = rest.strip_prefix('=') {
            let end = after.find([' ', '>']).ok_or("a value without end")?;
            if end == 0 || after[..end].contains(['"', '\'', '=', '<', '`']) || after[..end].ends_with('/') {
                return Err(format!("`{name}` without quotes in <{}>", element.name));
            }
            value = resolved(&after[..end])?;
            rest = &after[end..];
        }
        element.attributes.push((name, value));
        rest = rest.trim_start();
    }
}

fn resolved(text: &str) -> Result<String, String> {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('&') {
        out.push_str(before);
        let (name, after) = after.split_once(';').ok_or_else(|| format!("a bare & in `{text}`"))?;
        out.push_str(match name {
            "amp" => "&",
            "lt" => "<",
            "gt" => ">",
            "quot" => "\"",
            "#39" | "#x27" => "'",
            "#x2F" => "/",
            "nbsp" => "\u{a0}",
            other => return Err(format!("the reference `&{other};`")),
        });
        rest = after;
    }
    out.push_str(rest);
    if out.contains('<') && rest.contains('<') {
        return Err(format!("a bare < in `{text}`"));
    }
    Ok(out)
}
