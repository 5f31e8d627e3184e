//! What already stands in the folder of the site: what is ours by the list, and what is somebody else's.
//!
//! It reads names and the list, changes nothing, and refuses what publishing could not carry along.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use super::disk::{Disk, Facts, Kind};
use super::list::{LIST_FILE, List, NoList};
use super::target::Target;
use crate::cli::failure::Failure;

/// What stands in the folder of the site before publishing. Paths are relative to it.
#[derive(Debug, Default)]
pub(super) struct Survey {
    /// The list that was found, empty when there is none.
    pub(super) list: List,
    /// The list's own bytes.
    pub(super) list_bytes: Option<Vec<u8>>,
    /// Pages of the list that stand there, by path.
    pub(super) ours: BTreeMap<String, Facts>,
    /// Everything else that is no folder, sorted.
    pub(super) foreign: Vec<PathBuf>,
    /// Folders that hold nothing of the list: carried along even when empty. Sorted, so parents come first.
    pub(super) foreign_folders: Vec<PathBuf>,
    /// All folders. Sorted.
    pub(super) folders: Vec<PathBuf>,
}

impl Survey {
    /// Looks at the target, which may be missing.
    ///
    /// # Errors
    /// When the folder cannot be read, its list is damaged, or another disk is mounted there.
    pub(super) fn of(disk: &dyn Disk, target: &Target) -> Result<Self, Failure> {
        let mut survey = Self::default();
        let unreadable = |error| Failure::of_disk("read the folder of the site", &target.shown, &error);
        let Some(root) = disk.facts(&target.real).map_err(unreadable)? else { return Ok(survey) };
        let parent = disk.facts(&target.parent).map_err(unreadable)?;
        if !same_disk(Some(root), parent) {
            return Err(mounted(&target.shown));
        }
        survey.read_list(disk, target)?;
        let our_folders: BTreeSet<PathBuf> = survey.list.paths().flat_map(folders_above).map(Path::to_path_buf).collect();
        let mut open = vec![PathBuf::new()];
        while let Some(folder) = open.pop() {
            for name in disk.list(&target.real.join(&folder)).map_err(|error| unreadable_inside(target, &folder, &error))? {
                let path = folder.join(name);
                let facts = disk.facts(&target.real.join(&path)).map_err(|error| unreadable_inside(target, &path, &error))?;
                let Some(facts) = facts else { continue };
                if facts.kind == Kind::Folder {
                    if !same_disk(Some(facts), Some(root)) {
                        return Err(mounted(&target.shown.join(&path)));
                    }
                    open.push(path.clone());
                }
                survey.sort_in(path, facts, &our_folders);
            }
        }
        survey.foreign.sort();
        survey.foreign_folders.sort();
        survey.folders.sort();
        Ok(survey)
    }

    fn sort_in(&mut self, path: PathBuf, facts: Facts, our_folders: &BTreeSet<PathBuf>) {
        if facts.kind == Kind::Folder {
            if !our_folders.contains(&path) {
                self.foreign_folders.push(path.clone());
            }
            self.folders.push(path);
            return;
        }
        match path.to_str() {
            Some(LIST_FILE) if self.list_bytes.is_some() => {}
            Some(text) if self.list.hash(text).is_some() => {
                self.ours.insert(text.to_owned(), facts);
            }
            _ => self.foreign.push(path),
        }
    }

    fn read_list(&mut self, disk: &dyn Disk, target: &Target) -> Result<(), Failure> {
        let path = target.real.join(LIST_FILE);
        let shown = target.shown.join(LIST_FILE);
        let unreadable = |error| Failure::of_disk("read the list of published files", &shown, &error);
        let is_file = disk.facts(&path).map_err(unreadable)?.is_some_and(|facts| facts.kind == Kind::File);
        if !is_file {
            return Ok(());
        }
        let bytes = disk.read(&path).map_err(unreadable)?;
        match List::parse(&bytes) {
            Ok(list) => {
                self.list = list;
                self.list_bytes = Some(bytes);
                Ok(())
            }
            // Somebody else's file under our name: it will be found to stand in the way.
            Err(NoList::Foreign) => Ok(()),
            Err(NoList::Damaged { line }) => {
                Err(Failure::new(format!("the list of published files is damaged at line {line}, so nothing here is replaced"))
                    .at(&shown)
                    .help("put the list back as it was, or publish into a new folder with --to"))
            }
        }
    }

    /// What stands in the way of these pages: files and folders of others, sorted, each once.
    pub(super) fn in_the_way<'a>(&self, pages: impl Iterator<Item = &'a str>) -> Vec<PathBuf> {
        let files: BTreeSet<&Path> = self.foreign.iter().map(PathBuf::as_path).collect();
        let above_files = files.iter().flat_map(|file| file.ancestors().skip(1));
        let folders: BTreeSet<&Path> = above_files.chain(self.foreign_folders.iter().map(PathBuf::as_path)).collect();
        let mut found = BTreeSet::new();
        for page in pages {
            let page_path = Path::new(page);
            let hit = folders_above(page).chain([page_path]).find(|path| files.contains(path));
            let hit = hit.or_else(|| folders.contains(page_path).then_some(page_path));
            found.extend(hit.map(Path::to_path_buf));
        }
        found.into_iter().collect()
    }
}

/// The folders that a page lies in, innermost first, without the root.
pub(super) fn folders_above(page: &str) -> impl Iterator<Item = &Path> {
    Path::new(page).ancestors().skip(1).filter(|folder| !folder.as_os_str().is_empty())
}

/// True also where the system tells no devices apart.
fn same_disk(one: Option<Facts>, other: Option<Facts>) -> bool {
    let device = |facts: Option<Facts>| facts.and_then(|facts| facts.id).map(|id| id.0);
    match (device(one), device(other)) {
        (Some(one), Some(other)) => one == other,
        _ => true,
    }
}

fn mounted(path: &Path) -> Failure {
    Failure::new("another disk is mounted at this folder, so a new site cannot take its place in one act")
        .at(path)
        .help("publish into a new folder inside it, or elsewhere, with --to")
}

fn unreadable_inside(target: &Target, path: &Path, error: &std::io::Error) -> Failure {
    Failure::of_disk("look at what the folder of the site holds", &target.shown.join(path), error)
}
