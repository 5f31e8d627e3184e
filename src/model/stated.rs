//! Values that remember where they were authored, and whether they could be read.

use crate::finding::Place;

/// A value and the place where it was authored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spanned<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub place: Place,
}

impl<T> Spanned<T> {
    /// The value, standing at `place`.
    pub const fn new(value: T, place: Place) -> Self {
        Self { value, place }
    }
}

/// What the author stated under one key.
///
/// `Broken` means that a finding has been made already: whatever depends on the value stays silent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stated<T> {
    /// Nothing was stated.
    Absent,
    /// Something was stated that could not be understood, and a finding says so.
    Broken,
    /// This was stated.
    Given(Spanned<T>),
}

impl<T> Stated<T> {
    /// The value with its place, when one was given.
    pub const fn given(&self) -> Option<&Spanned<T>> {
        match self {
            Self::Given(spanned) => Some(spanned),
            Self::Absent | Self::Broken => None,
        }
    }

    /// The value alone, when one was given.
    pub fn value(&self) -> Option<&T> {
        self.given().map(|spanned| &spanned.value)
    }

    /// True when nothing was stated.
    pub const fn is_absent(&self) -> bool {
        matches!(self, Self::Absent)
    }

    /// True when something was stated that could not be understood.
    pub const fn is_broken(&self) -> bool {
        matches!(self, Self::Broken)
    }
}
