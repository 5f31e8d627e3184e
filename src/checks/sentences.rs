//! Instructions taken apart into sentences and words, and the exact place of a part of an authored text.
//!
//! A sentence ends at `.`, `!` or `?` before a blank, at the end of a paragraph or an item, and at a line break
//! before anything but a small letter, for a page shows each line by itself. Words count as the simplified English
//! of technical writing counts them (from memory): a hyphenated word is one, and so is a number with its unit.
//! Nothing is reported here, and no rule is known here.

use std::ops::Range;

use pulldown_cmark::{Event, Parser, Tag};

use super::Subject;
use crate::finding::{Place, SourceMap, Span};
use crate::model::stated::Spanned;

/// Abbreviations whose stop ends no sentence where a small letter or a digit follows.
const ABBREVIATIONS: &[&str] = &["e.g", "i.e", "approx", "ca", "cf", "fig", "figs", "incl", "max", "min", "no", "nos", "vs"];

/// Units that count as one word with the number before them.
const UNITS: &[&str] = &[
    "kg", "g", "lb", "oz", "°c", "°f", "c", "f", "%", "°", "mm", "cm", "m", "in", "ml", "l", "h", "min", "s", "minute", "minutes", "hour",
    "hours", "second", "seconds", "degrees",
];

/// A word with the punctuation that clings to it, and its bytes in the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Word {
    written: String,
    /// The bytes of the word in the text.
    pub(super) range: Range<usize>,
}

impl Word {
    /// The word alone, in small letters.
    pub(super) fn plain(&self) -> String {
        self.written.trim_matches(|letter: char| !letter.is_alphanumeric()).to_lowercase()
    }

    /// True when a comma, a stop, a bracket or the like follows it at once.
    pub(super) fn ends_a_phrase(&self) -> bool {
        self.written.ends_with(|letter: char| !letter.is_alphanumeric())
    }

    /// True when this sign follows it at once.
    pub(super) fn is_before(&self, sign: char) -> bool {
        self.written.ends_with(sign)
    }

    fn is_number(&self) -> bool {
        self.written.contains(|letter: char| letter.is_ascii_digit())
            && self.written.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, '.' | '–' | '-' | '~' | '<' | '>' | '±' | '('))
    }

    fn is_unit(&self) -> bool {
        let bare = self.written.trim_end_matches(['.', ',', ';', ':', ')', '!', '?']).to_lowercase();
        UNITS.contains(&bare.as_str())
    }
}

/// A sentence; never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Sentence {
    /// Its words in order.
    pub(super) words: Vec<Word>,
}

impl Sentence {
    /// How many words it has, by the count above. Signs that stand alone are no words.
    pub(super) fn count(&self) -> usize {
        let (mut count, mut after_number) = (0, false);
        for word in &self.words {
            let counts = word.written.contains(char::is_alphanumeric) && !(after_number && word.is_unit());
            count += usize::from(counts);
            after_number = word.is_number();
        }
        count
    }

    /// Its bytes in the text.
    pub(super) fn range(&self) -> Range<usize> {
        let start = self.words.first().map_or(0, |word| word.range.start);
        start..self.words.last().map_or(start, |word| word.range.end)
    }
}

/// The instructions of all steps in English, and nothing of a guidebook in another language.
pub(super) fn instructions<'a>(subject: &Subject<'a>) -> impl Iterator<Item = &'a Spanned<String>> {
    let english = subject.book.language.value().is_none_or(|language| language == "en" || language.starts_with("en-"));
    let steps = subject.book.procedures.iter().flat_map(|procedure| &procedure.steps);
    steps.filter_map(|step| step.instruction.given()).filter(move |_| english)
}

/// The sentences of a Markdown text.
pub(super) fn sentences(text: &str) -> Vec<Sentence> {
    let mut found = Vec::new();
    let mut letters: Vec<(char, usize)> = Vec::new();
    for (event, range) in Parser::new(text).into_offset_iter() {
        match event {
            Event::Text(part) | Event::Code(part) => {
                // What is written with an escape is longer than what it means; its letters then stand at its beginning.
                let shift = if part.len() == range.len() { 1 } else { 0 };
                letters.extend(part.char_indices().map(|(at, letter)| (letter, range.start + at * shift)));
            }
            Event::SoftBreak => letters.push(('\n', range.start)),
            Event::Start(Tag::Emphasis | Tag::Strong | Tag::Link { .. } | Tag::Image { .. }) => {}
            Event::Start(_) | Event::HardBreak | Event::Rule => found.extend(split(&std::mem::take(&mut letters))),
            Event::End(end) if !is_inline(end) => found.extend(split(&std::mem::take(&mut letters))),
            _ => {}
        }
    }
    found.extend(split(&letters));
    found
}

const fn is_inline(end: pulldown_cmark::TagEnd) -> bool {
    use pulldown_cmark::TagEnd::{Emphasis, Image, Link, Strikethrough, Strong};
    matches!(end, Emphasis | Strong | Link | Image | Strikethrough)
}

/// One block of text into sentences.
fn split(letters: &[(char, usize)]) -> Vec<Sentence> {
    let mut found = Vec::new();
    let mut words: Vec<Word> = Vec::new();
    let mut broken = false;
    for run in letters.chunk_by(|one, next| one.0.is_whitespace() == next.0.is_whitespace()) {
        let (Some(first), Some(last)) = (run.first(), run.last()) else { continue };
        if first.0.is_whitespace() {
            broken = run.iter().any(|(letter, _)| *letter == '\n');
            continue;
        }
        let ends = words.last().is_some_and(|word| ends_sentence(word, first.0) || (broken && !first.0.is_lowercase()));
        if ends {
            found.push(Sentence { words: std::mem::take(&mut words) });
        }
        broken = false;
        let written = run.iter().map(|(letter, _)| letter).collect();
        words.push(Word { written, range: first.1..last.1 + last.0.len_utf8() });
    }
    if !words.is_empty() {
        found.push(Sentence { words });
    }
    found
}

/// True when a sentence ends with this word, before a word that begins with `next`.
fn ends_sentence(word: &Word, next: char) -> bool {
    let bare = word.written.trim_end_matches(['"', '\'', ')', ']', '”', '’']);
    if !bare.ends_with(['.', '!', '?']) {
        return false;
    }
    let short = word.plain();
    let abbreviated = ABBREVIATIONS.contains(&short.as_str()) || short.chars().count() == 1;
    !(abbreviated && (next.is_lowercase() || next.is_ascii_digit()))
}

/// The exact place of a part of a text, where the file has the same letters in the same order; else the whole value.
pub(super) fn exact(sources: &SourceMap, whole: &Spanned<String>, part: &Range<usize>) -> Place {
    find(sources, whole, part).unwrap_or(whole.place)
}

fn find(sources: &SourceMap, whole: &Spanned<String>, part: &Range<usize>) -> Option<Place> {
    let raw = sources.get(whole.place.file)?.text().get(whole.place.span.range())?;
    // Block text begins with a line of its own; quotes stand around the letters.
    let body = match raw.chars().next()? {
        '|' | '>' => raw.find('\n')? + 1..raw.len(),
        '"' | '\'' => 1..raw.len().checked_sub(1)?,
        _ => 0..raw.len(),
    };
    let letters = |text: &str| -> Vec<(usize, char)> { text.char_indices().filter(|(_, letter)| !letter.is_whitespace()).collect() };
    let (written, meant) = (letters(raw.get(body.clone())?), letters(&whole.value));
    if !written.iter().map(|(_, letter)| letter).eq(meant.iter().map(|(_, letter)| letter)) {
        return None;
    }
    let first = meant.partition_point(|(at, _)| *at < part.start);
    let last = meant.partition_point(|(at, _)| *at < part.end).checked_sub(1)?;
    let (start, (end, letter)) = (written.get(first)?.0, written.get(last)?);
    let offset = |at: usize| Some(whole.place.span.start + u32::try_from(body.start + at).ok()?);
    Some(Place::new(whole.place.file, Span::new(offset(start)?, offset(end + letter.len_utf8())?)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::SourceMap;

    fn told(text: &str) -> Vec<(usize, &str)> {
        sentences(text).iter().map(|sentence| (sentence.count(), text.get(sentence.range()).unwrap_or(""))).collect()
    }

    #[test]
    fn sentences_end_at_stops_lines_and_items() {
        assert_eq!(told("Fold it. Cut!"), [(2, "Fold it."), (1, "Cut!")]);
        assert_eq!(told("Fold it\nCut it\n\nTurn it\nover"), [(2, "Fold it"), (2, "Cut it"), (3, "Turn it\nover")]);
        assert_eq!(told("Take one:\n\n- a *saw*.\n- a knife"), [(2, "Take one:"), (2, "a *saw*."), (2, "a knife")]);
    }

    #[test]
    fn an_abbreviation_ends_nothing() {
        assert_eq!(told("Cut at approx. 5 cm, e.g. by eye, see fig. 2.").len(), 1);
        assert_eq!(told("Lift M. psoas. Cut.").len(), 2);
        assert_eq!(told("Cut along line A. Turn.").len(), 2);
    }

    /// The count of ASD-STE100: a hyphenated word, and a number with its unit, are one word each (from memory).
    #[test]
    fn hyphenated_words_and_quantities_are_one_word() {
        let count = |text: &str| told(text).iter().map(|told| told.0).sum::<usize>();
        assert_eq!(count("Saw the square-cut shoulder 2–3 cm from the joint."), 8);
        assert_eq!(count("Chill it to 4 °C – or colder."), 6);
        assert_eq!(count("Cut 2 ribs, 30 %, in 5 minutes."), 6);
    }

    #[test]
    fn places_are_exact_where_the_letters_are_the_same() {
        let exact_in = |raw: &str, value: &str, part: &str| {
            let mut sources = SourceMap::default();
            let file = sources.add("a.yaml", format!("do: {raw}\n"));
            let place = Place::new(file, Span::new(4, 4 + u32::try_from(raw.len()).unwrap_or(0)));
            let at = value.find(part).unwrap_or(0);
            let found = exact(&sources, &Spanned::new(value.to_owned(), place), &(at..at + part.len()));
            sources.get(file).and_then(|source| source.text().get(found.span.range())).unwrap_or("").to_owned()
        };
        assert_eq!(exact_in("|\n  Öffne.\n  Cut it.", "Öffne.\nCut it.", "Cut"), "Cut");
        assert_eq!(exact_in(">-\n  Cut\n  it.", "Cut it.", "it."), "it.");
        assert_eq!(exact_in("'Cut: now.'", "Cut: now.", "now."), "now.");
        assert_eq!(exact_in("\"Cut \\x41.\"", "Cut A.", "A."), "\"Cut \\x41.\"");
    }
}
