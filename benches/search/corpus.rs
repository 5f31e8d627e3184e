//! Documents of invented words, the same on every run, for measuring search and for holding its two readings together.
//!
//! Words are made of syllables; how often each stands follows Zipf's law (Zipf, Human Behavior and the Principle of
//! Least Effort, Addison-Wesley, 1949): the word of rank r has the weight 1/r. Such text compresses worse than prose.

use seamwise::model::words::State;
use seamwise::site::search::{Kind, OtherName, Record};

const ONSETS: &[&str] = &[
    "", "b", "bl", "br", "c", "ch", "cl", "cr", "d", "dr", "f", "fl", "fr", "g", "gl", "gr", "h", "j", "k", "l", "m", "n", "p", "pl", "pr",
    "qu", "r", "s", "sc", "sh", "sl", "sm", "sn", "sp", "st", "str", "t", "th", "tr", "v", "w", "wh", "y", "z",
];
const VOWELS: &[&str] = &["a", "e", "i", "o", "u", "a", "e", "i", "o", "ai", "ea", "ee", "oa", "oo", "ou", "ie"];
const CODAS: &[&str] = &[
    "", "", "", "", "b", "ck", "d", "ft", "g", "l", "ld", "ll", "m", "mp", "n", "n", "nd", "ng", "nk", "nt", "p", "r", "r", "rd", "rk",
    "rm", "rn", "rt", "s", "sh", "ss", "st", "t", "th", "x",
];
const SPECIES: &[&str] = &["beef", "chicken", "lamb", "pork", "salmon"];

/// Numbers that look random (Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014).
pub(crate) struct Random(pub(crate) u64);

impl Random {
    /// The next number.
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mixed = (self.0 ^ self.0 >> 30).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let mixed = (mixed ^ mixed >> 27).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ mixed >> 31
    }

    /// A number below `end`.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        (self.next() % end as u64) as usize
    }

    /// One of a list.
    pub(crate) fn pick<'a>(&mut self, list: &[&'a str]) -> &'a str {
        list[self.below(list.len())]
    }
}

/// How many of a hundred words have 3, 4, … 12 letters: few are short, as in any word list.
const LENGTHS: [usize; 10] = [2, 4, 7, 11, 14, 16, 15, 13, 10, 8];

/// So many different words of 3 to 12 letters, the most frequent first.
pub(crate) fn vocabulary(count: usize, random: &mut Random) -> Vec<String> {
    let mut words = Vec::with_capacity(count);
    let mut known = std::collections::BTreeSet::new();
    while words.len() < count {
        let mut place = random.below(100);
        let mut fits = |share: &usize| {
            let fits = place >= *share;
            place -= if fits { *share } else { 0 };
            fits
        };
        let length = 3 + LENGTHS.iter().take_while(|share| fits(share)).count();
        let word = word_of(length, random);
        if known.insert(word.clone()) {
            words.push(word);
        }
    }
    words
}

/// A word of so many letters.
fn word_of(length: usize, random: &mut Random) -> String {
    loop {
        let syllables = 1 + random.below(4);
        let word: String = (0..syllables).map(|_| [random.pick(ONSETS), random.pick(VOWELS), random.pick(CODAS)].concat()).collect();
        if word.len() == length {
            return word;
        }
    }
}

/// So many records, each a step with a title of five words and 210 to 390 words of text.
pub(crate) fn records(count: usize, words: usize) -> Vec<Record> {
    let mut random = Random(count as u64);
    let vocabulary = vocabulary(words, &mut random);
    let mut reach = 0.0;
    let reaches: Vec<f64> = (1..=words)
        .map(|rank| {
            reach += 1.0 / rank as f64;
            reach
        })
        .collect();
    let said = |count: usize, random: &mut Random| -> String {
        let word = |_| {
            let at = (random.next() >> 11) as f64 / (1_u64 << 53) as f64 * reach;
            vocabulary[reaches.partition_point(|reach| *reach <= at).min(words - 1)].as_str()
        };
        (0..count).map(word).collect::<Vec<_>>().join(" ")
    };
    let mut guide = String::new();
    (0..count)
        .map(|at| {
            let step = at % 9 + 1;
            if step == 1 {
                guide = said(4, &mut random);
            }
            let species = SPECIES[at / 9 % SPECIES.len()];
            let length = 210 + random.below(181);
            let title = said(5, &mut random);
            Record {
                kind: if step == 1 { Kind::Guide } else { Kind::Step },
                species: Some(species.to_owned()),
                step: (step > 1).then_some(step - 1),
                context: guide.clone(),
                state: State::InForce,
                url: format!("guides/{species}/{}.html#{}", guide.replace(' ', "-"), title.replace(' ', "-")),
                names: if step == 2 { vec![OtherName { name: said(2, &mut random), region: Some("uk".to_owned()) }] } else { Vec::new() },
                species_name: species.to_owned(),
                title,
                named: step == 1,
                text: said(length, &mut random),
                notes: String::new(),
            }
        })
        .collect()
}
