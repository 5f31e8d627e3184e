//! What a page says of itself to machines that list pages: one short text.
//!
//! It stands in no other place and a reader never meets it, so it only repeats what the page or the guidebook says.

use super::Views;
use super::frame::About;
use crate::model::Procedure;
use crate::site::page::species_of;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

/// No description has more characters: a list of pages cuts what is longer, and every guide pays for its bytes.
const MOST: usize = 120;

impl Views<'_> {
    /// The purpose on a guide, the title and the purpose on its other views, else the title and what the site holds.
    pub(super) fn description(&self, about: &About<'_>) -> Result<String, ThemeError> {
        let purpose = about.procedure.map_or_else(String::new, purpose_of);
        if !purpose.is_empty() {
            let is_guide = about.procedure.is_some_and(|procedure| about.path == paths::guide(&procedure.id));
            return Ok(if is_guide { cut(&purpose) } else { cut(&format!("{}. {purpose}", about.title)) });
        }
        let site = self.book.title.value().map_or("", String::as_str);
        let word = if about.title == site { "about-site" } else { "about-page" };
        let count = |count: usize| i64::try_from(count).unwrap_or(i64::MAX).into();
        let (guides, species) = (count(self.book.procedures.len()), count(species_of(self.book).len()));
        let arguments = [("title", about.title.as_str().into()), ("site", site.into()), ("guides", guides), ("species", species)];
        Ok(cut(&self.engine.words.with(word, &arguments)?))
    }
}

/// The first paragraph of what a procedure is for.
fn purpose_of(procedure: &Procedure) -> String {
    procedure.purpose.value().map_or_else(String::new, |purpose| markdown::first_line(purpose))
}

/// As many whole sentences as have room when they fill half of it, else as many whole words with an ellipsis behind them.
fn cut(text: &str) -> String {
    if text.chars().count() <= MOST {
        return text.to_owned();
    }
    // Room is left for the ellipsis, so that one rule serves both ways of cutting.
    let end = text.char_indices().nth(MOST - 1).map_or(text.len(), |(at, _)| at);
    let Some(room) = text.get(..end) else { return String::new() };
    let mut sentence = room.match_indices(['.', '!', '?']).map(|(at, mark)| at + mark.len());
    let whole = sentence.rfind(|at| text.get(*at..).is_some_and(|rest| rest.starts_with(' ')));
    if let Some(sentences) = whole.filter(|at| *at >= MOST / 2).and_then(|at| room.get(..at)) {
        return sentences.to_owned();
    }
    let words = room.rsplit_once(char::is_whitespace).map_or(room, |(words, _)| words);
    format!("{}…", words.trim_end_matches([',', ':', ';']))
}

#[cfg(test)]
mod tests {
    use super::{MOST, cut};

    #[test]
    fn a_short_text_stays_as_it_is() {
        assert_eq!(cut("Five clean muscles."), "Five clean muscles.");
        let longest = "é".repeat(MOST);
        assert_eq!(cut(&longest), longest);
    }

    #[test]
    fn whole_sentences_are_kept() {
        let first = "Six primals. Each is cut by its seams, then weighed at 2.5 kg or more.";
        assert_eq!(cut(&format!("{first} {}", "word ".repeat(30))), first, "a point inside a number ends no sentence");
    }

    #[test]
    fn one_long_sentence_ends_at_a_word() {
        let text = cut(&format!("Yield. Ä{}", " long, längst".repeat(12)));
        assert!(text.chars().count() <= MOST && (text.ends_with("längst…") || text.ends_with("long…")), "{text}");
        assert_eq!(cut(&"x".repeat(MOST + 1)).chars().count(), MOST, "and one long word at the bound");
    }
}
