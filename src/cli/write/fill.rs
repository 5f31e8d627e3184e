//! Filling the new tree: pages that changed are written, all else is carried over from the earlier site.
//!
//! Pages are made one by one on all cores and written at once, so that they are never all in memory; what is kept of each
//! is its size and its marks, and the pages that list those are made last. The earlier site is only read.

use std::collections::BTreeSet;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use rayon::prelude::*;

use super::disk::{Disk, Kind};
use super::list::{LIST_FILE, List};
use super::survey::{Survey, folders_above};
use super::target::Target;
use super::{Pages, Progress};
use crate::cli::failure::Failure;
use crate::site::Made;

/// What was found and written when all pages had been made.
#[derive(Debug, Default)]
pub(super) struct Filled {
    /// The list of the new site.
    pub(super) list: List,
    /// Pages that did not stand in the earlier site, sorted.
    pub(super) new: Vec<String>,
    /// Pages that stood there with other bytes, sorted.
    pub(super) changed: Vec<String>,
    /// Pages whose bytes are as they were, sorted.
    pub(super) unchanged: Vec<String>,
    /// Pages that somebody had edited in the earlier site, sorted.
    pub(super) edited: Vec<String>,
}

/// Fills a new tree.
pub(super) struct Filler<'a> {
    disk: &'a dyn Disk,
    target: &'a Target,
    survey: &'a Survey,
    tree: &'a Path,
    /// Folders of the new tree that stand already, relative to it.
    made: Mutex<BTreeSet<PathBuf>>,
}

impl Filled {
    /// Adds a page, and what it came to behind `all`.
    fn add(&mut self, page: Page, all: &mut Vec<Made>) {
        let path = &page.made.path;
        self.list.add(path, page.hash);
        match page.fate {
            Fate::New => self.new.push(path.clone()),
            Fate::Unchanged => self.unchanged.push(path.clone()),
            Fate::Changed { by_hand } => {
                self.changed.push(path.clone());
                if by_hand {
                    self.edited.push(path.clone());
                }
            }
        }
        all.push(page.made);
    }

    fn sort(&mut self) {
        for paths in [&mut self.new, &mut self.changed, &mut self.unchanged, &mut self.edited] {
            paths.sort();
        }
    }
}

/// A page that was made.
struct Page {
    made: Made,
    hash: blake3::Hash,
    fate: Fate,
}

/// How one page fared.
enum Fate {
    New,
    Changed { by_hand: bool },
    Unchanged,
}

impl<'a> Filler<'a> {
    /// A filler of `tree`, which is empty.
    pub(super) fn new(disk: &'a dyn Disk, target: &'a Target, survey: &'a Survey, tree: &'a Path) -> Self {
        Self { disk, target, survey, tree, made: Mutex::new(BTreeSet::new()) }
    }

    /// Makes every page, and writes those that are not in the earlier site as they are.
    ///
    /// # Errors
    /// The first failure by the order of the pages, whichever core came to one first.
    pub(super) fn make_pages(&self, pages: &dyn Pages, paths: &[String], progress: &Progress) -> Result<Filled, Failure> {
        let closing = pages.closing();
        let last: BTreeSet<&str> = closing.iter().map(String::as_str).collect();
        let first: Vec<&String> = paths.iter().filter(|path| !last.contains(path.as_str())).collect();
        let first_broken = AtomicUsize::new(usize::MAX);
        let make = |(at, path): (usize, &&String)| {
            // Pages before a broken one are still made, so that the failure told is the same in every run.
            if first_broken.load(Ordering::Relaxed) < at {
                return None;
            }
            let made = self.make_page(path, pages.render(path));
            if made.is_err() {
                first_broken.fetch_min(at, Ordering::Relaxed);
            }
            progress();
            Some(made)
        };
        let pages_made: Vec<_> = first.par_iter().enumerate().map(make).collect();
        let mut filled = Filled::default();
        let mut all = Vec::with_capacity(paths.len());
        for page in pages_made {
            // Pages are left out only behind a failure, which is met here first.
            let Some(page) = page else { continue };
            filled.add(page?, &mut all);
        }
        for path in &closing {
            filled.add(self.make_page(path, pages.close(path, &all))?, &mut all);
            progress();
        }
        filled.sort();
        Ok(filled)
    }

    fn make_page(&self, path: &str, bytes: Result<Vec<u8>, String>) -> Result<Page, Failure> {
        let shown = self.target.shown.join(path);
        let bytes = bytes.map_err(|why| Failure::new(format!("cannot make the page: {why}")).at(&shown))?;
        let hash = blake3::hash(&bytes);
        let fate = self.compare(path, &bytes).map_err(|error| Failure::of_disk("read the page of the earlier site", &shown, &error))?;
        if !matches!(fate, Fate::Unchanged) {
            self.write(path, &bytes).map_err(|error| Failure::of_disk("write the page", &shown, &error))?;
        }
        Ok(Page { made: Made::of(path, &bytes), hash, fate })
    }

    fn compare(&self, path: &str, bytes: &[u8]) -> io::Result<Fate> {
        let Some(facts) = self.survey.ours.get(path) else { return Ok(Fate::New) };
        if facts.kind != Kind::File {
            return Ok(Fate::Changed { by_hand: true });
        }
        let earlier = self.disk.read(&self.target.real.join(path))?;
        if earlier == bytes {
            return Ok(Fate::Unchanged);
        }
        Ok(Fate::Changed { by_hand: self.survey.list.hash(path) != Some(&blake3::hash(&earlier)) })
    }

    fn write(&self, path: &str, bytes: &[u8]) -> io::Result<()> {
        self.make_folders(Path::new(path))?;
        self.disk.write_new(&self.tree.join(path), bytes)
    }

    /// Makes the folders that `path` lies in.
    fn make_folders(&self, path: &Path) -> io::Result<()> {
        let mut made = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        let mut missing: Vec<_> =
            path.ancestors().skip(1).take_while(|folder| !folder.as_os_str().is_empty() && !made.contains(*folder)).collect();
        missing.reverse();
        for folder in missing {
            self.disk.make_folder(&self.tree.join(folder))?;
            made.insert(folder.to_path_buf());
        }
        Ok(())
    }

    /// Carries over what is unchanged and what is not ours, writes the list, and waits until all of it would outlast a
    /// power cut.
    pub(super) fn complete(&self, filled: &Filled) -> Result<(), Failure> {
        let unchanged = filled.unchanged.par_iter().map(Path::new);
        unchanged
            .chain(self.survey.foreign.par_iter().map(PathBuf::as_path))
            .try_for_each(|path| self.carry(path).map_err(|error| self.trouble("carry a file over from the earlier site", path, &error)))?;
        for folder in &self.survey.foreign_folders {
            self.make_folders(&folder.join("inside"))
                .map_err(|error| self.trouble("carry a folder over from the earlier site", folder, &error))?;
        }
        let list = Path::new(LIST_FILE);
        self.disk
            .write_new(&self.tree.join(list), &filled.list.to_bytes())
            .map_err(|error| self.trouble("write the list of published files", list, &error))?;
        self.dress_folders()?;
        let written = filled.new.iter().chain(&filled.changed).map(String::as_str).chain([LIST_FILE]);
        let files: Vec<_> = written.map(|path| self.tree.join(path)).collect();
        let made = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        let folders: Vec<_> = made.iter().rev().map(|folder| self.tree.join(folder)).chain([self.tree.to_path_buf()]).collect();
        self.disk.settle(self.tree, &files, &folders).map_err(|error| self.trouble("finish writing", Path::new(""), &error))
    }

    fn carry(&self, path: &Path) -> io::Result<()> {
        self.make_folders(path)?;
        self.disk.carry(&self.target.real.join(path), &self.tree.join(path))
    }

    /// Gives the folders the permissions that they had, innermost first, since a folder may be closed to writing.
    fn dress_folders(&self) -> Result<(), Failure> {
        let made = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        let foreign: BTreeSet<&PathBuf> = self.survey.foreign_folders.iter().collect();
        for folder in self.survey.folders.iter().rev().filter(|folder| made.contains(*folder)) {
            self.disk
                .dress_folder(&self.target.real.join(folder), &self.tree.join(folder), foreign.contains(folder))
                .map_err(|error| self.trouble("give a folder its permissions", folder, &error))?;
        }
        let root = self.disk.facts(&self.target.real).map_err(|error| self.trouble("read the earlier site", Path::new(""), &error))?;
        if root.is_some() {
            self.disk
                .dress_folder(&self.target.real, self.tree, false)
                .map_err(|error| self.trouble("give the folder its permissions", Path::new(""), &error))?;
        }
        Ok(())
    }

    fn trouble(&self, doing: &str, path: &Path, error: &io::Error) -> Failure {
        let shown = if path.as_os_str().is_empty() { self.target.shown.clone() } else { self.target.shown.join(path) };
        Failure::of_disk(doing, &shown, error)
    }
}

/// The pages' paths, sorted, checked to be paths that can stand side by side in one folder.
pub(super) fn sound_paths(pages: &dyn Pages) -> Result<Vec<String>, Failure> {
    let mut paths = pages.paths();
    paths.sort();
    let all: BTreeSet<&str> = paths.iter().map(String::as_str).collect();
    let beside = |path: &String| !folders_above(path).any(|folder| folder.to_str().is_some_and(|folder| all.contains(folder)));
    let clash = paths.iter().find(|path| !super::list::is_page_path(path) || !beside(path));
    let twice = paths.iter().zip(paths.iter().skip(1)).find(|(one, next)| one == next).map(|(one, _)| one);
    match clash.or(twice) {
        Some(path) => Err(Failure::new("two pages want the same place, or a page has none").at(Path::new(path))),
        None => Ok(paths),
    }
}
