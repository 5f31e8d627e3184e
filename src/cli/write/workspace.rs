//! The folder beside the target in which a new site is built, and what a run that was cut off left in it.
//!
//! Its name is fixed, `.<target>.staging-seamwise`, and it holds nothing but the lock, the new tree, the number by
//! which the new tree is known, after the exchange the old tree, and perhaps files of others for which the new tree has
//! no room. Whatever else stands under that name is not ours, and is neither used nor removed.

use std::ffi::OsString;
use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};

use super::disk::{Disk, Facts, Kind};
use super::retire::retire;
use super::target::Target;
use crate::cli::failure::Failure;

const LOCK_FILE: &str = "lock";
const LOCK_TEXT: &[u8] = b"seamwise builds a site here while it publishes; the folder goes away by itself\n";
const NEW_TREE: &str = "new";
const OLD_TREE: &str = "old";
const KEPT_TREE: &str = "kept";
const NUMBER_FILE: &str = "number";

/// How often to begin anew when another run takes the folder away at the same moment.
const TRIES: usize = 8;

/// The folder in which a new site is built, locked for this run.
pub(super) struct Workspace<'a> {
    disk: &'a dyn Disk,
    folder: PathBuf,
    shown: PathBuf,
    /// Folders above the target that were made for it, outermost first.
    made_above: Vec<PathBuf>,
    /// Files of others that the old tree still holds and that could not be put back.
    pub(super) stranded: Vec<PathBuf>,
    _lock: File,
}

impl<'a> Workspace<'a> {
    /// Makes and locks the folder, and clears away what a run that was cut off left there.
    ///
    /// # Errors
    /// When it cannot be made, another run holds it, or something else stands under its name.
    pub(super) fn open(disk: &'a dyn Disk, target: &Target) -> Result<Self, Failure> {
        let mut name = OsString::from(".");
        name.push(&target.name);
        name.push(".staging-seamwise");
        let folder = target.parent.join(&name);
        let shown = target.shown.parent().unwrap_or(Path::new("")).join(&name);
        let made_above = make_folders_above(disk, target)?;
        let lock = match lock_folder(disk, &folder, &shown) {
            Ok(lock) => lock,
            Err(failure) => {
                remove_made(disk, &made_above);
                return Err(failure);
            }
        };
        let mut workspace = Self { disk, folder, shown, made_above, stranded: Vec::new(), _lock: lock };
        workspace.recover(target).map_err(|error| workspace.trouble("clear away an earlier run that was cut off", &error))?;
        Ok(workspace)
    }

    /// Where the new tree is built.
    pub(super) fn new_tree(&self) -> PathBuf {
        self.folder.join(NEW_TREE)
    }

    /// Where the old tree is put when two folders cannot be exchanged in one act.
    pub(super) fn old_tree(&self) -> PathBuf {
        self.folder.join(OLD_TREE)
    }

    /// The folder itself.
    pub(super) fn folder(&self) -> &Path {
        &self.folder
    }

    /// What could not be done here, as a failure.
    pub(super) fn trouble(&self, doing: &str, error: &io::Error) -> Failure {
        Failure::of_disk(doing, &self.shown, error)
    }

    /// Makes the root of the new tree, and writes down which folder that is before anything is put into it. By this a
    /// later run can tell a new tree that never got ready from an old one that was just exchanged.
    pub(super) fn begin_tree(&self) -> io::Result<PathBuf> {
        let tree = self.new_tree();
        self.disk.make_folder(&tree)?;
        let number = self.folder.join(NUMBER_FILE);
        let text = number_text(self.disk.facts(&tree)?);
        self.disk.write_new(&number, text.as_bytes())?;
        self.disk.settle(&self.folder, &[number], std::slice::from_ref(&self.folder))?;
        Ok(tree)
    }

    /// Takes the folder away when the work is done. What cannot be removed now is removed by the next run.
    pub(super) fn close(self) {
        self.remove_own();
    }

    /// Takes away everything that this run made; the target was not touched.
    pub(super) fn abandon(self) {
        let tree = self.new_tree();
        if remove_tree(self.disk, &tree).is_ok() {
            self.remove_own();
            remove_made(self.disk, &self.made_above);
        }
    }

    fn remove_own(&self) {
        // As long as a tree is left, what tells of it must stay too.
        let trees = [NEW_TREE, OLD_TREE, KEPT_TREE].map(|name| self.folder.join(name));
        let is_gone = |path: &PathBuf| matches!(self.disk.facts(path), Ok(None));
        if !trees.iter().all(is_gone) {
            return;
        }
        let number = self.folder.join(NUMBER_FILE);
        let number_gone = is_gone(&number) || self.disk.remove_file(&number).is_ok();
        if number_gone && self.disk.remove_file(&self.folder.join(LOCK_FILE)).is_ok() {
            drop(self.disk.remove_folder(&self.folder));
        }
    }

    /// Removes the tree at `old`, whose place the target has taken. Files of others for which the target has no room are
    /// kept, and told.
    pub(super) fn clear(&mut self, old: &Path, target: &Target) -> io::Result<()> {
        let stranded = retire(self.disk, old, &target.real)?;
        if stranded.is_empty() {
            return Ok(());
        }
        let kept = self.folder.join(KEPT_TREE);
        if old != kept {
            if self.disk.facts(&kept)?.is_some() {
                return Err(io::Error::other("files of others lie in the folder `kept` in it; look at them, and move them away"));
            }
            self.disk.rename(old, &kept)?;
        }
        self.stranded.extend(stranded.into_iter().map(|path| path.strip_prefix(old).map_or(path.clone(), |inside| kept.join(inside))));
        Ok(())
    }

    /// Brings back order after a run that was killed.
    fn recover(&mut self, target: &Target) -> io::Result<()> {
        let (old, kept) = (self.old_tree(), self.folder.join(KEPT_TREE));
        if self.disk.facts(&old)?.is_some() {
            if self.disk.facts(&target.real)?.is_none() {
                // Killed between the two moves that stand for an exchange: the earlier site goes back.
                self.disk.rename(&old, &target.real)?;
            } else {
                self.clear(&old, target)?;
            }
        }
        if self.stranded.is_empty() && self.disk.facts(&kept)?.is_some() {
            self.clear(&kept, target)?;
        }
        let tree = self.new_tree();
        if let Some(facts) = self.disk.facts(&tree)? {
            if self.is_unready(facts)? {
                remove_tree(self.disk, &tree)?;
            } else {
                self.clear(&tree, target)?;
            }
        }
        let number = self.folder.join(NUMBER_FILE);
        if self.disk.facts(&number)?.is_some() && self.disk.facts(&tree)?.is_none() {
            self.disk.remove_file(&number)?;
        }
        Ok(())
    }

    /// Whether the tree under the new tree's name is one that never got ready.
    fn is_unready(&self, tree: Facts) -> io::Result<bool> {
        if tree.kind == Kind::Folder && self.disk.list(&self.new_tree())?.is_empty() {
            return Ok(true);
        }
        let number = self.folder.join(NUMBER_FILE);
        if self.disk.facts(&number)?.is_none() {
            return Err(io::Error::other("it cannot be told what the folder `new` in it is; look at it, and remove it by hand"));
        }
        Ok(self.disk.read(&number)? == number_text(Some(tree)).as_bytes())
    }
}

/// The text by which a folder is known again; the same for all where the system gives no numbers, and there folders are
/// never exchanged in one act.
fn number_text(facts: Option<Facts>) -> String {
    match facts.and_then(|facts| facts.id) {
        Some((device, number)) => format!("{device} {number}\n"),
        None => "none\n".to_owned(),
    }
}

/// Makes the folders above the target that are missing; says which, outermost first.
fn make_folders_above(disk: &dyn Disk, target: &Target) -> Result<Vec<PathBuf>, Failure> {
    let trouble = |path: &Path, error: &io::Error| Failure::of_disk("make the folder for the site", path, error);
    let mut missing = Vec::new();
    for folder in target.parent.ancestors() {
        if disk.facts(folder).map_err(|error| trouble(folder, &error))?.is_some() {
            break;
        }
        missing.push(folder.to_path_buf());
    }
    missing.reverse();
    let mut made = Vec::new();
    for folder in missing {
        if let Err(error) = disk.make_folder(&folder) {
            remove_made(disk, &made);
            return Err(trouble(&folder, &error));
        }
        made.push(folder);
    }
    Ok(made)
}

fn remove_made(disk: &dyn Disk, made: &[PathBuf]) {
    for folder in made.iter().rev() {
        // A folder into which somebody has put something stays.
        drop(disk.remove_folder(folder));
    }
}

fn lock_folder(disk: &dyn Disk, folder: &Path, shown: &Path) -> Result<File, Failure> {
    let beside = "publishing builds the new site beside the old one, so it must be able to write there";
    let trouble = |doing: &str, error: &io::Error| Failure::of_disk(doing, shown, error);
    for _ in 0..TRIES {
        match disk.make_folder(folder) {
            Ok(()) => {}
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
            Err(error) if error.kind() == io::ErrorKind::PermissionDenied => {
                return Err(trouble("make the folder in which the site is built", &error).help(beside));
            }
            Err(error) => return Err(trouble("make the folder in which the site is built", &error)),
        }
        match is_ours(disk, folder) {
            Ok(true) => {}
            Ok(false) => {
                return Err(Failure::new("something else stands where the new site would be built")
                    .at(shown)
                    .help("look at it, and move it away; publishing removes nothing that it did not make"));
            }
            Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
            Err(error) => return Err(trouble("look at an earlier run", &error)),
        }
        match disk.lock(&folder.join(LOCK_FILE), LOCK_TEXT) {
            Ok(Some(lock)) => return Ok(lock),
            Ok(None) => {
                return Err(Failure::new("another run is publishing into the same folder")
                    .at(shown)
                    .help("wait until it is done, then publish again"));
            }
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => {
                // Goes only when it is empty, so that a run that was refused leaves nothing.
                drop(disk.remove_folder(folder));
                return Err(trouble("lock the folder in which the site is built", &error));
            }
        }
    }
    Err(Failure::new("other runs keep publishing into the same folder").at(shown).help("publish again when they are done"))
}

/// Whether this folder can be used and emptied: it is empty, or it holds our lock and nothing but what we make.
fn is_ours(disk: &dyn Disk, folder: &Path) -> io::Result<bool> {
    match disk.facts(folder)? {
        None => return Err(io::Error::from(io::ErrorKind::NotFound)),
        Some(facts) if facts.kind != Kind::Folder => return Ok(false),
        Some(_) => {}
    }
    let names = disk.list(folder)?;
    if names.is_empty() {
        return Ok(true);
    }
    let known = [LOCK_FILE, NEW_TREE, OLD_TREE, KEPT_TREE, NUMBER_FILE];
    let lock = folder.join(LOCK_FILE);
    if !names.iter().all(|name| known.iter().any(|known| name == known)) || disk.facts(&lock)?.is_none_or(|facts| facts.kind != Kind::File)
    {
        return Ok(false);
    }
    // A run that was killed while it wrote the lock left the beginning of the text, and nothing else.
    let text = disk.read(&lock)?;
    Ok(text == LOCK_TEXT || (LOCK_TEXT.starts_with(&text) && names.len() == 1))
}

/// Removes a folder with all that is in it, without following links; a folder that is missing is fine.
pub(super) fn remove_tree(disk: &dyn Disk, folder: &Path) -> io::Result<()> {
    if disk.facts(folder)?.is_none() {
        return Ok(());
    }
    let mut open = vec![folder.to_path_buf()];
    let mut folders = Vec::new();
    while let Some(folder) = open.pop() {
        for name in disk.list(&folder)? {
            let path = folder.join(name);
            match disk.facts(&path)? {
                Some(facts) if facts.kind == Kind::Folder => open.push(path),
                Some(_) => disk.remove_file(&path)?,
                None => {}
            }
        }
        folders.push(folder);
    }
    // Each folder was noted before those inside it.
    folders.iter().rev().try_for_each(|folder| disk.remove_folder(folder))
}
