//! Values with the places at which they were authored.
//!
//! A document is read as a whole even when parts of it are wrong: what could not be read is `Broken`
//! (a finding has told so already, and whatever depends on it stays silent), what is not there is `Absent`.

use std::ops::Deref;

use crate::finding::Span;

/// What became of one key of a mapping, or of one item of a list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum State<T> {
    /// The key is not there.
    Absent,
    /// Something stands there that could not be read; a finding tells what.
    Broken,
    /// The value.
    Given(T),
}

/// A value, the key that introduces it, and where both stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field<T> {
    /// What became of it.
    pub state: State<T>,
    /// The key; for an item of a list, the item itself; when absent, the first key of the mapping that lacks it.
    pub key: Span,
    /// The value; when absent, the same as `key`.
    pub span: Span,
}

impl<T> Field<T> {
    /// The value, when there is one.
    pub const fn value(&self) -> Option<&T> {
        match &self.state {
            State::Given(value) => Some(value),
            State::Absent | State::Broken => None,
        }
    }

    /// True when the key is not there at all.
    pub const fn is_absent(&self) -> bool {
        matches!(self.state, State::Absent)
    }

    /// True when something unreadable stands there.
    pub const fn is_broken(&self) -> bool {
        matches!(self.state, State::Broken)
    }
}

/// A key that must be there; when it is not, reading reports `missing-key`, and the state is `Broken`
/// (told already). Also the type of the items of lists.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Required<T>(pub Field<T>);

/// A key that may be left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Optional<T>(pub Field<T>);

impl<T> Deref for Required<T> {
    type Target = Field<T>;

    fn deref(&self) -> &Field<T> {
        &self.0
    }
}

impl<T> Deref for Optional<T> {
    type Target = Field<T>;

    fn deref(&self) -> &Field<T> {
        &self.0
    }
}

/// A mapping whose keys the author chooses, in the order in which they stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entries<T> {
    /// The entries; a doubled key is reported, and only its first entry is kept.
    pub entries: Vec<Entry<T>>,
}

impl<T> Default for Entries<T> {
    fn default() -> Self {
        Self { entries: Vec::new() }
    }
}

/// One entry of such a mapping.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry<T> {
    /// The key as it stands.
    pub name: String,
    /// Its value; `value.key` is where the key stands.
    pub value: Field<T>,
}
