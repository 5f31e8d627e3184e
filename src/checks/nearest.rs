//! The known word that an unknown one was likely meant to be.

/// The nearest of `known` that is another word; `None` when none is near.
pub(super) fn nearest<'w>(word: &str, known: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    crate::model::names::nearest(word, known.into_iter().filter(|candidate| *candidate != word))
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
