//! Text made safe for HTML, for a style sheet, and numbers kept beside their units.

/// Adds `text` with the five characters that mean something in HTML written out.
pub(super) fn html(text: &str, out: &mut String) {
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // HTML allows no other control characters.
            other if other.is_control() && !matches!(other, '\n' | '\t') => out.push('\u{fffd}'),
            other => out.push(other),
        }
    }
}

/// A string of a style sheet, quotes included; nothing in it can end the string or the style element. A slash stays,
/// for no `<` can stand before it.
pub(super) fn css_string(text: &str) -> String {
    use std::fmt::Write as _;
    let mut out = String::from("\"");
    for character in text.chars() {
        if character.is_alphanumeric() || " ,.:;()+-–%°/".contains(character) {
            out.push(character);
        } else {
            let _ = write!(out, "\\{:x} ", u32::from(character));
        }
    }
    out.push('"');
    out
}

/// Units that stay beside their number.
const UNITS: &[&str] = &["kg", "g", "lb", "oz", "%", "mm", "cm", "m", "in", "min", "h", "°C", "°F"];

/// The text with a no-break space between each number and its unit.
pub(super) fn keep_units(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(' ') {
        let (before, after) = rest.split_at(at);
        let after = after.get(1..).unwrap_or("");
        let word = after.split(|c: char| !(c.is_alphanumeric() || c == '%' || c == '°')).next().unwrap_or("");
        out.push_str(before);
        let number = before.ends_with(|c: char| c.is_ascii_digit());
        out.push(if number && UNITS.contains(&word) { '\u{a0}' } else { ' ' });
        rest = after;
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn html_is_written_out() {
        let mut out = String::new();
        html("<b a='1' c=\"2\">&\u{0}\u{7f}", &mut out);
        assert_eq!(out, "&lt;b a=&#39;1&#39; c=&quot;2&quot;&gt;&amp;\u{fffd}\u{fffd}");
    }

    #[test]
    fn a_css_string_cannot_be_left() {
        assert_eq!(css_string("a\"b\\c</style>\n"), "\"a\\22 b\\5c c\\3c /style\\3e \\a \"");
        assert_eq!(css_string("pork, revision 4"), "\"pork, revision 4\"");
    }

    #[test]
    fn numbers_keep_their_units() {
        assert_eq!(keep_units("leave 5–8 mm of 7.5 kg, 2 minutes at 4 °C"), "leave 5–8\u{a0}mm of 7.5\u{a0}kg, 2 minutes at 4\u{a0}°C");
        assert_eq!(keep_units("step 4 g."), "step 4\u{a0}g.");
        assert_eq!(keep_units(" 4  kg "), " 4  kg ");
    }
}
