//! A disk that fails when it is told to, and one that can do less than this computer's.

use std::ffi::OsString;
use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};

use crate::cli::write::disk::{Disk, Facts};
use crate::cli::write::real::RealDisk;

/// What happens at the n-th act, counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Trouble {
    /// Nothing.
    None,
    /// That act fails, later ones work.
    Once(usize, io::ErrorKind),
    /// From then on there is no room: whatever needs room fails, a write half done.
    Full(usize),
    /// From then on nothing happens any more, as after a kill; a write is half done.
    Killed(usize),
}

/// A disk with trouble.
pub(super) struct FaultyDisk {
    pub(super) trouble: Trouble,
    pub(super) done: AtomicUsize,
    /// Whether two folders can be exchanged in one act.
    pub(super) exchanges: bool,
    /// Whether a file can have two names.
    pub(super) links: bool,
    /// Done just before the new tree takes its place.
    pub(super) before_exchange: Option<Box<dyn Fn() + Sync>>,
}

impl FaultyDisk {
    pub(super) fn new(trouble: Trouble) -> Self {
        Self { trouble, done: AtomicUsize::new(0), exchanges: true, links: true, before_exchange: None }
    }

    /// How many acts were asked for.
    pub(super) fn acts(&self) -> usize {
        self.done.load(Ordering::SeqCst)
    }

    fn act<T>(&self, needs_room: bool, act: impl FnOnce() -> io::Result<T>) -> io::Result<T> {
        self.act_or(needs_room, || {}, act)
    }

    fn act_or<T>(&self, needs_room: bool, half: impl FnOnce(), act: impl FnOnce() -> io::Result<T>) -> io::Result<T> {
        let at = self.done.fetch_add(1, Ordering::SeqCst);
        match self.trouble {
            Trouble::Once(when, kind) if at == when => Err(io::Error::from(kind)),
            Trouble::Full(when) if at >= when && needs_room => {
                half();
                Err(io::Error::from(io::ErrorKind::StorageFull))
            }
            Trouble::Killed(when) if at >= when => {
                if at == when {
                    half();
                }
                Err(io::Error::other("killed"))
            }
            _ => act(),
        }
    }
}

impl Disk for FaultyDisk {
    fn facts(&self, path: &Path) -> io::Result<Option<Facts>> {
        self.act(false, || RealDisk.facts(path))
    }

    fn list(&self, folder: &Path) -> io::Result<Vec<OsString>> {
        self.act(false, || RealDisk.list(folder))
    }

    fn read(&self, file: &Path) -> io::Result<Vec<u8>> {
        self.act(false, || RealDisk.read(file))
    }

    fn link_target(&self, link: &Path) -> io::Result<PathBuf> {
        self.act(false, || RealDisk.link_target(link))
    }

    fn make_folder(&self, folder: &Path) -> io::Result<()> {
        self.act(true, || RealDisk.make_folder(folder))
    }

    fn write_new(&self, file: &Path, bytes: &[u8]) -> io::Result<()> {
        let half = || {
            let _ = RealDisk.write_new(file, &bytes[..bytes.len() / 2]);
        };
        self.act_or(true, half, || RealDisk.write_new(file, bytes))
    }

    fn carry(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.act(true, || if self.links { RealDisk.carry(from, to) } else { RealDisk.copy(from, to) })
    }

    fn dress_folder(&self, from: &Path, to: &Path, with_time: bool) -> io::Result<()> {
        self.act(false, || RealDisk.dress_folder(from, to, with_time))
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.act(false, || RealDisk.rename(from, to))
    }

    fn exchange(&self, one: &Path, other: &Path) -> io::Result<()> {
        if let Some(before) = &self.before_exchange {
            before();
        }
        let unable = || Err(io::Error::from(io::ErrorKind::Unsupported));
        self.act(false, || if self.exchanges { RealDisk.exchange(one, other) } else { unable() })
    }

    fn remove_file(&self, file: &Path) -> io::Result<()> {
        self.act(false, || RealDisk.remove_file(file))
    }

    fn remove_folder(&self, folder: &Path) -> io::Result<()> {
        self.act(false, || RealDisk.remove_folder(folder))
    }

    fn settle(&self, _root: &Path, files: &[PathBuf], folders: &[PathBuf]) -> io::Result<()> {
        // Looked at, not waited for: no test cuts the power.
        self.act(true, || files.iter().chain(folders).try_for_each(|path| File::open(path).map(drop)))
    }

    fn lock(&self, file: &Path, text: &[u8]) -> io::Result<Option<File>> {
        // A lock that has no room for its text is taken away again; only a kill leaves a half.
        let half = || {
            if matches!(self.trouble, Trouble::Killed(_)) {
                let _ = RealDisk.write_new(file, &text[..text.len() / 2]);
            }
        };
        self.act_or(true, half, || RealDisk.lock(file, text))
    }
}
