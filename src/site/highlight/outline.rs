//! A line of YAML with names, sentences and ranges of numbers replaced by stand-ins that are read alike.
//!
//! What could be a number, a date, a truth value or a sign of YAML stays as it is.

/// Stands for words to the end of a line.
const WORDS: &str = "some words\n";
/// Stands for a name with hyphens.
const NAME: &str = "a-b";
/// Stands for a range of numbers.
const RANGE: &str = "1–2";

/// An outline of a line.
pub(super) struct Outline {
    pub(super) text: String,
    /// Where each stand-in ends, in the outline and in the line.
    ends: Vec<(usize, usize)>,
}

impl Outline {
    /// The outline of a line.
    pub(super) fn of(line: &str) -> Self {
        let mut outline = Self { text: String::with_capacity(line.len()), ends: Vec::new() };
        let words = words(line).unwrap_or(line.len());
        let mut at = 0;
        while let Some((rest, first)) = line.get(at..words).and_then(|rest| Some((rest, rest.chars().next()?))) {
            let run = rest.find(|letter| is_of_name(letter) != is_of_name(first)).unwrap_or(rest.len());
            let text = rest.get(..run).unwrap_or(rest);
            at += text.len();
            match stand_in(text) {
                Some(other) => outline.put(other, at),
                None => outline.text.push_str(text),
            }
        }
        if words < line.len() {
            outline.put(WORDS, line.len());
        }
        outline
    }

    fn put(&mut self, stand_in: &str, end: usize) {
        self.text.push_str(stand_in);
        self.ends.push((self.text.len(), end));
    }

    /// The place in the line of a place in the outline; one inside a stand-in stays as far behind its beginning.
    pub(super) fn in_line(&self, place: usize) -> usize {
        let before = self.ends.partition_point(|(end, _)| *end <= place).checked_sub(1);
        let (outline, line) = before.and_then(|before| self.ends.get(before)).copied().unwrap_or((0, 0));
        line + (place - outline)
    }
}

/// The signs that names and numbers are made of.
const fn is_of_name(letter: char) -> bool {
    matches!(letter, 'a'..='z' | 'A'..='Z' | '0'..='9' | '-' | '–' | '.' | '_')
}

/// What stands for a run of such signs, when it is a name with a hyphen or a range of numbers.
fn stand_in(run: &str) -> Option<&'static str> {
    let is_name = run.starts_with(|first: char| first.is_ascii_lowercase())
        && run.contains('-')
        && !run.ends_with('-')
        && run.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-');
    if is_name {
        return Some(NAME);
    }
    let is_number = |text: &str| {
        text.starts_with(|first: char| first.is_ascii_digit()) && !text.contains(|letter: char| !letter.is_ascii_digit() && letter != '.')
    };
    run.split_once('–').is_some_and(|(low, high)| is_number(low) && is_number(high)).then_some(RANGE)
}

/// Where the plain words of a value begin, in a line of one key and such words. There are two or more, so that they
/// are no truth value. `None` for any line that could be read in another way.
fn words(line: &str) -> Option<usize> {
    let (key, words) = line.split_once(": ")?;
    let name = key.trim_start_matches([' ', '-']);
    let is_key = name.starts_with(|first: char| first.is_ascii_lowercase())
        && name.chars().all(|letter| letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '-');
    let text = words.trim_end();
    let is_plain = text.starts_with(|first: char| first.is_ascii_alphabetic())
        && text.contains(' ')
        && !text.ends_with(':')
        && ![": ", " #", "\t"].iter().any(|sign| text.contains(sign));
    (is_key && is_plain).then_some(key.len() + 2)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_sentences_and_ranges_have_stand_ins() {
        let outline = |line: &str| Outline::of(line).text;
        assert_eq!(outline("    hold: The other hand\n"), "    hold: some words\n");
        assert_eq!(outline("  pork-leg: { share: 3.5–4 %, use: fat-trim }\n"), "  a-b: { share: 1–2 %, use: a-b }\n");
        for line in [
            "date: 2026-01-02\n",
            "x: yes\n",
            "x: -1\n",
            "x: a # b\n",
            "x: a: b c\n",
            "x: no-\n",
            "x: A-b\n",
            "x: 1-2\n",
            "x: –\n",
            "é: ü\n",
            "",
        ] {
            assert_eq!(outline(line), line);
        }
    }

    #[test]
    fn places_are_found_again() {
        let line = "  pork-leg: { share: 3.5–4 %, use: fat-trim }\n";
        let outline = Outline::of(line);
        for sign in [":", "{", "share", ",", "use", "}"] {
            assert_eq!(outline.in_line(outline.text.find(sign).unwrap()), line.find(sign).unwrap(), "{sign}");
        }
        assert_eq!(outline.in_line(outline.text.len()), line.len());
    }
}
