//! Text to search words. The theme's `search.js` cuts a query by the same rules.
//!
//! Compatibility forms are taken apart, marks dropped, letters made small (NFKD, Unicode Standard Annex 15). An
//! apostrophe inside a word is dropped: `butcher's` is `butchers`. A hyphen parts words, and both the parts and the
//! whole are found: `bone-in` is `bone`, `in` and `bonein`. A decimal number stays whole, so do codes: `6.5`, `415a`.

use unicode_normalization::UnicodeNormalization as _;
use unicode_normalization::char::is_combining_mark;

/// Longer words are cut off here; no word of a language is as long.
const LONGEST: usize = 40;

/// The words of a text, each in its folded form, in the order of the text.
#[must_use]
pub fn words(text: &str) -> Vec<String> {
    cut(text).into_iter().map(|piece| piece.word).collect()
}

/// The words of a text, and after the parts of each hyphenated word the word without its hyphens.
#[must_use]
pub fn words_and_compounds(text: &str) -> (Vec<String>, Vec<String>) {
    let mut words = Vec::new();
    let mut compounds = Vec::new();
    let mut compound = String::new();
    let mut parts = 0;
    for piece in cut(text) {
        compound.push_str(&piece.word);
        parts += 1;
        words.push(piece.word);
        if !piece.hyphen_follows {
            if parts > 1 && compound.chars().any(char::is_alphabetic) {
                compounds.push(compound.chars().take(LONGEST).collect());
            }
            compound.clear();
            parts = 0;
        }
    }
    (words, compounds)
}

/// The text in its folded form: compatibility forms apart, marks dropped, letters small.
#[must_use]
pub fn fold(text: &str) -> String {
    if text.is_ascii() {
        return text.to_ascii_lowercase();
    }
    let plain: String = text.nfkd().filter(|character| !is_combining_mark(*character)).collect();
    let mut folded = String::with_capacity(plain.len());
    for character in plain.to_lowercase().chars() {
        match character {
            'ß' => folded.push_str("ss"),
            'æ' => folded.push_str("ae"),
            'œ' => folded.push_str("oe"),
            'ø' => folded.push('o'),
            'đ' | 'ð' => folded.push('d'),
            'ł' => folded.push('l'),
            other => folded.push(other),
        }
    }
    folded
}

struct Piece {
    word: String,
    /// True when a hyphen alone parts it from the next word.
    hyphen_follows: bool,
}

fn cut(text: &str) -> Vec<Piece> {
    let folded = without_apostrophes(fold(text));
    let mut pieces = Vec::new();
    let mut rest = folded.as_str();
    while let Some(start) = rest.find(char::is_alphanumeric) {
        rest = rest.get(start..).unwrap_or("");
        let decimal = decimal_length(rest);
        let length = if decimal > 0 { decimal } else { rest.find(|character: char| !character.is_alphanumeric()).unwrap_or(rest.len()) };
        let (word, after) = rest.split_at(length);
        let end = word.char_indices().nth(LONGEST).map_or(word.len(), |(at, _)| at);
        let word = word.get(..end).unwrap_or(word);
        let word = if decimal > 0 { word.replace(',', ".") } else { word.to_owned() };
        let next = after.strip_prefix(['-', '‐']).and_then(|after| after.chars().next());
        pieces.push(Piece { word, hyphen_follows: next.is_some_and(char::is_alphanumeric) });
        rest = after;
    }
    pieces
}

/// Drops each apostrophe between two letters.
fn without_apostrophes(folded: String) -> String {
    if !folded.contains(['\'', '’', 'ʼ']) {
        return folded;
    }
    let mut out = String::with_capacity(folded.len());
    let mut characters = folded.chars().peekable();
    let mut letter_before = false;
    while let Some(character) = characters.next() {
        let inside = letter_before && characters.peek().is_some_and(|next| next.is_alphabetic());
        if matches!(character, '\'' | '’' | 'ʼ') && inside {
            letter_before = false;
            continue;
        }
        letter_before = character.is_alphabetic();
        out.push(character);
    }
    out
}

/// How many bytes a decimal number takes at the beginning, as in `6.5` or `1,200`; 0 when there is none.
fn decimal_length(text: &str) -> usize {
    let mut length = 0;
    let mut groups = 0;
    let mut rest = text;
    loop {
        let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
        if digits == 0 {
            break;
        }
        groups += 1;
        length += digits;
        let after = rest.get(digits..).unwrap_or("").strip_prefix(['.', ',']);
        match after.filter(|after| after.starts_with(|next: char| next.is_ascii_digit())) {
            Some(after) => {
                length += 1;
                rest = after;
            }
            None => break,
        }
    }
    if groups > 1 { length } else { 0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &str) {
        assert_eq!(words(text).join(" "), expected);
    }

    #[test]
    fn case_marks_and_compatibility_forms_fold() {
        check("Crème FRAÎCHE, ﬁllet", "creme fraiche fillet");
        check("İSKENDER straße smørrebrød", "iskender strasse smorrebrod");
        check("½ loin", "1 2 loin");
    }

    #[test]
    fn apostrophes_inside_words_are_dropped() {
        check("the butcher's 'oyster' and butchers’ twine", "the butchers oyster and butchers twine");
    }

    #[test]
    fn numbers_and_codes_stay_whole() {
        check("IMPS 415A, 6.5–8.0 kg, 1,200 g, ribs 3-4.", "imps 415a 6.5 8.0 kg 1.200 g ribs 3 4");
        check("step 5.", "step 5");
        check("6.5kg", "6.5 kg");
        check("a6.5", "a6 5");
    }

    #[test]
    fn hyphens_part_words_and_keep_the_whole() {
        let (words, compounds) = words_and_compounds("Bone-in H-bone, 10-12 ribs - and seam-boned-out.");
        assert_eq!(words.join(" "), "bone in h bone 10 12 ribs and seam boned out");
        assert_eq!(compounds, ["bonein", "hbone", "seambonedout"]);
    }

    #[test]
    fn text_without_words_has_none() {
        check("", "");
        check(" –—…!'’-.,\u{0301} ", "");
    }
}
