//! Why a command could not do its work: what is wrong, where, and what to do.
//!
//! Faults in a guidebook are findings, never failures. A failure ends the command with exit status 2.

use std::fmt;
use std::io;
use std::path::Path;

/// A command could not do its work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Failure {
    what: String,
    place: Option<String>,
    remedy: Option<String>,
}

impl Failure {
    /// `what` is a phrase that stands alone: lower-case start, no final stop.
    pub(super) fn new(what: impl Into<String>) -> Self {
        Self { what: what.into(), place: None, remedy: None }
    }

    /// What the system answered when `doing` something with `path`, in plain words.
    pub(super) fn of_disk(doing: &str, path: &Path, error: &io::Error) -> Self {
        let (why, remedy) = in_plain_words(error);
        let failure = Self::new(format!("cannot {doing}: {why}")).at(path);
        match remedy {
            Some(remedy) => failure.help(remedy),
            None => failure,
        }
    }

    /// Names the file or folder that is meant.
    pub(super) fn at(mut self, path: &Path) -> Self {
        self.place = Some(path.display().to_string());
        self
    }

    /// Says what to do.
    pub(super) fn help(mut self, remedy: impl Into<String>) -> Self {
        self.remedy = Some(remedy.into());
        self
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "error: {}", self.what)?;
        if let Some(place) = &self.place {
            write!(f, "\n   at: {place}")?;
        }
        if let Some(remedy) = &self.remedy {
            write!(f, "\n help: {remedy}")?;
        }
        Ok(())
    }
}

/// What an answer of the system means, and what to do about it.
pub(super) fn in_plain_words(error: &io::Error) -> (String, Option<&'static str>) {
    use io::ErrorKind as Kind;
    match error.kind() {
        Kind::StorageFull | Kind::QuotaExceeded => ("the disk is full".into(), Some("free some space, then run the command again")),
        Kind::PermissionDenied => ("permission denied".into(), Some("give yourself the right to it, or choose another folder")),
        Kind::ReadOnlyFilesystem => ("the disk can only be read".into(), Some("choose a folder on a disk that can be written")),
        Kind::NotFound => ("it is not there".into(), None),
        Kind::NotADirectory => ("a part of the path is not a folder".into(), None),
        Kind::InvalidFilename => ("the name is too long, or this disk does not allow it".into(), Some("choose a shorter name")),
        _ => (error.to_string(), None),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_what_where_and_what_to_do() {
        let full = io::Error::from(io::ErrorKind::StorageFull);
        assert_eq!(
            Failure::of_disk("write the page", Path::new("site/a.html"), &full).to_string(),
            "error: cannot write the page: the disk is full\n   at: site/a.html\n help: free some space, then run the command again"
        );
        assert_eq!(Failure::new("nothing to do").to_string(), "error: nothing to do");
    }
}
