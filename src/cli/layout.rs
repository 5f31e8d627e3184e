//! Text for a terminal: how wide it is, where it breaks, how numbers and commands are written.

use unicode_width::UnicodeWidthStr;

/// How many columns a text takes.
pub(super) fn width(text: &str) -> usize {
    text.width()
}

/// The lines of a text that take at most `columns` each; a word that is longer stands alone. Never empty.
pub(super) fn wrap(text: &str, columns: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        if !line.is_empty() && width(&line) + 1 + width(word) > columns {
            lines.push(std::mem::take(&mut line));
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    lines.push(line);
    lines
}

/// A number with its thousands apart: `12,480`.
pub(super) fn count(number: usize) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push(',');
        }
        text.push(digit);
    }
    text
}

/// So many of something: `1 page`, `2 pages`.
pub(super) fn counted(number: usize, one: &str, many: &str) -> String {
    format!("{} {}", count(number), if number == 1 { one } else { many })
}

/// A word as it is typed in a shell.
pub(super) fn quoted(word: &str) -> String {
    let plain = |letter: char| letter.is_alphanumeric() || "/._-+:,@%=~".contains(letter);
    if !word.is_empty() && word.chars().all(plain) && !word.starts_with('~') {
        word.to_owned()
    } else {
        format!("'{}'", word.replace('\'', r"'\''"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wraps_at_words() {
        assert_eq!(wrap("take off the legs", 8), ["take off", "the legs"]);
        assert_eq!(wrap("a boneless-shoulder b", 5), ["a", "boneless-shoulder", "b"]);
        assert_eq!(wrap("", 5), [""]);
        assert_eq!(wrap("骨 骨 骨", 5), ["骨 骨", "骨"]);
    }

    #[test]
    fn writes_numbers_and_commands() {
        assert_eq!([count(0), count(999), count(1000), count(1_234_567)], ["0", "999", "1,000", "1,234,567"]);
        assert_eq!(counted(1, "page", "pages"), "1 page");
        assert_eq!(counted(2000, "page", "pages"), "2,000 pages");
        assert_eq!(quoted("my guides"), "'my guides'");
        assert_eq!(quoted("it's"), r"'it'\''s'");
        assert_eq!(quoted("shop/procedures"), "shop/procedures");
    }
}
