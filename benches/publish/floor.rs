//! What no publishing can do without: reading and parsing every file once, and writing every byte of the site once.
//!
//! On all cores, with the parser that the program itself uses, and nothing else of it.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use rayon::prelude::*;
use seamwise::finding::FileId;
use seamwise::source::yaml;

use crate::walk;

/// Bytes by path.
pub(crate) type Bytes = BTreeMap<String, Vec<u8>>;

/// Reads all files of a folder.
pub(crate) fn read(folder: &Path) -> Bytes {
    let relative = |path: &Path| path.strip_prefix(folder).unwrap().to_str().unwrap().to_owned();
    walk(folder).into_iter().map(|path| (relative(&path), fs::read(&path).unwrap())).collect()
}

/// Writes files into a new folder.
pub(crate) fn write(folder: &Path, files: &Bytes) {
    let mut folders: Vec<_> = files.keys().map(|path| folder.join(path).parent().unwrap().to_path_buf()).collect();
    folders.dedup();
    folders.iter().for_each(|folder| fs::create_dir_all(folder).unwrap());
    files.par_iter().for_each(|(path, bytes)| fs::write(folder.join(path), bytes).unwrap());
}

/// The time of reading and parsing `book` and of writing `pages` into `to`.
pub(crate) fn floor(book: &Path, pages: &Bytes, to: &Path) -> Duration {
    let begun = Instant::now();
    let parsed: usize = walk(book)
        .par_iter()
        .map(|path| {
            let bytes = fs::read(path).unwrap();
            if path.extension().is_none_or(|ending| ending != "yaml") {
                return 0;
            }
            let (node, findings) = yaml::parse(std::str::from_utf8(&bytes).unwrap(), FileId(0));
            assert!(node.is_some() && findings.is_empty());
            1
        })
        .sum();
    assert!(parsed > 0);
    write(to, pages);
    begun.elapsed()
}
