//! The known word that an unknown one was likely meant to be.

/// The nearest of `known` by spelling, the earlier of two equally near; `None` when none is near.
///
/// Near means: at most one slip of a letter, and one more for every four letters.
pub(super) fn nearest<'w>(word: &str, known: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    let mut best: Option<(usize, &str)> = None;
    for candidate in known {
        let most = 1 + candidate.chars().count() / 4;
        // Lengths that differ by more cannot be that near; this spares the distance.
        if candidate == word || candidate.chars().count().abs_diff(word.chars().count()) > most {
            continue;
        }
        let distance = strsim::damerau_levenshtein(word, candidate);
        if distance <= most && best.is_none_or(|(least, _)| distance < least) {
            best = Some((distance, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// The first of `known` that differs from `word` by one slip of a letter or two, and is another word.
pub(super) fn slip<'w>(word: &str, known: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    known.into_iter().find(|candidate| {
        *candidate != word && candidate.len().abs_diff(word.len()) <= 2 && strsim::damerau_levenshtein(word, candidate) <= 2
    })
}

#[cfg(test)]
mod tests {
    use super::nearest;

    #[test]
    fn offers_what_was_likely_meant_and_nothing_far() {
        let known = ["chicken-legs", "chicken-body", "loin"];
        assert_eq!(nearest("chicken-bdy", known), Some("chicken-body"));
        assert_eq!(nearest("lion", known), Some("loin"));
        assert_eq!(nearest("pork-belly", known), None);
    }
}
