//! What must hold for any records and any slip: nothing is lost on the way, and one error never hides a word.

use std::sync::LazyLock;

use proptest::prelude::*;
use proptest::test_runner::FileFailurePersistence;
use seamwise::model::words::State;
use seamwise::site::search::{Index, Kind, OtherName, Record, Sizes, words, words_and_compounds};

use crate::common::scripts;
use crate::corpus;
use crate::query::{Filters, find, one_error, units};
use crate::reader::{ReadIndex, TINY, read};

/// Words of many scripts, with the characters that a script file or a tokenizer may trip over.
fn any_text() -> impl Strategy<Value = String> {
    let odd = prop::sample::select(vec![
        "loin",
        "Bone-in",
        "butcher's",
        "é",
        "e\u{301}",
        "ﬁ",
        "ß",
        "İ",
        "Σς",
        "𐐷",
        "豈",
        "𝔸",
        "𠀀",
        "6.5",
        "1,200",
        "415a",
        "\t",
        "\n",
        "\u{2028}",
        "\"",
        "\\",
        "</script>",
        ":",
        " ",
        "–",
        "the",
    ]);
    prop::collection::vec(prop_oneof![3 => odd.prop_map(str::to_owned), 1 => any::<char>().prop_map(String::from)], 0..12)
        .prop_map(|parts| parts.join(" "))
}

prop_compose! {
    fn any_record()(
        title in any_text(), url in any_text(), context in any_text(), text in any_text(), notes in any_text(),
        names in prop::collection::vec((any_text(), prop::option::of("[a-z]{2,5}")), 0..3),
        species in prop::option::of(prop::sample::select(vec!["beef", "lamb", "wild boar"])),
        kind in prop::sample::select(Kind::ALL), state in prop::sample::select(State::ALL), step in prop::option::of(1..40_usize), named: bool,
    ) -> Record {
        let names = names.into_iter().map(|(name, region)| OtherName { name, region }).collect();
        let species_name = species.unwrap_or("").to_owned();
        Record { kind, species: species.map(str::to_owned), species_name, title, named, step, context, state, url, names, text, notes }
    }
}

/// A text as it is shown: on one line.
fn shown(text: &str) -> String {
    text.split(|c: char| c.is_control() || c == ' ').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/search.txt"))), ..ProptestConfig::default() })]

    #[test]
    fn every_record_comes_back_and_every_word_leads_to_it(records in prop::collection::vec(any_record(), 0..300)) {
        let index = Index::of(records.clone(), "en");
        let back = read(&scripts(&index, Sizes::default()));
        let parted = read(&scripts(&index, TINY));
        prop_assert_eq!(&back.words, index.vocabulary());
        prop_assert!(back.words.is_sorted_by_key(|word| units(word)));
        prop_assert!(back.lists.iter().all(|list| list.is_sorted_by(|one, other| one.0 < other.0)));
        prop_assert_eq!((&back.words, &back.lists, &back.shown), (&parted.words, &parted.lists, &parted.shown));
        prop_assert_eq!(back.shown.len(), records.len());
        for (at, record) in records.iter().enumerate() {
            let line = &back.shown[at];
            prop_assert_eq!((&line.title, &line.url, &line.context), (&shown(&record.title), &shown(&record.url), &shown(&record.context)));
            let names: Vec<(String, String)> = record.names.iter().map(|other| (other.region.clone().unwrap_or_default(), shown(&other.name))).collect();
            prop_assert_eq!(&line.names, &names);
            let state = match record.state { State::Draft => "d", State::InForce => "", State::Withdrawn => "w" };
            prop_assert_eq!(&line.step, &format!("{}{state}", record.step.map_or_else(String::new, |step| step.to_string())));
            prop_assert_eq!((back.kinds[at], &back.species[at]), (record.kind as usize, &record.species));
            let texts = [&record.title, &record.text, &record.notes].into_iter().chain(record.names.iter().map(|other| &other.name));
            for text in texts {
                let (words, compounds) = words_and_compounds(text);
                for word in words.iter().filter(|word| !back.stop.contains(word)).chain(&compounds) {
                    let list = back.words.iter().position(|known| known == word).map(|at| &back.lists[at]);
                    prop_assert!(list.is_some_and(|list| list.iter().any(|(record, _)| *record == at)), "{} of record {}", word, at);
                }
            }
        }
    }

}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/search.txt"))), ..ProptestConfig::default() })]
    #[test]
    fn cutting_words_again_changes_nothing(text in any_text()) {
        for word in words(&text) {
            prop_assert_eq!(words(&word), [word.clone()]);
        }
    }

    /// Held against the distance with swaps of neighbours, each letter touched once: Damerau, A technique for computer
    /// detection and correction of spelling errors, Communications of the ACM 7 (1964), 171–176.
    #[test]
    fn one_error_is_a_distance_of_one(one in "[abc]{0,7}", other in "[abc]{0,7}") {
        let (one, other) = (units(&one), units(&other));
        prop_assert_eq!(one_error(&one, &other, false), distance(&one, &other) == 1);
        let begins = (0..=other.len()).any(|end| distance(&one, &other[..end]) == 1);
        prop_assert!(!one_error(&one, &other, true) || begins || other.starts_with(&one));
        prop_assert!(!begins || one_error(&one, &other, true) || other.starts_with(&one));
    }

    #[test]
    fn every_slip_of_one_finger_finds_the_word(pick: prop::sample::Index, at: prop::sample::Index, letter in "[a-z]", slip in 0..4_usize) {
        let long: Vec<&String> = CORPUS.words.iter().filter(|word| word.len() >= 5).collect();
        let word = *pick.get(&long);
        let typed = slipped(word, at.index(word.len()), &letter, slip);
        let answer = find(&CORPUS, &typed, &Filters::default());
        let own = answer.instead.is_empty();
        prop_assert!(answer.matched[0].contains(word) || own, "{} for {}", typed, word);
        // Only a word that itself stands in the index, or begins or holds some that do, is taken as it is.
        if own && typed != *word {
            let known = |part: &str| CORPUS.words.iter().any(|known| known == part);
            let stands = CORPUS.words.iter().any(|known| known.starts_with(&typed)) || known(&format!("{typed}s")) || known(&format!("{typed}es"));
            let singular = typed.strip_suffix('s').is_some_and(known) || typed.strip_suffix("es").is_some_and(known);
            let holds = (1..typed.len()).any(|at| known(&typed[..at]) && known(&typed[at..]));
            prop_assert!(stands || singular || holds, "{} for {}", typed, word);
        }
    }
}

static CORPUS: LazyLock<ReadIndex> = LazyLock::new(|| read(&scripts(&Index::of(corpus::records(120, 2_000), "en"), Sizes::default())));

/// One letter taken for another, left out, put in, or swapped with the next.
fn slipped(word: &str, at: usize, letter: &str, slip: usize) -> String {
    let (before, after) = word.split_at(at);
    match slip {
        0 => format!("{before}{letter}{}", &after[1..]),
        1 => format!("{before}{}", &after[1..]),
        2 => format!("{before}{letter}{after}"),
        _ if after.len() > 1 => format!("{before}{}{}{}", &after[1..2], &after[..1], &after[2..]),
        _ => format!("{}{after}{}", &before[..at - 1], &before[at - 1..]),
    }
}

/// The distance, by the whole table.
fn distance(one: &[u16], other: &[u16]) -> usize {
    let mut table = vec![vec![0; other.len() + 1]; one.len() + 1];
    for i in 0..=one.len() {
        for j in 0..=other.len() {
            let mut best = if i == 0 || j == 0 { i + j } else { table[i - 1][j - 1] + usize::from(one[i - 1] != other[j - 1]) };
            if i > 0 && j > 0 {
                best = best.min(table[i - 1][j] + 1).min(table[i][j - 1] + 1);
            }
            if i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1] {
                best = best.min(table[i - 2][j - 2] + 1);
            }
            table[i][j] = best;
        }
    }
    table[one.len()][other.len()]
}
