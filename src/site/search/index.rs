//! The index: every word of every record in sorted order, and where each stands.

use std::collections::{BTreeSet, HashMap};

use rayon::prelude::*;

use super::posting::{Class, Posting};
use super::record::{Kind, Record};
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

/// So many records are cut into words at once; it bounds the memory that a large guidebook takes.
const AT_ONCE: usize = 2_048;

impl Index {
    /// Indexes the records. `language` is that of their texts, as in `en`.
    #[must_use]
    pub fn of(records: Vec<Record>, language: &str) -> Self {
        let stop_words = stop_words::of(language);
        let mut lengths = Vec::with_capacity(records.len());
        let mut known: HashMap<String, usize> = HashMap::new();
        let mut all: Vec<(String, Vec<Posting>)> = Vec::new();
        for chunk in records.chunks(AT_ONCE) {
            let cut: Vec<(Vec<(String, Class)>, usize)> = chunk.par_iter().map(|record| places(record, stop_words)).collect();
            for (places, length) in cut {
                let record = u32::try_from(lengths.len()).unwrap_or(u32::MAX);
                lengths.push(length);
                for (word, class) in places {
                    let at = known.get(&word).copied().unwrap_or_else(|| {
                        known.insert(word.clone(), all.len());
                        all.push((word, Vec::new()));
                        all.len() - 1
                    });
                    if let Some((_, postings)) = all.get_mut(at) {
                        postings.push(Posting { record, class });
                    }
                }
            }
        }
        // Scripts sort by UTF-16 units, and look words up in that order.
        all.sort_by(|(one, _), (other, _)| one.encode_utf16().cmp(other.encode_utf16()));
        let (vocabulary, postings) = all.into_iter().unzip();
        Self { records, lengths, vocabulary, postings, stop_words }
    }

    /// How many records there are.
    #[must_use]
    pub fn records(&self) -> usize {
        self.records.len()
    }

    /// The species that records belong to, sorted: the choices of the search box.
    #[must_use]
    pub fn species(&self) -> Vec<&str> {
        let species: BTreeSet<&str> = self.records.iter().filter_map(|record| record.species.as_deref()).collect();
        species.into_iter().collect()
    }

    /// The kinds of records that there are, in their order.
    #[must_use]
    pub fn kinds(&self) -> Vec<Kind> {
        let kinds: BTreeSet<Kind> = self.records.iter().map(|record| record.kind).collect();
        kinds.into_iter().collect()
    }

    /// All words in their order.
    #[must_use]
    pub fn vocabulary(&self) -> &[String] {
        &self.vocabulary
    }
}

/// Each word of a record once with its best place, sorted; and how many words its text and notes have.
fn places(record: &Record, stop_words: &[&str]) -> (Vec<(String, Class)>, usize) {
    let mut places = Places { all: Vec::new(), stop_words };
    places.add(&record.title, |words| if record.named { Class::name(words) } else { Class::Title });
    places.add(&record.species_name, |_| if record.named { Class::OtherOfMany } else { Class::Title });
    for other in &record.names {
        places.add(&other.name, Class::other);
    }
    let length = places.add(&record.text, |_| Class::Text) + places.add(&record.notes, |_| Class::Notes);
    let mut all = places.all;
    // The best place of a word comes first, and stays; a second place in the text makes the first weightier.
    all.sort_by(|(one, class), (other, another)| one.cmp(other).then(another.weight().cmp(&class.weight())));
    all.dedup_by(|(later, class), (word, best)| {
        let same = later == word;
        if same && *class == Class::Text && *best == Class::Text {
            *best = Class::TextOften;
        }
        same
    });
    (all, length)
}

struct Places<'a> {
    all: Vec<(String, Class)>,
    stop_words: &'a [&'a str],
}

impl Places<'_> {
    /// Adds the words of a text, compounds among them; `class` turns the number of words into their class. Gives back
    /// that number.
    fn add(&mut self, text: &str, class: impl Fn(usize) -> Class) -> usize {
        let (mut words, compounds) = token::words_and_compounds(text);
        words.retain(|word| self.stop_words.binary_search(&word.as_str()).is_err());
        let count = words.len();
        let class = class(count);
        self.all.extend(words.into_iter().chain(compounds).map(|word| (word, class)));
        count
    }
}

#[cfg(test)]
mod tests {
    use super::super::record::OtherName;
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
