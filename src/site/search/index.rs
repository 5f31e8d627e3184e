//! The index: every word of every record in sorted order, and where each stands.

use std::collections::BTreeMap;

use super::posting::{Class, Posting};
use super::record::Record;
use super::stop_words;
use super::token;

/// An index of records, ready to be written as scripts.
#[derive(Debug)]
pub struct Index {
    /// The records in the order in which they were given.
    pub(super) records: Vec<Record>,
    /// How many words the text and notes of each record have.
    pub(super) lengths: Vec<usize>,
    /// Every word once, sorted by its UTF-16 units.
    pub(super) vocabulary: Vec<String>,
    /// Beside the vocabulary: where each word stands, sorted by record.
    pub(super) postings: Vec<Vec<Posting>>,
    /// Words that are in no index of this language.
    pub(super) stop_words: &'static [&'static str],
}

impl Index {
    /// Indexes the records. `language` is that of their texts, as in `en`.
    #[must_use]
    pub fn of(records: Vec<Record>, language: &str) -> Self {
        let stop_words = stop_words::of(language);
        let mut all: BTreeMap<Units, Vec<Posting>> = BTreeMap::new();
        let mut lengths = Vec::with_capacity(records.len());
        for (at, record) in (0_u32..).zip(&records) {
            let (places, length) = places(record, stop_words);
            lengths.push(length);
            for (word, class) in places {
                all.entry(Units::of(word)).or_default().push(Posting { record: at, class });
            }
        }
        let (vocabulary, postings) = all.into_iter().map(|(word, postings)| (word.word, postings)).unzip();
        Self { records, lengths, vocabulary, postings, stop_words }
    }

    /// How many records there are.
    #[must_use]
    pub fn records(&self) -> usize {
        self.records.len()
    }

    /// All words in their order.
    #[must_use]
    pub fn vocabulary(&self) -> &[String] {
        &self.vocabulary
    }
}

/// A word that sorts by its UTF-16 units, as scripts do.
#[derive(Debug, PartialEq, Eq)]
struct Units {
    word: String,
}

impl Units {
    const fn of(word: String) -> Self {
        Self { word }
    }
}

impl Ord for Units {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.word.encode_utf16().cmp(other.word.encode_utf16())
    }
}

impl PartialOrd for Units {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

/// The best place of each word of a record, and how many words its text and notes have.
fn places(record: &Record, stop_words: &[&str]) -> (BTreeMap<String, Class>, usize) {
    let mut places = Places { best: BTreeMap::new(), stop_words };
    places.add(&record.title, |words| if record.named { Class::name(words) } else { Class::Title });
    places.add(&record.species_name, |_| if record.named { Class::OtherOfMany } else { Class::Title });
    for other in &record.names {
        places.add(&other.name, Class::other);
    }
    let notes = places.add(&record.notes, |_| Class::Notes);
    let mut seen = BTreeMap::new();
    let text = places.cut(&record.text);
    for word in &text {
        *seen.entry(word).or_insert(0) += 1;
    }
    for (word, times) in seen {
        places.put(word.clone(), if times > 1 { Class::TextOften } else { Class::Text });
    }
    (places.best, text.len() + notes)
}

struct Places<'a> {
    best: BTreeMap<String, Class>,
    stop_words: &'a [&'a str],
}

impl Places<'_> {
    /// Adds the words of a text; `class` turns their number into their class. Gives back that number.
    fn add(&mut self, text: &str, class: impl Fn(usize) -> Class) -> usize {
        let (words, compounds) = token::words_and_compounds(text);
        let words: Vec<String> = words.into_iter().filter(|word| !self.stops(word)).collect();
        let count = words.len();
        for word in words.into_iter().chain(compounds) {
            self.put(word, class(count));
        }
        count
    }

    /// The words of a text that are in the index, compounds among them.
    fn cut(&self, text: &str) -> Vec<String> {
        let (words, compounds) = token::words_and_compounds(text);
        words.into_iter().filter(|word| !self.stops(word)).chain(compounds).collect()
    }

    fn stops(&self, word: &str) -> bool {
        self.stop_words.binary_search(&word).is_ok()
    }

    fn put(&mut self, word: String, class: Class) {
        let best = self.best.entry(word).or_insert(class);
        if class.weight() > best.weight() {
            *best = class;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::record::{Kind, OtherName};
    use super::*;
    use crate::model::words::State;

    fn record(kind: Kind, title: &str, other: &str, text: &str, notes: &str) -> Record {
        Record {
            kind,
            species: None,
            species_name: String::new(),
            title: title.to_owned(),
            named: kind != Kind::Step,
            step: None,
            context: String::new(),
            state: State::InForce,
            url: String::new(),
            names: vec![OtherName { name: other.to_owned(), region: None }],
            text: text.to_owned(),
            notes: notes.to_owned(),
        }
    }

    fn class(index: &Index, word: &str) -> Option<Class> {
        let at = index.vocabulary.iter().position(|known| known == word)?;
        index.postings.get(at)?.first().map(|posting| posting.class)
    }

    #[test]
    fn the_best_place_of_a_word_counts() {
        let piece =
            record(Kind::Piece, "Thick flank", "sirloin tip of beef", "The flank lies in front. Front of the thigh.", "knuckle tip");
        let index = Index::of(vec![piece], "en");
        assert_eq!(class(&index, "thick"), Some(Class::NameOfTwo));
        assert_eq!(class(&index, "flank"), Some(Class::NameOfTwo));
        assert_eq!(class(&index, "tip"), Some(Class::OtherOfMany));
        assert_eq!(class(&index, "front"), Some(Class::TextOften));
        assert_eq!(class(&index, "lies"), Some(Class::Text));
        assert_eq!(class(&index, "knuckle"), Some(Class::Notes));
        assert_eq!(class(&index, "the"), None);
        assert_eq!(index.lengths, [8]); // flank, lies, in, front, front, thigh; knuckle, tip
    }

    #[test]
    fn a_step_has_a_title_and_no_name() {
        let index = Index::of(vec![record(Kind::Step, "Take out the aitch-bone", "", "", "")], "en");
        assert_eq!(class(&index, "aitch"), Some(Class::Title));
        assert_eq!(class(&index, "aitchbone"), Some(Class::Title));
    }

    #[test]
    fn words_sort_as_scripts_sort() {
        let index = Index::of(vec![record(Kind::Step, "豈 𐐷 𠀀 z", "", "", "")], "en");
        assert!(index.vocabulary.is_sorted_by_key(|word| word.encode_utf16().collect::<Vec<u16>>()));
        assert_eq!(index.vocabulary.len(), 4);
    }
}
