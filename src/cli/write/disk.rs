//! The few things that publishing does to a disk, as a trait, so that tests can let the n-th of them fail.
//!
//! Nothing here decides anything; `real.rs` does each with one or two calls to the system.

use std::ffi::OsString;
use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};

/// What stands under a path; links are not followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A file.
    File,
    /// A folder.
    Folder,
    /// A symbolic link.
    Link,
    /// A pipe, a socket, a device.
    Other,
}

/// What the system says of one path without reading it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Facts {
    /// What it is.
    pub(super) kind: Kind,
    /// Its size in bytes.
    pub(super) bytes: u64,
    /// Device and number, which two names of one file share; `None` where the system has no such thing.
    pub(super) id: Option<(u64, u64)>,
}

/// A disk, or something that behaves like one. Every path is absolute.
pub(super) trait Disk: Sync {
    /// What stands there; `None` when nothing does.
    fn facts(&self, path: &Path) -> io::Result<Option<Facts>>;
    /// The names in a folder, sorted.
    fn list(&self, folder: &Path) -> io::Result<Vec<OsString>>;
    /// A file's bytes.
    fn read(&self, file: &Path) -> io::Result<Vec<u8>>;
    /// Where a symbolic link leads, as it was made.
    fn link_target(&self, link: &Path) -> io::Result<PathBuf>;
    /// Makes one folder; its parent must be there and it must not.
    fn make_folder(&self, folder: &Path) -> io::Result<()>;
    /// Writes a file that must not be there yet.
    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()>;
    /// Gives what stands at `from`, which is no folder, a second name; where the disk knows no second names, a copy
    /// with the same time.
    fn carry(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Gives folder `to` the permissions of folder `from`, and its time when `with_time`.
    fn dress_folder(&self, from: &Path, to: &Path, with_time: bool) -> io::Result<()>;
    /// Moves within one disk; what stands at `to` is replaced only when it is no folder with anything in it.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;
    /// Exchanges two folders in one act; `ErrorKind::Unsupported` where the system cannot.
    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()>;
    /// Removes what is no folder.
    fn remove_file(&self, file: &Path) -> io::Result<()>;
    /// Removes an empty folder.
    fn remove_folder(&self, folder: &Path) -> io::Result<()>;
    /// Returns when these files and folders, all inside `root`, would outlast a power cut.
    fn settle(&self, root: &Path, files: &[PathBuf], folders: &[PathBuf]) -> io::Result<()>;
    /// Opens a lock file, making it with `text` where it is missing, and locks it until the answer is dropped.
    /// `None` when somebody else holds it.
    fn lock(&self, file: &Path, text: &[u8]) -> io::Result<Option<File>>;
}
