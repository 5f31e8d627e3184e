//! Answers of the second reading, written for the theme's script to agree with: `tests/browser/search.test.mjs` reads
//! them and asks `search.js` the same.

use std::path::{Path, PathBuf};

use seamwise::site::search::{Index, Script, Sizes, words};
use serde_json::{Value, json};

use crate::common::{records_of, scripts};
use crate::corpus::{self, Random};
use crate::query::{Filters, answering, find};
use crate::reader::{ReadIndex, TINY, read};

/// Texts that two tokenizers may cut apart differently.
const ODD: &[&str] = &[
    "Crème FRAÎCHE, ﬁllet",
    "İstanbul IJssel ǅ",
    "ΟΔΟΣ ΣΑΣ",
    "6.5–8.0 kg 1,200g a6.5 3.",
    "butcher's butchers’ 'oyster' l’os",
    "Bone-in, H-bone",
    "½ ① Ⅷ ª º",
    "豈 𐐷 𝔸𝔹 𠀀",
    "नमस्ते สวัสดี",
    "straße SMØRREBRØD Łódź",
    "a\u{301}\u{300}b",
    "\u{200d}x\u{ad}y",
    "",
    " – ",
];

#[test]
fn answers_are_written_for_the_script() {
    let folder = folder();
    let small = Index::of(records_of("tests/search/guidebook"), "en");
    let demo = Index::of(records_of("procedures"), "en");
    let large = Index::of(corpus::records(400, 2_000), "en");
    let cases = [
        case("guidebook", &scripts(&small, Sizes::default()), 600),
        case("guidebook-parted", &scripts(&small, TINY), 600),
        case("demo", &scripts(&demo, Sizes::default()), 600),
        case("invented", &scripts(&large, Sizes::default()), 300),
        case("invented-parted", &scripts(&large, Sizes { whole: 0, part: 9_000 }), 300),
    ];
    let odd: Vec<Value> = ODD.iter().map(|text| json!([text, words(text)])).collect();
    let all = json!({ "words": odd, "cases": cases });
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join("answers.json"), serde_json::to_vec(&all).unwrap()).unwrap();
}

/// A folder of this build for files that tests leave for other tests.
fn folder() -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR")).join("search")
}

fn case(name: &str, scripts: &[Script], count: usize) -> Value {
    let index = read(scripts);
    let mut random = Random(count as u64);
    let queries: Vec<Value> = (0..count).map(|at| query(&index, at, &mut random)).collect();
    let found = queries.iter().filter(|query| query["total"] != 0).count();
    assert!(found * 2 > count, "{name}: {found} of {count} queries find something");
    let files: Vec<Value> = scripts.iter().map(|script| json!([script.name, script.text])).collect();
    json!({ "name": name, "scripts": files, "queries": queries })
}

fn query(index: &ReadIndex, at: usize, random: &mut Random) -> Value {
    let count = [1, 1, 2, 3][random.below(4)];
    // Words of one record are likely to be found together.
    let record = random.below(index.records);
    let together: Vec<&String> =
        index.words.iter().zip(&index.lists).filter(|(_, list)| list.iter().any(|(one, _)| *one == record)).map(|(word, _)| word).collect();
    let said: Vec<String> = (0..count)
        .map(|_| {
            let word =
                if random.below(5) == 0 { &index.words[random.below(index.words.len())] } else { together[random.below(together.len())] };
            slip(word, random)
        })
        .collect();
    let typed = said.join([" ", " ", "-", ""][random.below(4)]) + ["", "", " ", "'"][random.below(4)];
    let mut filters = Filters::default();
    if at % 4 == 1 {
        filters.species = index.species[record].iter().cloned().collect();
    }
    if at % 6 == 2 {
        filters.kinds = vec![index.kinds[record]];
    }
    let answer = find(index, &typed, &filters);
    let hits: Vec<Value> = answer
        .hits
        .iter()
        .take(20)
        .map(|(record, score)| {
            let shown = &index.shown[*record];
            json!({ "record": record, "score": score, "title": shown.title, "url": shown.url, "step": shown.step, "context": shown.context,
                "names": answering(index, *record, &answer) })
        })
        .collect();
    json!({ "typed": typed, "species": filters.species, "kinds": filters.kinds, "hits": hits, "found": answer.hits.len(), "total": answer.total,
        "all": answer.all, "instead": answer.instead })
}

/// The word as a hand may type it: whole, begun, in the plural, or with a slip.
fn slip(word: &str, random: &mut Random) -> String {
    let letters: Vec<char> = word.chars().collect();
    let at = random.below(letters.len());
    let mut typed = letters.clone();
    match random.below(9) {
        0 => typed.truncate(at.max(1)),
        1 => typed.push('s'),
        2 => typed[at] = 'q',
        3 if typed.len() > 1 => drop(typed.remove(at)),
        4 => typed.insert(at, 'x'),
        5 if at > 0 => typed.swap(at, at - 1),
        _ => {}
    }
    typed.into_iter().collect()
}
