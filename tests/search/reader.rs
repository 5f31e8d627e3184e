//! Reads the scripts of an index back, as the theme's `search.js` does, but all at once and plainly.

use seamwise::site::search::Sizes;
use serde_json::Value;

/// Sizes that part even a small index into several files.
pub(crate) const TINY: Sizes = Sizes { whole: 0, part: 2_000 };

/// An index as it was read back.
pub(crate) struct ReadIndex {
    pub(crate) records: usize,
    pub(crate) stop: Vec<String>,
    pub(crate) words: Vec<String>,
    /// The same as scripts count them.
    pub(crate) units: Vec<Vec<u16>>,
    /// Beside the words: record and class of each place.
    pub(crate) lists: Vec<Vec<(usize, u8)>>,
    pub(crate) kinds: Vec<usize>,
    pub(crate) species: Vec<Option<String>>,
    pub(crate) title_lengths: Vec<usize>,
    pub(crate) lengths: Vec<usize>,
    pub(crate) shown: Vec<Shown>,
}

/// What is shown of a record.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Shown {
    pub(crate) title: String,
    pub(crate) url: String,
    pub(crate) step: String,
    pub(crate) context: String,
    /// Region, or nothing, and name.
    pub(crate) names: Vec<(String, String)>,
}

/// Reads the scripts, the first of which names the others.
pub(crate) fn read(scripts: &[seamwise::site::search::Script]) -> ReadIndex {
    let main = scripts[0].text.strip_prefix("seamwiseIndex=").unwrap().strip_suffix(';').unwrap();
    let main: Value = serde_json::from_str(main).expect("the index is also JSON");
    assert_eq!(main["form"], 1);
    let records = main["records"].as_u64().unwrap() as usize;
    let words = unfold_words(main["words"].as_str().unwrap());
    let texts = |name: &str| -> Vec<String> {
        let entries = main[name].as_array().unwrap();
        (0..entries.len())
            .map(|at| match entries[at].get("text") {
                Some(text) => text.as_str().unwrap().to_owned(),
                None => part(scripts, entries[at]["file"].as_str().unwrap(), &format!("seamwiseIndex.{name}[{at}].text=")),
            })
            .collect()
    };
    let digits = |name: &str| -> Vec<usize> { main[name].as_str().unwrap().chars().map(|c| c as usize - 48).collect() };
    let species: Vec<&str> = main["species"].as_array().unwrap().iter().map(|one| one.as_str().unwrap()).collect();
    let block = main["block"].as_u64().unwrap() as usize;
    ReadIndex {
        records,
        stop: main["stop"].as_str().unwrap().split(' ').filter(|word| !word.is_empty()).map(str::to_owned).collect(),
        lists: lists(&texts("lists").concat(), main["blockSizes"].as_str().unwrap(), words.len(), block, records),
        units: words.iter().map(|word| word.encode_utf16().collect()).collect(),
        words,
        kinds: digits("kindOf"),
        species: digits("speciesOf").into_iter().map(|at| at.checked_sub(1).map(|at| species[at].to_owned())).collect(),
        title_lengths: digits("titleLengths"),
        lengths: digits("lengths"),
        shown: texts("pages").iter().flat_map(|page| unfold_page(page)).collect(),
    }
}

/// The string that a part assigns.
fn part(scripts: &[seamwise::site::search::Script], file: &str, assigns: &str) -> String {
    let script = scripts.iter().find(|script| script.name == file).unwrap_or_else(|| panic!("{file} is named and not there"));
    let from = script.text.find(assigns).unwrap_or_else(|| panic!("{file} lacks {assigns}")) + assigns.len();
    serde_json::Deserializer::from_str(&script.text[from..]).into_iter::<String>().next().unwrap().unwrap()
}

fn unfold(before: &str, shared: usize, rest: &str) -> String {
    let kept: Vec<u16> = before.encode_utf16().take(shared).collect();
    format!("{}{rest}", String::from_utf16(&kept).expect("a pair of units is never parted"))
}

fn unfold_words(text: &str) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    let starts: Vec<usize> = text.match_indices(|c: char| c.is_ascii_uppercase()).map(|(at, _)| at).collect();
    for (index, at) in starts.iter().enumerate() {
        let rest = &text[at + 1..starts.get(index + 1).copied().unwrap_or(text.len())];
        let shared = usize::from(text.as_bytes()[*at] - b'A');
        words.push(unfold(words.last().map_or("", String::as_str), shared, rest));
    }
    words
}

fn unfold_page(page: &str) -> Vec<Shown> {
    let mut all: Vec<Shown> = Vec::new();
    for line in page.split('\n') {
        let before = all.last().cloned().unwrap_or_default();
        let fields: Vec<&str> = line.split('\t').collect();
        let field = |at: usize, before: &str| unfold(before, usize::from(fields[at].as_bytes()[0] - b'0'), &fields[at][1..]);
        all.push(Shown {
            title: field(0, &before.title),
            url: field(1, &before.url),
            step: fields[2].to_owned(),
            context: field(3, &before.context),
            names: fields[4..].iter().map(|name| name.split_once(':').map(|(a, b)| (a.to_owned(), b.to_owned())).unwrap()).collect(),
        });
    }
    all
}

struct Bits<'a> {
    text: &'a [u8],
    at: usize,
}

impl Bits<'_> {
    fn bit(&mut self) -> usize {
        const ALPHABET: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        let six = ALPHABET.find(char::from(self.text[self.at / 6])).unwrap();
        let bit = six >> (5 - self.at % 6) & 1;
        self.at += 1;
        bit
    }

    fn bits(&mut self, width: u32) -> usize {
        (0..width).fold(0, |value, _| value << 1 | self.bit())
    }

    fn gamma(&mut self) -> usize {
        let mut width = 0;
        while self.bit() == 0 {
            width += 1;
        }
        1 << width | self.bits(width)
    }

    fn unary(&mut self) -> usize {
        let mut ones = 0;
        while self.bit() == 1 {
            ones += 1;
        }
        ones
    }
}

fn lists(text: &str, sizes: &str, words: usize, block: usize, records: usize) -> Vec<Vec<(usize, u8)>> {
    let mut sizes = Bits { text: sizes.as_bytes(), at: 0 };
    let mut lists = Vec::new();
    let mut start = 0;
    while lists.len() < words {
        let mut bits = Bits { text: text.as_bytes(), at: start * 6 };
        for _ in lists.len()..words.min(lists.len() + block) {
            lists.push(list(&mut bits, records));
        }
        start += sizes.bits(24);
        assert_eq!(bits.at.div_ceil(6), start, "a block is as long as is said");
    }
    assert_eq!(start, text.len());
    lists
}

fn list(bits: &mut Bits<'_>, records: usize) -> Vec<(usize, u8)> {
    let count = bits.gamma();
    let width = (records * 11 / (count * 16)).checked_ilog2().unwrap_or(0);
    let mut next = 0;
    (0..count)
        .map(|_| {
            let gap = bits.unary() << width | bits.bits(width);
            let record = next + gap;
            next = record + 1;
            let class = if bits.bit() == 0 {
                0
            } else if bits.bit() == 0 {
                1
            } else if bits.bit() == 0 {
                2
            } else {
                3 + bits.bits(3) as u8
            };
            (record, class)
        })
        .collect()
}
