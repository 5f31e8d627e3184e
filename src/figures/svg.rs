//! Writes SVG: elements, attributes and text, escaped. It knows nothing of what is drawn.

use super::numbers::{NO_BREAK, coordinate};

/// A drawing that is being written.
#[derive(Debug, Clone)]
pub struct Svg {
    out: String,
    open: Vec<&'static str>,
}

/// The value of an attribute.
#[derive(Debug, Clone, Copy)]
pub enum Value<'a> {
    /// A text, which is escaped.
    Text(&'a str),
    /// A coordinate or length, with two decimals at most.
    Number(f64),
}

impl<'a> From<&'a str> for Value<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(text)
    }
}

impl From<f64> for Value<'_> {
    fn from(number: f64) -> Self {
        Self::Number(number)
    }
}

impl Svg {
    /// A drawing of this size in its own units, which are pixels where nothing scales it.
    #[must_use]
    pub fn new(width: f64, height: f64) -> Self {
        let mut svg = Self { out: String::new(), open: Vec::new() };
        let view = format!("0 0 {} {}", coordinate(width), coordinate(height));
        svg.open(
            "svg",
            &[
                ("xmlns", "http://www.w3.org/2000/svg".into()),
                ("viewBox", view.as_str().into()),
                ("width", width.into()),
                ("height", height.into()),
            ],
        );
        svg
    }

    /// Opens an element; `close` ends it.
    pub fn open(&mut self, name: &'static str, attributes: &[(&str, Value<'_>)]) {
        self.begin(name, attributes);
        self.out.push('>');
        self.open.push(name);
    }

    /// Ends the element that was opened last.
    pub fn close(&mut self) {
        if let Some(name) = self.open.pop() {
            self.out.push_str("</");
            self.out.push_str(name);
            self.out.push('>');
        }
    }

    /// An element without content.
    pub fn empty(&mut self, name: &'static str, attributes: &[(&str, Value<'_>)]) {
        self.begin(name, attributes);
        self.out.push_str("/>");
    }

    /// An element that holds text alone.
    pub fn text(&mut self, name: &'static str, attributes: &[(&str, Value<'_>)], text: &str) {
        self.open(name, attributes);
        escape(text, &mut self.out);
        self.close();
    }

    /// The whole drawing, all elements ended.
    #[must_use]
    pub fn finish(mut self) -> String {
        while !self.open.is_empty() {
            self.close();
        }
        self.out.push('\n');
        self.out
    }

    fn begin(&mut self, name: &str, attributes: &[(&str, Value<'_>)]) {
        self.out.push('<');
        self.out.push_str(name);
        for (key, value) in attributes {
            self.out.push(' ');
            self.out.push_str(key);
            self.out.push_str("=\"");
            match value {
                Value::Text(text) => escape(text, &mut self.out),
                Value::Number(number) => self.out.push_str(&coordinate(*number)),
            }
            self.out.push('"');
        }
    }
}

fn escape(text: &str, out: &mut String) {
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // XML allows no other control characters.
            other if other.is_control() && other != '\n' => out.push('\u{fffd}'),
            other => out.push(other),
        }
    }
}

/// Words on lines of so many characters at most; a longer word is cut.
#[must_use]
pub fn wrapped(text: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    let mut length = 0;
    for word in text.split(|c: char| c.is_whitespace() && c != NO_BREAK).filter(|word| !word.is_empty()) {
        let mut word: Vec<char> = word.chars().collect();
        while length + usize::from(length > 0) + word.len() > most {
            if length > 0 {
                lines.push(std::mem::take(&mut line));
                length = 0;
            } else {
                let rest = word.split_off(most.saturating_sub(1).max(1));
                lines.push(word.into_iter().chain(['-']).collect());
                word = rest;
            }
        }
        if length > 0 {
            line.push(' ');
            length += 1;
        }
        length += word.len();
        line.extend(word);
    }
    if length > 0 {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn elements_nest_and_text_is_escaped() {
        let mut svg = Svg::new(30.0, 40.5);
        svg.open("g", &[("class", "a\"b".into())]);
        svg.text("text", &[("x", 1.257.into())], "<trim> & \u{1}fat");
        assert_eq!(
            svg.finish(),
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 30 40.5\" width=\"30\" height=\"40.5\"><g class=\"a&quot;b\"><text x=\"1.26\">&lt;trim&gt; &amp; \u{fffd}fat</text></g></svg>\n"
        );
    }

    #[test]
    fn long_names_are_wrapped() {
        assert_eq!(wrapped("Rib, backbone and neck meat", 14), ["Rib, backbone", "and neck meat"]);
        assert_eq!(wrapped("Pferdefleischschmetterling", 10), ["Pferdefle-", "ischschme-", "tterling"]);
        assert_eq!(wrapped("", 5), Vec::<String>::new());
        assert_eq!(wrapped("bone, 3.8\u{a0}% 1.50\u{a0}kg", 12), ["bone, 3.8\u{a0}%", "1.50\u{a0}kg"]);
    }
}
