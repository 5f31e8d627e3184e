//! The index as classic scripts, which work over http and from a folder alike.
//!
//! The first assigns one global, `seamwiseIndex`: the vocabulary, what ranking asks of every record, and the lists of
//! where words stand. A large index is parted: the first script then holds the vocabulary whole, so that a slip of the
//! finger is mended whichever letter it hits, and names the files that hold the lists and the texts to be shown. The
//! theme's `search.js` reads all this; a change here is a change there, and of `FORM`.

use std::fmt::Write as _;

use super::bits::BitWriter;
use super::front;
use super::index::Index;
use super::posting;
use super::record::{Kind, Record};
use crate::model::words::State;

/// The form of the scripts; `search.js` refuses another.
const FORM: u32 = 1;

/// So many words share one block of lists, and so many records one page of texts: the least that is read at once.
const BLOCK: usize = 16;
const PAGE: usize = 128;

/// One script file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Script {
    /// Its file name.
    pub name: String,
    /// Its text.
    pub text: String,
}

/// Sizes at which an index is parted, in bytes.
#[derive(Debug, Clone, Copy)]
pub struct Sizes {
    /// An index no larger than this is one file.
    pub whole: usize,
    /// The size at which a part ends.
    pub part: usize,
}

impl Default for Sizes {
    fn default() -> Self {
        Self { whole: 400_000, part: 120_000 }
    }
}

impl Index {
    /// The scripts, the first of which is to be named by the page. All lie in one folder. `name` makes a file name,
    /// without a folder, of a stem such as `search-index` and the text of the file, so that it can carry a mark of the
    /// content.
    #[must_use]
    pub fn scripts(&self, sizes: Sizes, name: &impl Fn(&str, &str) -> String) -> Vec<Script> {
        let blocks = self.blocks();
        let pages = self.pages();
        let head = self.head(&blocks);
        let size = head.len() + blocks.iter().chain(&pages).map(String::len).sum::<usize>();
        let part = if size > sizes.whole { sizes.part } else { usize::MAX };
        let mut scripts = Vec::new();
        let mut lists = String::new();
        let mut from = 0;
        for (at, group) in groups(&blocks, part).into_iter().enumerate() {
            let text = group.concat();
            let place = if part == usize::MAX {
                format!("\"text\":{}", quoted(&text))
            } else {
                let script = format!("seamwiseIndex.lists[{at}].text={};", quoted(&text));
                put(&mut scripts, name, &format!("search-lists-{}", at + 1), script)
            };
            let _ = write!(lists, "{}{{\"from\":{from},{place}}}", if at > 0 { "," } else { "" });
            from += group.len();
        }
        let mut texts = String::new();
        let mut page = 0;
        for (at, group) in groups(&pages, part).into_iter().enumerate() {
            let mut script = String::new();
            let first = page;
            for text in group {
                let _ = write!(script, "seamwiseIndex.pages[{page}].text={};", quoted(text));
                page += 1;
            }
            let place =
                if part == usize::MAX { String::new() } else { put(&mut scripts, name, &format!("search-texts-{}", at + 1), script) };
            for (number, text) in (first..page).zip(group) {
                let place = if part == usize::MAX { format!("\"text\":{}", quoted(text)) } else { place.clone() };
                let _ = write!(texts, "{}{{{place}}}", if number > 0 { "," } else { "" });
            }
        }
        let main = format!("seamwiseIndex={{{head},\"lists\":[{lists}],\"pages\":[{texts}]}};");
        scripts.insert(0, Script { name: name("search-index", &main), text: main });
        scripts
    }

    /// What is needed to find and rank: all but lists and texts.
    fn head(&self, blocks: &[String]) -> String {
        let species = self.species();
        let of = |record: &Record| record.species.as_deref().and_then(|one| species.binary_search(&one).ok()).map_or(0, |at| at + 1);
        let each = |pick: &dyn Fn(&Record) -> char| quoted(&self.records.iter().map(pick).collect::<String>());
        let mut sizes = BitWriter::default();
        for block in blocks {
            sizes.bits(u32::try_from(block.len()).unwrap_or(u32::MAX), 24);
        }
        let lengths: String = self.lengths.iter().map(|length| digit(length_class(*length))).collect();
        format!(
            "\"form\":{FORM},\"records\":{},\"block\":{BLOCK},\"page\":{PAGE},\"kinds\":[{}],\"stop\":{},\"species\":[{}],\"kindOf\":{},\"speciesOf\":{},\"titleLengths\":{},\"lengths\":{},\"blockSizes\":{},\"words\":{}",
            self.records.len(),
            listed(Kind::ALL.iter().map(|kind| kind.word())),
            quoted(&self.stop_words.join(" ")),
            listed(species.iter().copied()),
            each(&|record| digit(record.kind as usize)),
            each(&|record| u32::try_from(of(record)).ok().and_then(|at| char::from_u32(48 + at)).unwrap_or('0')),
            each(&|record| digit(record.title.chars().count().min(70))),
            quoted(&lengths),
            quoted(&sizes.finish()),
            quoted(&front::words(&self.vocabulary)),
        )
    }

    /// The lists of words, `BLOCK` words a block, so that any word is reached by reading one block.
    fn blocks(&self) -> Vec<String> {
        let write = |lists: &[Vec<posting::Posting>]| {
            let mut bits = BitWriter::default();
            for list in lists {
                posting::write(list, self.records.len(), &mut bits);
            }
            bits.finish()
        };
        self.postings.chunks(BLOCK).map(write).collect()
    }

    /// What is shown of records, `PAGE` records a page, a record a line.
    fn pages(&self) -> Vec<String> {
        self.records.chunks(PAGE).map(page).collect()
    }
}

/// Title, address, step and state, context, then other names; title, address and context front-coded.
fn page(records: &[Record]) -> String {
    let mut out = String::new();
    let (mut title, mut url, mut context) = (String::new(), String::new(), String::new());
    for record in records {
        for (before, text) in [(&mut title, &record.title), (&mut url, &record.url)] {
            let text = on_one_line(text);
            front::text(before, &text, &mut out);
            out.push('\t');
            *before = text;
        }
        if let Some(step) = record.step {
            let _ = write!(out, "{step}");
        }
        out.push_str(match record.state {
            State::Draft => "d",
            State::InForce => "",
            State::Withdrawn => "w",
        });
        out.push('\t');
        let text = on_one_line(&record.context);
        front::text(&context, &text, &mut out);
        context = text;
        for other in &record.names {
            let region = other.region.as_deref().unwrap_or("").replace(':', " ");
            let _ = write!(out, "\t{}:{}", on_one_line(&region), on_one_line(&other.name));
        }
        out.push('\n');
    }
    out.pop();
    out
}

/// Puts neighbours together until a group has `most` bytes.
fn groups(texts: &[String], most: usize) -> Vec<&[String]> {
    let mut groups = Vec::new();
    let mut rest = texts;
    while !rest.is_empty() {
        let mut size = 0;
        let before = |text: &&String| {
            let fits = size == 0 || size + text.len() <= most;
            size += text.len();
            fits
        };
        let (group, after) = rest.split_at(rest.iter().take_while(before).count());
        groups.push(group);
        rest = after;
    }
    groups
}

/// Adds a script and gives back the entry that names its file.
fn put(scripts: &mut Vec<Script>, name: &impl Fn(&str, &str) -> String, stem: &str, text: String) -> String {
    let name = name(stem, &text);
    let entry = format!("\"file\":{}", quoted(&name));
    scripts.push(Script { name, text });
    entry
}

/// A number as one character: `0` and up.
fn digit(number: usize) -> char {
    u8::try_from(number).map_or('~', |number| char::from(b'0'.saturating_add(number)))
}

/// 0 below 16 words, and one more for each doubling up to 6.
fn length_class(words: usize) -> usize {
    (words / 8).checked_ilog2().unwrap_or(0).min(6) as usize
}

fn on_one_line(text: &str) -> String {
    text.split(|character: char| character.is_control() || character == ' ').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

/// Strings of a script with commas between them.
fn listed<'a>(texts: impl Iterator<Item = &'a str>) -> String {
    texts.map(quoted).collect::<Vec<_>>().join(",")
}

/// A string of a script.
fn quoted(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push('"');
    for character in text.chars() {
        match character {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\t' => out.push_str("\\t"),
            '\u{0}'..='\u{1f}' | '\u{7f}' | '\u{2028}' | '\u{2029}' | '\u{feff}' => {
                let _ = write!(out, "\\u{:04x}", u32::from(character));
            }
            other => out.push(other),
        }
    }
    out.push('"');
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strings_survive_any_script_reader() {
        assert_eq!(quoted("a\"b\\c\n\t\u{1}\u{2028}é"), "\"a\\\"b\\\\c\\n\\t\\u0001\\u2028é\"");
    }

    #[test]
    fn groups_keep_all_in_order() {
        let texts: Vec<String> = [5, 5, 30, 1, 1].iter().map(|length| "x".repeat(*length)).collect();
        let sizes: Vec<Vec<usize>> = groups(&texts, 10).iter().map(|group| group.iter().map(String::len).collect()).collect();
        assert_eq!(sizes, [vec![5, 5], vec![30], vec![1, 1]]);
        assert_eq!(groups(&texts, usize::MAX).len(), 1);
        assert!(groups(&[], 10).is_empty());
    }

    #[test]
    fn lengths_are_classes() {
        let classes: Vec<usize> = [0, 15, 16, 31, 32, 300, 512, 100_000].map(length_class).to_vec();
        assert_eq!(classes, [0, 0, 1, 1, 2, 5, 6, 6]);
    }
}
