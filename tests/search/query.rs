//! The rules by which a query finds and ranks, written a second time and plainly, to hold `search.js` against.

use std::collections::{BTreeMap, BTreeSet};

use seamwise::site::search::words;

use super::reader::ReadIndex;

/// How well a word of the query and a word of the index agree.
const EXACT: u64 = 8;
const FORM: u64 = 7;
const PARTED: u64 = 6;
const BEGINNING: u64 = 6;
const SHORT_BEGINNING: u64 = 5;
const ERROR: u64 = 4;
const ERROR_AT_FIRST: u64 = 3;
/// A word that only begins others, and few, may also be a slip: such hits come after all others.
const FEW: usize = 10;
const FAR_BEHIND: u64 = 64;

/// What a query came to.
#[derive(Debug, Default)]
pub(crate) struct Answer {
    /// Record and score, best first.
    pub(crate) hits: Vec<(usize, u64)>,
    /// How many were found before filters.
    pub(crate) total: usize,
    /// False when no record has all words and these have half of them or more.
    pub(crate) all: bool,
    /// Words that were taken for others: the typed one, and those that were meant.
    pub(crate) instead: Vec<(String, Vec<String>)>,
    /// Beside the words of the query: the words of the index that they were taken for.
    pub(crate) matched: Vec<BTreeSet<String>>,
}

/// Filters: ids of species and numbers of kinds; empty lets all through.
#[derive(Debug, Default, Clone)]
pub(crate) struct Filters {
    pub(crate) species: Vec<String>,
    pub(crate) kinds: Vec<usize>,
}

/// One word of the query.
#[derive(Default)]
struct Word {
    text: String,
    /// True while it may still be typed on.
    open: bool,
    /// The best value of each record that has it.
    values: BTreeMap<usize, u64>,
    matched: BTreeSet<String>,
    /// True when the index has it, or its plural or singular, and not only longer words.
    known: bool,
    /// True when it was taken for another by one error.
    mended: bool,
}

pub(crate) fn find(index: &ReadIndex, query: &str, filters: &Filters) -> Answer {
    let mut asked = asked(index, query);
    let count = asked.len();
    for word in &mut asked {
        whole(index, word, count);
    }
    for at in 1..count {
        let joined = format!("{}{}", asked[at - 1].text, asked[at].text);
        let mut both = Word {
            text: joined,
            open: asked[at].open && units(&asked[at - 1].text).len() + units(&asked[at].text).len() >= 4,
            ..Word::default()
        };
        whole(index, &mut both, count);
        for word in &mut asked[at - 1..=at] {
            for (record, value) in &both.values {
                keep(&mut word.values, *record, value * FORM / EXACT);
            }
            word.matched.extend(both.matched.iter().cloned());
            word.known |= !both.values.is_empty();
        }
    }
    for word in &mut asked {
        if word.values.is_empty() {
            fall_back(index, word, count);
        } else if !word.known && word.values.len() <= FEW {
            slips(index, word, false, FAR_BEHIND, count);
        }
    }
    let mut answer = ranked(index, &asked, filters);
    answer.instead =
        asked.iter().filter(|word| word.mended).map(|word| (word.text.clone(), word.matched.iter().take(3).cloned().collect())).collect();
    answer.matched = asked.into_iter().map(|word| word.matched).collect();
    answer
}

/// The words of a query without those that say nothing; the last alone stays if all say nothing.
fn asked(index: &ReadIndex, query: &str) -> Vec<Word> {
    let all = words(query);
    let open = query.chars().next_back().is_some_and(|c| c.is_alphanumeric() || "'’".contains(c));
    let mut kept: Vec<Word> = Vec::new();
    for (at, text) in all.iter().enumerate() {
        let open = open && at + 1 == all.len();
        // One letter, while typing, says nothing yet beside other words.
        let begun = open && !kept.is_empty() && units(text).len() == 1 && !text.chars().all(|c| c.is_ascii_digit());
        if !begun && (!index.stop.contains(text) || open && all.len() == 1) {
            kept.push(Word { text: text.clone(), open, ..Word::default() });
        }
    }
    kept
}

/// The word itself, its plural or singular, and what begins with it while it may still be typed on.
fn whole(index: &ReadIndex, word: &mut Word, count: usize) {
    let text = word.text.clone();
    let length = units(&text).len();
    if word.open && length >= 2 {
        for at in 0..index.words.len() {
            if index.words[at].starts_with(&text) {
                let near = index.units[at].len() <= length + 3;
                take(index, word, at, if near { BEGINNING } else { SHORT_BEGINNING }, count);
            }
        }
    }
    for form in forms(&text) {
        if let Some(at) = position(index, &form) {
            take(index, word, at, FORM, count);
            word.known = true;
        }
    }
    if let Some(at) = position(index, &text) {
        take(index, word, at, EXACT, count);
        word.known = true;
    }
}

/// A beginning, then one error, then two words written as one, then one error in a beginning.
fn fall_back(index: &ReadIndex, word: &mut Word, count: usize) {
    let text = word.text.clone();
    let typed = units(&text);
    if !word.open && typed.len() >= 3 {
        for at in 0..index.words.len() {
            if index.words[at].starts_with(&text) {
                take(index, word, at, SHORT_BEGINNING, count);
            }
        }
    }
    if word.values.is_empty() {
        slips(index, word, false, 1, count);
        word.mended = !word.values.is_empty();
    }
    if word.values.is_empty() && typed.len() >= 6 {
        parted(index, word, &typed, count);
    }
    if word.values.is_empty() && word.open && typed.len() >= 5 {
        slips(index, word, true, 1, count);
        word.mended = !word.values.is_empty();
    }
}

/// Words of the index that are one error away, or begin so.
fn slips(index: &ReadIndex, word: &mut Word, beginning: bool, behind: u64, count: usize) {
    let typed = units(&word.text);
    if typed.len() < 4 || word.text.chars().any(|c| c.is_ascii_digit()) {
        return;
    }
    for at in 0..index.words.len() {
        let known = &index.units[at];
        if known.len() < 4 || !one_error(&typed, known, beginning) || index.words[at].chars().any(|c| c.is_ascii_digit()) {
            continue;
        }
        let quality = if !beginning && known[0] == typed[0] { ERROR } else { ERROR_AT_FIRST };
        take_behind(index, word, at, quality, behind, count);
    }
}

/// Two words of the index that were written as one: a record must have both.
fn parted(index: &ReadIndex, word: &mut Word, typed: &[u16], count: usize) {
    for at in 3..=typed.len() - 3 {
        let (Ok(left), Ok(right)) = (String::from_utf16(&typed[..at]), String::from_utf16(&typed[at..])) else { continue };
        let (Some(left), Some(right)) = (position(index, &left), position(index, &right)) else { continue };
        let mut halves = [Word::default(), Word::default()];
        take(index, &mut halves[0], left, PARTED, count);
        take(index, &mut halves[1], right, PARTED, count);
        for (record, value) in &halves[0].values {
            if let Some(other) = halves[1].values.get(record) {
                keep(&mut word.values, *record, *value.min(other));
                word.matched.extend([index.words[left].clone(), index.words[right].clone()]);
            }
        }
    }
}

/// True when one letter was put in, left out or taken for another, or two neighbours were swapped. `beginning` asks
/// whether the second word begins with such a variant of the first.
pub(crate) fn one_error(typed: &[u16], known: &[u16], beginning: bool) -> bool {
    let same = |typed: &[u16], known: &[u16]| if beginning { known.starts_with(typed) } else { known == typed };
    let first = typed.iter().zip(known).take_while(|(one, other)| one == other).count();
    let (typed, known) = (&typed[first..], &known[first..]);
    let left_out = !known.is_empty() && same(typed, &known[1..]);
    let put_in = !typed.is_empty() && same(&typed[1..], known);
    let other = !typed.is_empty() && !known.is_empty() && same(&typed[1..], &known[1..]);
    let swapped = typed.len() > 1 && known.len() > 1 && typed[0] == known[1] && typed[1] == known[0] && same(&typed[2..], &known[2..]);
    left_out || put_in || other || swapped
}

/// The other names of a record that answer a query at least as well as its title does.
pub(crate) fn answering(index: &ReadIndex, record: usize, answer: &Answer) -> Vec<(String, String)> {
    let shown = &index.shown[record];
    let score = |text: &str| {
        let has = words(text);
        answer.matched.iter().filter(|matched| has.iter().any(|word| matched.contains(word))).count()
    };
    let best = shown.names.iter().map(|(_, name)| score(name)).chain([score(&shown.title), 1]).max().unwrap_or(1);
    let answers = |(region, name): &&(String, String)| score(name) == best && (!region.is_empty() || *name != shown.title);
    shown.names.iter().filter(answers).cloned().collect()
}

fn ranked(index: &ReadIndex, asked: &[Word], filters: &Filters) -> Answer {
    let mut scores: BTreeMap<usize, (usize, u64)> = BTreeMap::new();
    for word in asked {
        let rarity = rarity(index.records, word.values.len());
        for (record, value) in &word.values {
            let entry = scores.entry(*record).or_default();
            entry.0 += 1;
            entry.1 += value * rarity;
        }
    }
    let most = scores.values().map(|(words, _)| *words).max().unwrap_or(0);
    let enough = most * 2 >= asked.len();
    let mut hits: Vec<(usize, u64)> =
        scores.into_iter().filter(|(_, (words, _))| enough && *words == most).map(|(record, (_, score))| (record, score)).collect();
    hits.sort_by_key(|(record, score)| (u64::MAX - score, index.title_lengths[*record], *record));
    let total = hits.len();
    hits.retain(|(record, _)| passes(index, *record, filters));
    Answer { hits, total, all: most == asked.len(), ..Answer::default() }
}

fn passes(index: &ReadIndex, record: usize, filters: &Filters) -> bool {
    let species = filters.species.is_empty() || index.species[record].as_ref().is_some_and(|one| filters.species.contains(one));
    species && (filters.kinds.is_empty() || filters.kinds.contains(&index.kinds[record]))
}

fn rarity(records: usize, having: usize) -> u64 {
    if having == 0 {
        return 0;
    }
    (16.0 * (1.0 + records as f64 / having as f64).log2()).round() as u64
}

/// Takes all places of one word of the index.
fn take(index: &ReadIndex, word: &mut Word, at: usize, quality: u64, count: usize) {
    take_behind(index, word, at, quality, 1, count);
}

fn take_behind(index: &ReadIndex, word: &mut Word, at: usize, quality: u64, behind: u64, count: usize) {
    for (record, class) in &index.lists[at] {
        let norm = if *class <= 2 { 12 - index.lengths[*record] as u64 } else { 10 };
        keep(&mut word.values, *record, weight(*class, count) * quality * norm / behind);
    }
    word.matched.insert(index.words[at].clone());
}

/// The weight of a place: names are weightier the more of them the query can be.
fn weight(class: u8, count: usize) -> u64 {
    let (base, words) = match class {
        0 => return 10,
        1 => return 12,
        2 => return 4,
        3 => return 32,
        4 => (64, 3),
        5 => (52, 3),
        6 => (64, 2),
        7 => (52, 2),
        8 => (64, 1),
        _ => (52, 1),
    };
    base + if words <= count {
        32
    } else if words == count + 1 {
        8
    } else {
        0
    }
}

fn forms(word: &str) -> Vec<String> {
    let mut forms = vec![format!("{word}s"), format!("{word}es")];
    let length = units(word).len();
    if length >= 4 && word.ends_with('s') && !word.ends_with("ss") {
        forms.push(word[..word.len() - 1].to_owned());
    }
    if length >= 5 && word.ends_with("es") {
        forms.push(word[..word.len() - 2].to_owned());
    }
    forms
}

fn position(index: &ReadIndex, word: &str) -> Option<usize> {
    let target = units(word);
    index.units.binary_search(&target).ok()
}

pub(crate) fn units(word: &str) -> Vec<u16> {
    word.encode_utf16().collect()
}

fn keep(values: &mut BTreeMap<usize, u64>, record: usize, value: u64) {
    let best = values.entry(record).or_insert(0);
    *best = value.max(*best);
}
