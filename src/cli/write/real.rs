//! The disk of this computer.

use std::ffi::OsString;
use std::fs::{self, File, FileTimes, Metadata, OpenOptions, TryLockError};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::disk::{Disk, Facts, Kind};

/// Up to so many files and folders are settled one by one; above, the whole disk is told once, which is then faster.
const SETTLE_SINGLY: usize = 64;

/// How often to open a lock file anew when its folder is taken away and made again by others.
const LOCK_TRIES: usize = 8;
/// How often to ask again for a lock that is held, and how long to wait each time: a second in all.
const LOCK_PATIENCE: usize = 40;
const LOCK_PAUSE: std::time::Duration = std::time::Duration::from_millis(25);

/// The disk of this computer.
#[derive(Debug, Clone, Copy)]
pub(super) struct RealDisk;

#[cfg(test)]
impl RealDisk {
    /// Carries a file as on a disk where a file has one name only.
    pub(super) fn copy(self, from: &Path, to: &Path) -> io::Result<()> {
        copy(from, to, io::Error::from(io::ErrorKind::Unsupported))
    }
}

impl Disk for RealDisk {
    fn facts(&self, path: &Path) -> io::Result<Option<Facts>> {
        match fs::symlink_metadata(path) {
            Ok(metadata) => Ok(Some(facts_of(&metadata))),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
            Err(error) => Err(error),
        }
    }

    fn list(&self, folder: &Path) -> io::Result<Vec<OsString>> {
        let mut names = fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.file_name())).collect::<io::Result<Vec<_>>>()?;
        names.sort();
        Ok(names)
    }

    fn read(&self, file: &Path) -> io::Result<Vec<u8>> {
        fs::read(file)
    }

    fn link_target(&self, link: &Path) -> io::Result<PathBuf> {
        fs::read_link(link)
    }

    fn make_folder(&self, folder: &Path) -> io::Result<()> {
        fs::create_dir(folder)
    }

    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()> {
        OpenOptions::new().write(true).create_new(true).open(file)?.write_all(bytes)
    }

    fn carry(&self, from: &Path, to: &Path) -> io::Result<()> {
        match fs::hard_link(from, to) {
            Ok(()) => Ok(()),
            // These mean what they say. Anything else is a disk, a file or a user without the right to second names.
            Err(error) if matches!(error.kind(), io::ErrorKind::AlreadyExists | io::ErrorKind::NotFound | io::ErrorKind::StorageFull) => {
                Err(error)
            }
            Err(error) => copy(from, to, error),
        }
    }

    fn dress_folder(&self, from: &Path, to: &Path, with_time: bool) -> io::Result<()> {
        let metadata = fs::metadata(from)?;
        if with_time {
            // Not every system lets a folder's time be set; it is a nicety.
            drop(File::open(to).and_then(|folder| folder.set_times(times_of(&metadata))));
        }
        if fs::metadata(to)?.permissions() == metadata.permissions() {
            return Ok(());
        }
        fs::set_permissions(to, metadata.permissions())
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()> {
        exchange(one, other)
    }

    fn remove_file(&self, file: &Path) -> io::Result<()> {
        opening_parent(file, || fs::remove_file(file))
    }

    fn remove_folder(&self, folder: &Path) -> io::Result<()> {
        opening_parent(folder, || fs::remove_dir(folder))
    }

    fn settle(&self, root: &Path, files: &[PathBuf], folders: &[PathBuf]) -> io::Result<()> {
        if files.len() + folders.len() > SETTLE_SINGLY && settle_all(root)? {
            return Ok(());
        }
        for path in files.iter().chain(folders) {
            settle_one(path)?;
        }
        Ok(())
    }

    fn lock(&self, file: &Path, text: &[u8]) -> io::Result<Option<File>> {
        let mut patience = LOCK_PATIENCE;
        let mut tries = LOCK_TRIES;
        while tries > 0 {
            let mut lock = OpenOptions::new().read(true).append(true).create(true).open(file)?;
            match lock.try_lock() {
                Ok(()) => {}
                // A process that another thread has just started may hold a copy of a lock that was let go, until it
                // becomes another program: a moment's patience tells such a lock from a run that really is at work.
                Err(TryLockError::WouldBlock) if patience > 0 => {
                    patience -= 1;
                    std::thread::sleep(LOCK_PAUSE);
                    continue;
                }
                Err(TryLockError::WouldBlock) => return Ok(None),
                Err(TryLockError::Error(error)) => return Err(error),
            }
            tries -= 1;
            // The holder before us may have removed the file between our opening and our locking it; then we hold a
            // lock that nobody else can see.
            let held = facts_of(&lock.metadata()?);
            if self.facts(file)?.is_some_and(|facts| facts.id == held.id) {
                // A run that was killed while it wrote the text left a part of it.
                if held.bytes != text.len() as u64
                    && let Err(error) = lock.set_len(0).and_then(|()| lock.write_all(text))
                {
                    drop(fs::remove_file(file));
                    return Err(error);
                }
                return Ok(Some(lock));
            }
        }
        Ok(None)
    }
}

fn facts_of(metadata: &Metadata) -> Facts {
    let file_type = metadata.file_type();
    let kind = if file_type.is_file() {
        Kind::File
    } else if file_type.is_dir() {
        Kind::Folder
    } else if file_type.is_symlink() {
        Kind::Link
    } else {
        Kind::Other
    };
    Facts { kind, bytes: metadata.len(), id: id_of(metadata) }
}

#[cfg(unix)]
fn id_of(metadata: &Metadata) -> Option<(u64, u64)> {
    use std::os::unix::fs::MetadataExt;
    Some((metadata.dev(), metadata.ino()))
}

#[cfg(not(unix))]
fn id_of(_metadata: &Metadata) -> Option<(u64, u64)> {
    None
}

fn times_of(metadata: &Metadata) -> FileTimes {
    metadata.modified().map_or_else(|_| FileTimes::new(), |time| FileTimes::new().set_modified(time))
}

/// Copies a file or a link; `refused` says why no second name could be made, for what can only be named twice.
fn copy(from: &Path, to: &Path, refused: io::Error) -> io::Result<()> {
    let metadata = fs::symlink_metadata(from)?;
    if metadata.file_type().is_symlink() {
        return make_link(&fs::read_link(from)?, to);
    }
    if !metadata.is_file() {
        return Err(refused);
    }
    let mut source = File::open(from)?;
    let mut target = OpenOptions::new().write(true).create_new(true).open(to)?;
    io::copy(&mut source, &mut target)?;
    target.set_permissions(metadata.permissions())?;
    target.set_times(times_of(&metadata))
}

#[cfg(unix)]
fn make_link(target: &Path, link: &Path) -> io::Result<()> {
    std::os::unix::fs::symlink(target, link)
}

#[cfg(not(unix))]
fn make_link(_target: &Path, _link: &Path) -> io::Result<()> {
    Err(io::Error::from(io::ErrorKind::Unsupported))
}

#[cfg(any(target_os = "linux", target_os = "macos"))]
fn exchange(one: &Path, other: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    use rustix::io::Errno;
    renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE).map_err(|error| match error {
        // A file system that does not know the flag calls it invalid.
        Errno::INVAL | Errno::NOSYS | Errno::OPNOTSUPP => io::Error::from(io::ErrorKind::Unsupported),
        error => error.into(),
    })
}

#[cfg(not(any(target_os = "linux", target_os = "macos")))]
fn exchange(_one: &Path, _other: &Path) -> io::Result<()> {
    Err(io::Error::from(io::ErrorKind::Unsupported))
}

/// Tells the whole disk to write what it has; false where the system has no such call.
#[cfg(target_os = "linux")]
fn settle_all(root: &Path) -> io::Result<bool> {
    rustix::fs::syncfs(File::open(root)?)?;
    Ok(true)
}

#[cfg(not(target_os = "linux"))]
fn settle_all(_root: &Path) -> io::Result<bool> {
    Ok(false)
}

fn settle_one(path: &Path) -> io::Result<()> {
    match File::open(path)?.sync_all() {
        // Some file systems and systems cannot settle a folder; they keep no journal that it would speed up either.
        Err(error) if matches!(error.kind(), io::ErrorKind::InvalidInput | io::ErrorKind::Unsupported) => Ok(()),
        done => done,
    }
}

/// Removes something; when its folder is closed to writing (a carried folder keeps its permissions), opens that first.
fn opening_parent(path: &Path, remove: impl Fn() -> io::Result<()>) -> io::Result<()> {
    let refused = match remove() {
        Err(error) if error.kind() == io::ErrorKind::PermissionDenied => error,
        done => return done,
    };
    let Some(parent) = path.parent() else { return Err(refused) };
    open_folder(parent).map_err(|_| refused)?;
    remove()
}

#[cfg(unix)]
fn open_folder(folder: &Path) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mut permissions = fs::metadata(folder)?.permissions();
    permissions.set_mode(permissions.mode() | 0o700);
    fs::set_permissions(folder, permissions)
}

#[cfg(not(unix))]
fn open_folder(_folder: &Path) -> io::Result<()> {
    Err(io::Error::from(io::ErrorKind::Unsupported))
}
