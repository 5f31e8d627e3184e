//! Words that say nothing by themselves: they are not in the index, and a query is searched without them.
//!
//! `in`, `on`, `off` and `out` do say something: bone in, skin on. So do numbers.

/// The list of a language, sorted; empty where there is none.
pub(super) fn of(language: &str) -> &'static [&'static str] {
    match language.split('-').next() {
        Some("en") => &[
            "a", "an", "and", "are", "as", "at", "be", "by", "do", "does", "for", "from", "how", "i", "if", "is", "it", "its", "my", "of",
            "or", "so", "that", "the", "then", "there", "this", "to", "what", "where", "which", "with", "you", "your",
        ],
        Some("es") => &[
            "a", "al", "como", "con", "cual", "de", "del", "donde", "e", "el", "en", "es", "esta", "este", "esto", "la", "las", "lo",
            "los", "mi", "o", "para", "por", "que", "se", "su", "sus", "tu", "u", "un", "una", "y",
        ],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_are_sorted_and_folded() {
        for language in ["en", "es", "en-GB"] {
            let list = of(language);
            assert!(!list.is_empty() && list.is_sorted(), "{language}");
            assert!(list.iter().all(|word| super::super::token::fold(word) == *word), "{language}");
        }
        assert!(of("xx").is_empty());
    }
}
