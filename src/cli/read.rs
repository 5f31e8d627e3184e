//! The guidebook on disk as a map from path to content: the walk over its folders.
//!
//! It judges no text. What cannot be read becomes an entry that says so, so that one bad file never hides the rest.
//! Hidden files and folders that hold a site of ours are left out. Links are followed inside the guidebook only.

use std::collections::BTreeSet;
use std::fs::File;
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use walkdir::{DirEntry, WalkDir};

use super::failure::{Failure, in_plain_words};
use super::write::holds_site;
use crate::source::{Entry, Files};

/// Larger files are not read: no picture for a phone needs to be larger.
const MOST_BYTES: u64 = 64 * 1024 * 1024;

/// Larger texts are not read: a procedure has some ten thousand characters.
const MOST_TEXT_BYTES: u64 = 2 * 1024 * 1024;

/// Reads every file of the guidebook in `folder`.
///
/// # Errors
/// When the folder itself cannot be read.
pub(super) fn read(folder: &Path) -> Result<Files, Failure> {
    let unreadable = |error| Failure::of_disk("read the guidebook's folder", folder, &error);
    let root = folder.canonicalize().map_err(unreadable)?;
    std::fs::read_dir(&root).map_err(unreadable)?;
    let mut walk = Walk { root: root.clone(), linked: BTreeSet::new(), files: Files::new() };
    let mut entries = WalkDir::new(&root).min_depth(1).follow_links(true).sort_by_file_name().into_iter();
    while let Some(entry) = entries.next() {
        match entry {
            Ok(entry) if is_hidden(&entry) => skip(&entry, &mut entries),
            Ok(entry) if entry.file_type().is_dir() => {
                if !walk.enters(&entry) {
                    entries.skip_current_dir();
                }
            }
            Ok(entry) => walk.file(&entry),
            Err(error) => walk.trouble(&error),
        }
    }
    Ok(walk.files)
}

fn is_hidden(entry: &DirEntry) -> bool {
    entry.file_name().as_encoded_bytes().first() == Some(&b'.')
}

fn skip(entry: &DirEntry, entries: &mut walkdir::IntoIter) {
    if entry.file_type().is_dir() {
        entries.skip_current_dir();
    }
}

struct Walk {
    root: PathBuf,
    /// Folders that were entered through a link. Each is entered so only once, or a few links that point at each
    /// other's folders would make the walk as long as all the ways through them.
    linked: BTreeSet<PathBuf>,
    files: Files,
}

impl Walk {
    /// Whether to read what lies in this folder.
    fn enters(&mut self, folder: &DirEntry) -> bool {
        if holds_site(folder.path()) {
            return false;
        }
        if !folder.path_is_symlink() {
            return true;
        }
        match self.inside(folder.path()) {
            Ok(real) if self.linked.insert(real.clone()) => true,
            Ok(_) => {
                self.unreadable(folder.path(), "another link leads to the same folder");
                false
            }
            Err(entry) => {
                self.add(folder.path(), entry);
                false
            }
        }
    }

    fn file(&mut self, file: &DirEntry) {
        let entry = if file.path_is_symlink() {
            match self.inside(file.path()) {
                Ok(_) => read_file(file.path()),
                Err(entry) => entry,
            }
        } else {
            read_file(file.path())
        };
        self.add(file.path(), entry);
    }

    /// Where a link leads, when that is inside the guidebook.
    fn inside(&self, link: &Path) -> Result<PathBuf, Entry> {
        let real = link.canonicalize().map_err(|error| Entry::Unreadable { reason: in_plain_words(&error).0 })?;
        if real.starts_with(&self.root) { Ok(real) } else { Err(Entry::LinkOutside { target: written_target(link) }) }
    }

    /// What the walk could not do: a folder that is closed, a link that leads nowhere or back to itself.
    fn trouble(&mut self, error: &walkdir::Error) {
        let Some(path) = error.path() else { return };
        if path.file_name().is_some_and(|name| name.as_encoded_bytes().first() == Some(&b'.')) {
            return;
        }
        let reason = if error.loop_ancestor().is_some() {
            "this link leads back to a folder that holds it".to_owned()
        } else if path.is_symlink() {
            format!("this link leads nowhere: {}", written_target(path))
        } else {
            error.io_error().map_or_else(|| "it cannot be read".to_owned(), |error| in_plain_words(error).0)
        };
        self.unreadable(path, &reason);
    }

    fn unreadable(&mut self, path: &Path, reason: &str) {
        self.add(path, Entry::Unreadable { reason: reason.to_owned() });
    }

    /// Keeps an entry under its path; one whose name is not UTF-8 can be told of but not meant.
    fn add(&mut self, path: &Path, entry: Entry) {
        let relative = path.strip_prefix(&self.root).unwrap_or(path);
        let parts: Vec<_> = relative.components().map(|part| part.as_os_str().to_string_lossy()).collect();
        let entry = if relative.to_str().is_some() {
            entry
        } else {
            Entry::Unreadable { reason: "its name is not UTF-8; give it a name of plain letters".to_owned() }
        };
        self.files.insert(parts.join("/"), entry);
    }
}

/// The text of a link as it was made.
fn written_target(link: &Path) -> String {
    std::fs::read_link(link).map_or_else(|_| "an unknown place".to_owned(), |target| target.display().to_string())
}

fn read_file(path: &Path) -> Entry {
    match try_read(path) {
        Ok(entry) => entry,
        Err(error) => Entry::Unreadable { reason: in_plain_words(&error).0 },
    }
}

fn try_read(path: &Path) -> io::Result<Entry> {
    // Asked before opening: opening a pipe would wait for somebody to write into it.
    if !std::fs::metadata(path)?.is_file() {
        return Ok(Entry::Unreadable { reason: "it is neither a file nor a folder".to_owned() });
    }
    let is_text = path.extension().is_some_and(|ending| ending == "yaml" || ending == "yml");
    let most = if is_text { MOST_TEXT_BYTES } else { MOST_BYTES };
    let file = File::open(path)?;
    let stated = file.metadata()?.len();
    if stated > most {
        return Ok(Entry::TooLarge { bytes: stated });
    }
    let mut bytes = Vec::with_capacity(usize::try_from(stated).unwrap_or(0));
    // A file can grow while it is read, and some of the system's own have no stated size.
    file.take(most + 1).read_to_end(&mut bytes)?;
    let found = bytes.len() as u64;
    Ok(if found > most { Entry::TooLarge { bytes: found } } else { Entry::File(bytes) })
}

#[cfg(test)]
#[path = "read_tests.rs"]
mod tests;
