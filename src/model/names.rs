//! Names: which one was likely meant, and how one is written as an id.

/// The name of a list that is nearest to `text`, when one is near enough to be meant.
///
/// The same words in another order, in another case or joined by other signs come first; then the spelling decides, and
/// of two equally near the earlier. Near means: at most one slip of a letter, and one more for every four letters.
#[must_use]
pub fn nearest<'n>(text: &str, names: impl IntoIterator<Item = &'n str>) -> Option<&'n str> {
    let dressed = plain(text);
    let length = dressed.chars().count();
    let mut best: Option<(usize, &str)> = None;
    for name in names {
        let most = 1 + name.chars().count() / 4;
        let distance = if words(&dressed) == words(name) {
            0
        } else if name.chars().count().abs_diff(length) > most {
            // Lengths that differ by more cannot be that near; this spares the distance.
            continue;
        } else {
            strsim::damerau_levenshtein(&dressed, name)
        };
        if distance <= most && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, name));
        }
    }
    best.map(|(_, name)| name)
}

/// What was likely meant, as a phrase: the nearest name, else the names that have all words of `text` among theirs,
/// when they are few: `band-saw` or `hand-saw` for `saw`.
#[must_use]
pub fn meant<'n>(text: &str, names: impl Iterator<Item = &'n str> + Clone) -> Option<String> {
    if let Some(near) = nearest(text, names.clone()) {
        return Some(format!("`{near}`"));
    }
    let dressed = plain(text);
    let asked = words(&dressed);
    let holding: Vec<String> =
        names.filter(|name| asked.iter().all(|word| words(name).contains(word))).map(|name| format!("`{name}`")).collect();
    (1..=4).contains(&holding.len()).then(|| holding.join(" or "))
}

/// A name as an id: its words in lower case, joined by hyphens.
#[must_use]
pub fn hyphenated(name: &str) -> String {
    let words = name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect::<Vec<_>>().join("-")
}

/// In lower case, with hyphens between its words.
fn plain(text: &str) -> String {
    text.trim().chars().map(|letter| if matches!(letter, '_' | ' ') { '-' } else { letter }).collect::<String>().to_lowercase()
}

fn words(name: &str) -> Vec<&str> {
    let mut words: Vec<&str> = name.split('-').collect();
    words.sort_unstable();
    words
}

#[cfg(test)]
mod tests {
    use super::{meant, nearest};

    #[test]
    fn the_likely_name_is_found_and_a_far_one_is_not() {
        let tools = ["boning-knife", "band-saw", "steel"];
        assert_eq!(nearest("bonning-knife", tools), Some("boning-knife"));
        assert_eq!(nearest("Boning Knife", tools), Some("boning-knife"));
        assert_eq!(nearest("saw-band", tools), Some("band-saw"));
        assert_eq!(nearest("steels", tools), Some("steel"));
        assert_eq!(nearest("mincer", tools), None);
        assert_eq!(nearest("x", []), None);
    }

    #[test]
    fn a_word_alone_leads_to_the_names_that_have_it() {
        let tools = ["band-saw", "boning-knife", "hand-saw", "steel"].into_iter();
        assert_eq!(meant("saw", tools.clone()).as_deref(), Some("`band-saw` or `hand-saw`"));
        assert_eq!(meant("saw blade", tools.clone()), None);
        assert_eq!(meant("stel", tools).as_deref(), Some("`steel`"));
    }
}
