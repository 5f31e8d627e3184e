//! Publishing a tree of pages into a folder, all or nothing.
//!
//! The whole new tree is built beside the target, then takes its place in one act; whatever happens before leaves the
//! earlier site as it was, byte for byte. Nothing is removed but files of the earlier site's own list.

mod disk;
mod fill;
mod list;
mod real;
mod retire;
mod survey;
mod target;
#[cfg(test)]
mod tests;
mod workspace;

use std::io;
use std::path::{Path, PathBuf};

use disk::Disk;
use fill::{Filled, Filler};
use real::RealDisk;
use survey::Survey;
use workspace::Workspace;

pub(super) use list::holds_site;
pub(super) use target::Target;

use super::failure::Failure;
use crate::site::Made;

/// Pages that can be made one at a time, in any order.
pub(super) trait Pages: Sync {
    /// The path of each, relative to the site, with forward slashes.
    fn paths(&self) -> Vec<String>;

    /// Those of them that list what others came to: they are made after all others, one by one, in this order.
    fn closing(&self) -> Vec<String>;

    /// The bytes of the page with this path.
    ///
    /// # Errors
    /// When it cannot be made; a phrase says why.
    fn render(&self, path: &str) -> Result<Vec<u8>, String>;

    /// The bytes of a page of `closing`, from what all pages made before it came to.
    ///
    /// # Errors
    /// When it cannot be made; a phrase says why.
    fn close(&self, path: &str, made: &[Made]) -> Result<Vec<u8>, String>;
}

/// Called once for every page that is done, from any thread.
pub(super) type Progress<'a> = dyn Fn() + Sync + 'a;

/// What publishing did.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Outcome {
    /// How many pages the site has.
    pub(super) pages: usize,
    /// How many of them did not stand there before.
    pub(super) new: usize,
    /// How many stood there with other bytes.
    pub(super) changed: usize,
    /// Pages of the earlier site that are gone, sorted.
    pub(super) removed: Vec<String>,
    /// Pages that somebody had edited in the site and that are as published again, or gone; sorted.
    pub(super) edited: Vec<String>,
    /// Files of others that could not be put back after an earlier run was cut off, and where they lie.
    pub(super) stranded: Vec<PathBuf>,
    /// Why the earlier tree could not be cleared away, and where it lies; the next run tries again.
    pub(super) leftover: Option<(PathBuf, String)>,
}

impl Outcome {
    /// True when the site stood there already, byte for byte.
    pub(super) fn is_same(&self) -> bool {
        self.new == 0 && self.changed == 0 && self.removed.is_empty()
    }
}

/// Publishes `pages` into the target.
///
/// # Errors
/// When it cannot be done; the earlier site is then as it was.
pub(super) fn publish(pages: &dyn Pages, target: &Target, progress: &Progress) -> Result<Outcome, Failure> {
    publish_on(&RealDisk, pages, target, progress)
}

fn publish_on(disk: &dyn Disk, pages: &dyn Pages, target: &Target, progress: &Progress) -> Result<Outcome, Failure> {
    let paths = fill::sound_paths(pages)?;
    let mut workspace = Workspace::open(disk, target)?;
    let built = build(disk, &workspace, pages, &paths, target, progress);
    let (survey, filled, ready) = match built {
        Ok(built) => built,
        Err(failure) => {
            workspace.abandon();
            return Err(failure);
        }
    };
    let mut outcome = tell(disk, target, &survey, &filled);
    if !ready {
        outcome.stranded.append(&mut workspace.stranded);
        workspace.abandon();
        return Ok(outcome);
    }
    let old = match take_place(disk, &workspace, target) {
        Ok(old) => old,
        Err(failure) => {
            workspace.abandon();
            return Err(failure);
        }
    };
    if let Err(error) = clear_away(disk, &mut workspace, target, old.as_deref()) {
        outcome.leftover = Some((workspace.folder().to_path_buf(), super::failure::in_plain_words(&error).0));
    }
    outcome.stranded.append(&mut workspace.stranded);
    workspace.close();
    Ok(outcome)
}

/// Builds the new tree. The last part of the answer is false when the target holds the very same already.
fn build(
    disk: &dyn Disk,
    workspace: &Workspace,
    pages: &dyn Pages,
    paths: &[String],
    target: &Target,
    progress: &Progress,
) -> Result<(Survey, Filled, bool), Failure> {
    let survey = Survey::of(disk, target)?;
    refuse_what_is_in_the_way(&survey, paths, target)?;
    let tree = workspace.begin_tree().map_err(|error| workspace.trouble("make the folder in which the site is built", &error))?;
    let filler = Filler::new(disk, target, &survey, &tree);
    let filled = filler.make_pages(pages, paths, progress)?;
    let same =
        filled.new.is_empty() && filled.changed.is_empty() && survey.list_bytes.as_deref() == Some(filled.list.to_bytes().as_slice());
    if !same {
        filler.complete(&filled)?;
    }
    Ok((survey, filled, !same))
}

fn refuse_what_is_in_the_way(survey: &Survey, paths: &[String], target: &Target) -> Result<(), Failure> {
    const SHOWN: usize = 5;
    let found = survey.in_the_way(paths.iter().map(String::as_str).chain([list::LIST_FILE]));
    let Some(first) = found.first() else { return Ok(()) };
    let mut names: Vec<_> = found.iter().take(SHOWN).map(|path| format!("`{}`", path.display())).collect();
    if found.len() > SHOWN {
        names.push(format!("{} more", found.len() - SHOWN));
    }
    let (stand, them) = if found.len() == 1 { ("stands", "it") } else { ("stand", "them") };
    Err(Failure::new(format!("{} {stand} where a page would go and did not come from here, so nothing is published", names.join(", ")))
        .at(&target.shown.join(first))
        .help(format!("move {them} away, or name another folder with --to")))
}

/// Puts the new tree in the target's place. Gives where the old tree lies now, when there was one.
fn take_place(disk: &dyn Disk, workspace: &Workspace, target: &Target) -> Result<Option<PathBuf>, Failure> {
    let trouble = |error: &io::Error| match error.kind() {
        io::ErrorKind::ResourceBusy | io::ErrorKind::CrossesDevices => {
            Failure::new("the folder of the site is held in its place by the system, perhaps as a mounted disk")
                .at(&target.shown)
                .help("publish into a new folder inside it, or elsewhere, with --to")
        }
        _ => Failure::of_disk("put the new site in its place", &target.shown, error),
    };
    let tree = workspace.new_tree();
    if disk.facts(&target.real).map_err(|error| trouble(&error))?.is_none() {
        disk.rename(&tree, &target.real).map_err(|error| trouble(&error))?;
        return Ok(None);
    }
    match disk.exchange(&tree, &target.real) {
        Ok(()) => return Ok(Some(tree)),
        Err(error) if error.kind() == io::ErrorKind::Unsupported => {}
        Err(error) => return Err(trouble(&error)),
    }
    // Two moves instead of one act: a run that is killed between them leaves the earlier site whole in the workspace,
    // and the next run puts it back.
    let old = workspace.old_tree();
    disk.rename(&target.real, &old).map_err(|error| trouble(&error))?;
    match disk.rename(&tree, &target.real) {
        Ok(()) => Ok(Some(old)),
        Err(error) => {
            // When this fails too, the next run does it.
            drop(disk.rename(&old, &target.real));
            Err(trouble(&error))
        }
    }
}

/// Removes the old tree, once the new one would be found in its place even after a power cut.
fn clear_away(disk: &dyn Disk, workspace: &mut Workspace, target: &Target, old: Option<&Path>) -> io::Result<()> {
    disk.settle(&target.parent, &[], &[target.parent.clone(), workspace.folder().to_path_buf()])?;
    old.map_or(Ok(()), |old| workspace.clear(old, target))
}

fn tell(disk: &dyn Disk, target: &Target, survey: &Survey, filled: &Filled) -> Outcome {
    let gone = |path: &&str| filled.list.hash(path).is_none() && survey.ours.contains_key(*path);
    let removed: Vec<_> = survey.list.paths().filter(gone).map(str::to_owned).collect();
    // A page that cannot be read is not told of; it goes all the same.
    let by_hand =
        |path: &&String| disk.read(&target.real.join(path)).is_ok_and(|bytes| survey.list.hash(path) != Some(&blake3::hash(&bytes)));
    let mut edited: Vec<_> = filled.edited.iter().chain(removed.iter().filter(by_hand)).cloned().collect();
    edited.sort();
    Outcome {
        pages: filled.list.paths().count(),
        new: filled.new.len(),
        changed: filled.changed.len(),
        removed,
        edited,
        stranded: Vec::new(),
        leftover: None,
    }
}
