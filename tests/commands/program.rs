//! The built program, run as a person or a script runs it, in an environment without settings of this machine.
#![allow(dead_code, reason = "each file of tests uses a part of it")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

/// A folder to stand in.
pub(crate) struct Place {
    _kept: tempfile::TempDir,
    /// Its path, links resolved.
    pub(crate) root: PathBuf,
}

/// What a run came to.
#[derive(Debug)]
pub(crate) struct Run {
    /// The exit status.
    pub(crate) status: i32,
    /// Standard output.
    pub(crate) out: String,
    /// Standard error.
    pub(crate) err: String,
}

/// The program in a scrubbed environment, standing in `folder`.
pub(crate) fn program(folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_seamwise"));
    command.current_dir(folder).env_clear().stdin(Stdio::null());
    command
}

impl Place {
    /// An empty folder.
    pub(crate) fn new() -> Self {
        let kept = tempfile::tempdir().unwrap();
        let root = kept.path().canonicalize().unwrap();
        Self { _kept: kept, root }
    }

    /// A folder with the guidebook of `begin` in `course`.
    pub(crate) fn with_course() -> Self {
        let place = Self::new();
        assert_eq!(place.run(&["begin", "course"]).status, 0);
        place
    }

    /// Runs the program here.
    pub(crate) fn run(&self, words: &[&str]) -> Run {
        self.run_in(".", words)
    }

    /// Runs the program in a folder below.
    pub(crate) fn run_in(&self, folder: &str, words: &[&str]) -> Run {
        told(program(&self.root.join(folder)).args(words).output().unwrap())
    }

    /// Puts `new` where `old` stands in a file, once.
    pub(crate) fn edit(&self, path: &str, old: &str, new: &str) {
        let whole = self.root.join(path);
        let text = fs::read_to_string(&whole).unwrap();
        assert_eq!(text.matches(old).count(), 1, "`{old}` stands once in {path}");
        fs::write(whole, text.replace(old, new)).unwrap();
    }

    /// Writes a file, and the folders above it.
    pub(crate) fn write(&self, path: &str, text: &str) {
        let whole = self.root.join(path);
        fs::create_dir_all(whole.parent().unwrap()).unwrap();
        fs::write(whole, text).unwrap();
    }
}

/// The parts of an output as text.
pub(crate) fn told(output: Output) -> Run {
    Run {
        status: output.status.code().unwrap_or(-1),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}
