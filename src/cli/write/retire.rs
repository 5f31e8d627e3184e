//! Taking an old tree away after a new one has taken its place, without losing anything that is not ours.
//!
//! Only files of the old tree's own list are removed outright. Whatever else lies there is removed only when the live
//! tree holds the same; a file that somebody put there at the last moment is moved to the live tree.

use std::collections::BTreeSet;
use std::io;
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use super::disk::{Disk, Kind};
use super::list::{LIST_FILE, List};

/// Removes the tree at `old`, which `live` has replaced. Gives the files of others for which `live` has no room.
///
/// A call that was cut off can be repeated: the list goes last.
///
/// # Errors
/// When the system refuses something; the rest of the tree then stays where it is.
pub(super) fn retire(disk: &dyn Disk, old: &Path, live: &Path) -> io::Result<Vec<PathBuf>> {
    let list_path = old.join(LIST_FILE);
    let list = match disk.facts(&list_path)? {
        Some(facts) if facts.kind == Kind::File => List::parse(&disk.read(&list_path)?).ok(),
        _ => None,
    };
    let mut stranded = BTreeSet::new();
    let mut listed = Vec::new();
    let mut folders = Vec::new();
    let mut open = vec![PathBuf::new()];
    while let Some(folder) = open.pop() {
        for name in disk.list(&old.join(&folder))? {
            let path = folder.join(name);
            let from = old.join(&path);
            let Some(facts) = disk.facts(&from)? else { continue };
            if facts.kind == Kind::Folder {
                open.push(path);
            } else if path == Path::new(LIST_FILE) && list.is_some() {
                // Kept until the end.
            } else if is_listed(list.as_ref(), &path) {
                listed.push(from);
            } else if live_has(disk, &from, &live.join(&path))? {
                disk.remove_file(&from)?;
            } else if !hand_over(disk, live, &path, &from)? {
                stranded.insert(from);
            }
        }
        folders.push(folder);
    }
    listed.par_iter().try_for_each(|file| disk.remove_file(file))?;
    if !stranded.is_empty() {
        return Ok(stranded.into_iter().collect());
    }
    // Each folder was noted before those inside it, and the root first of all.
    for folder in folders.iter().skip(1).rev() {
        disk.remove_folder(&old.join(folder))?;
    }
    if list.is_some() {
        disk.remove_file(&list_path)?;
    }
    disk.remove_folder(old)?;
    Ok(Vec::new())
}

fn is_listed(list: Option<&List>, path: &Path) -> bool {
    path.to_str().is_some_and(|path| list.is_some_and(|list| list.hash(path).is_some()))
}

/// Whether the live tree holds the same thing: the very same file, or the same content.
fn live_has(disk: &dyn Disk, old: &Path, live: &Path) -> io::Result<bool> {
    let (Some(one), Some(other)) = (disk.facts(old)?, facts_through_files(disk, live)?) else { return Ok(false) };
    if one.kind != other.kind {
        return Ok(false);
    }
    if one.id.is_some() && one.id == other.id {
        return Ok(true);
    }
    match one.kind {
        Kind::File => Ok(one.bytes == other.bytes && disk.read(old)? == disk.read(live)?),
        Kind::Link => Ok(disk.link_target(old)? == disk.link_target(live)?),
        Kind::Folder | Kind::Other => Ok(false),
    }
}

/// Moves a file to its place in the live tree; false when something else stands there or in its way.
fn hand_over(disk: &dyn Disk, live: &Path, path: &Path, from: &Path) -> io::Result<bool> {
    let mut above: Vec<&Path> = path.ancestors().skip(1).collect();
    above.reverse();
    for folder in above {
        let place = live.join(folder);
        match disk.facts(&place)? {
            None => disk.make_folder(&place)?,
            Some(facts) if facts.kind == Kind::Folder => {}
            Some(_) => return Ok(false),
        }
    }
    let place = live.join(path);
    if disk.facts(&place)?.is_some() {
        return Ok(false);
    }
    disk.rename(from, &place)?;
    Ok(true)
}

/// The facts of a path; nothing stands below a file.
fn facts_through_files(disk: &dyn Disk, path: &Path) -> io::Result<Option<super::disk::Facts>> {
    match disk.facts(path) {
        Err(error) if error.kind() == io::ErrorKind::NotADirectory => Ok(None),
        answer => answer,
    }
}
