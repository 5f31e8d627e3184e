//! Front coding: what a text shares with the one before it is a number.

/// Sorted words, each as the number of characters shared with the one before (`A` is none) and the rest of it.
///
/// Words hold no capital ASCII letter, so that the number also parts the words. Characters are counted as UTF-16
/// units, which is how scripts count and sort; a pair of units is never parted.
pub(super) fn words(sorted: &[String]) -> String {
    const MOST: usize = 25;
    let mut out = String::new();
    let mut before = "";
    for word in sorted {
        let (shared, rest) = shared(before, word, MOST);
        out.push(number(b'A', shared));
        out.push_str(rest);
        before = word;
    }
    out
}

/// Texts of any kind: the number of characters shared with the text before (`0` is none), then the rest of it.
pub(super) fn text(before: &str, text: &str, out: &mut String) {
    const MOST: usize = 78;
    let (shared, rest) = shared(before, text, MOST);
    out.push(number(b'0', shared));
    out.push_str(rest);
}

fn number(zero: u8, number: usize) -> char {
    u8::try_from(number).map_or('~', |number| char::from(zero.saturating_add(number)))
}

/// How many UTF-16 units two texts share at the beginning, `most` at most, and the rest of the second.
fn shared<'a>(before: &str, text: &'a str, most: usize) -> (usize, &'a str) {
    let mut units = 0;
    let mut bytes = 0;
    for (one, other) in before.chars().zip(text.chars()) {
        if one != other || units + one.len_utf16() > most {
            break;
        }
        units += one.len_utf16();
        bytes += one.len_utf8();
    }
    (units, text.get(bytes..).unwrap_or(""))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shared_beginnings_are_numbers() {
        let sorted = ["back", "backbone", "bacon", "loin"].map(str::to_owned);
        assert_eq!(words(&sorted), "AbackEboneDonAloin");
    }

    #[test]
    fn long_beginnings_are_cut_off_and_pairs_stay_whole() {
        let long = "a".repeat(30);
        assert_eq!(words(&[long.clone(), format!("{long}b")]), format!("A{long}Z{}b", "a".repeat(5)));
        let mut out = String::new();
        text("𝔸x", "𝔹x", &mut out);
        assert_eq!(out, "0𝔹x");
        text("𝔸x", "𝔸y", &mut out);
        assert_eq!(out, "0𝔹x2y");
    }
}
