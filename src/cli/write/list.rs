//! The list of files that publishing wrote into a folder: what may be replaced or removed there, and nothing else.
//!
//! A line a file: the BLAKE3 hash of its bytes, two spaces, its path; sorted by path. The first line says whose it is.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs::File;
use std::io::Read;
use std::path::Path;

use blake3::Hash;

/// The list's name in the folder of the site.
pub(in crate::cli) const LIST_FILE: &str = "seamwise-files.txt";

const HEADING: &str = "# Files that seamwise published here, each with the BLAKE3 hash of its bytes; it replaces and removes no others.";

/// Files by path, with the hash of what was written.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct List {
    hashes: BTreeMap<String, Hash>,
}

/// Why a text is no list of ours.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum NoList {
    /// It does not begin as ours do: somebody else's file.
    Foreign,
    /// It begins so, but this line, counted from 1, says nothing.
    Damaged {
        /// The line.
        line: usize,
    },
}

impl List {
    /// Adds a file.
    pub(super) fn add(&mut self, path: &str, hash: Hash) {
        self.hashes.insert(path.to_owned(), hash);
    }

    /// The hash of what was written under this path.
    pub(super) fn hash(&self, path: &str) -> Option<&Hash> {
        self.hashes.get(path)
    }

    /// All paths, sorted.
    pub(super) fn paths(&self) -> impl Iterator<Item = &str> {
        self.hashes.keys().map(String::as_str)
    }

    /// The list as it is written.
    pub(super) fn to_bytes(&self) -> Vec<u8> {
        let mut text = format!("{HEADING}\n");
        for (path, hash) in &self.hashes {
            // Writing to a text cannot fail.
            let _ = writeln!(text, "{hash}  {path}", hash = hash.to_hex());
        }
        text.into_bytes()
    }

    /// Reads a list.
    ///
    /// # Errors
    /// When it is not ours, or is damaged. A path that would lead out of the folder is damage.
    pub(super) fn parse(bytes: &[u8]) -> Result<Self, NoList> {
        let (first, rest) = match bytes.iter().position(|byte| *byte == b'\n') {
            Some(end) => (bytes.get(..end).unwrap_or_default(), bytes.get(end + 1..).unwrap_or_default()),
            None => (bytes, &[][..]),
        };
        if first != HEADING.as_bytes() {
            return Err(NoList::Foreign);
        }
        let mut list = Self::default();
        for (at, line) in rest.split_inclusive(|byte| *byte == b'\n').enumerate() {
            // A last line without its end is a line cut short.
            let whole = line.strip_suffix(b"\n").and_then(parse_line);
            let (path, hash) = whole.ok_or(NoList::Damaged { line: at + 2 })?;
            list.add(path, hash);
        }
        Ok(list)
    }
}

/// Whether a folder holds a site of ours: its list is there and begins as ours do.
pub(in crate::cli) fn holds_site(folder: &Path) -> bool {
    let mut start = Vec::new();
    let read = File::open(folder.join(LIST_FILE)).and_then(|file| file.take(HEADING.len() as u64).read_to_end(&mut start));
    read.is_ok() && start == HEADING.as_bytes()
}

fn parse_line(line: &[u8]) -> Option<(&str, Hash)> {
    let (hash, path) = std::str::from_utf8(line).ok()?.split_once("  ")?;
    is_page_path(path).then_some((path, Hash::from_hex(hash).ok()?))
}

/// Whether a path can be a page: relative, with forward slashes, staying inside, on one line, and not the list itself.
pub(super) fn is_page_path(path: &str) -> bool {
    path != LIST_FILE
        && path.split('/').all(|part| !part.is_empty() && part != "." && part != "..")
        && !path.contains(|letter: char| letter == '\\' || letter.is_control())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example() -> List {
        let mut list = List::default();
        list.add("pork/loin/index.html", blake3::hash(b"loin"));
        list.add("index.html", blake3::hash(b"home"));
        list
    }

    #[test]
    fn is_sorted_and_reads_back() {
        let list = example();
        let text = String::from_utf8(list.to_bytes()).unwrap();
        let paths: Vec<_> = text.lines().skip(1).map(|line| line.split_once("  ").unwrap().1).collect();
        assert_eq!(paths, ["index.html", "pork/loin/index.html"]);
        assert_eq!(List::parse(text.as_bytes()), Ok(list));
        assert_eq!(List::parse(List::default().to_bytes().as_slice()), Ok(List::default()));
    }

    #[test]
    fn other_files_and_damaged_lists_are_told_apart() {
        assert_eq!(List::parse(b""), Err(NoList::Foreign));
        assert_eq!(List::parse(b"my own list\n"), Err(NoList::Foreign));
        let whole = example().to_bytes();
        for missing in 1..80 {
            assert_eq!(List::parse(&whole[..whole.len() - missing]), Err(NoList::Damaged { line: 3 }), "{missing} bytes cut off");
        }
        let with = |line: &str| List::parse(format!("{HEADING}\n{line}\n").as_bytes());
        let hash = blake3::hash(b"x").to_hex();
        for path in ["../up", "/root", "a/../../b", "a//b", "./a", "", "a\\b", "a\tb", LIST_FILE] {
            assert_eq!(with(&format!("{hash}  {path}")), Err(NoList::Damaged { line: 2 }), "{path}");
        }
        assert_eq!(with("abc  index.html"), Err(NoList::Damaged { line: 2 }));
    }
}
