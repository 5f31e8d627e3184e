//! Values with the places at which they were authored.
//!
//! A document is read as a whole even when parts of it are wrong: what could not be read is `Broken`
//! (a finding has told so already, and whatever depends on it stays silent), what is not there is `Absent`.

use std::fmt;
use std::marker::PhantomData;
use std::ops::Deref;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};

use crate::finding::Span;

/// Under these names fields and entries ask the decoder for places along with values.
pub(super) const REQUIRED: &str = "$required";
pub(super) const OPTIONAL: &str = "$optional";
pub(super) const ENTRIES: &str = "$entries";

/// What the decoder says of a value before it hands it over.
pub(super) const ABSENT: u8 = 0;
pub(super) const BROKEN: u8 = 1;
pub(super) const GIVEN: u8 = 2;

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

/// Reads four offsets (key, value), one of the words above, and where there is a value, the value. A value that
/// can't be read is missing here: the decoder has told why.
struct FieldVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for FieldVisitor<T> {
    type Value = Field<T>;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a value with its place")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut parts: A) -> Result<Field<T>, A::Error> {
        let mut offset = || parts.next_element::<u32>().map(Option::unwrap_or_default);
        let key = Span::new(offset()?, offset()?);
        let span = Span::new(offset()?, offset()?);
        let state = match parts.next_element::<u8>()? {
            Some(ABSENT) => State::Absent,
            Some(GIVEN) => parts.next_element::<T>()?.map_or(State::Broken, State::Given),
            _ => State::Broken,
        };
        Ok(Field { state, key, span })
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Required<T> {
    fn deserialize<D: Deserializer<'de>>(decoder: D) -> Result<Self, D::Error> {
        decoder.deserialize_newtype_struct(REQUIRED, FieldVisitor(PhantomData)).map(Self)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Optional<T> {
    fn deserialize<D: Deserializer<'de>>(decoder: D) -> Result<Self, D::Error> {
        decoder.deserialize_newtype_struct(OPTIONAL, FieldVisitor(PhantomData)).map(Self)
    }
}

struct EntriesVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for EntriesVisitor<T> {
    type Value = Entries<T>;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a mapping")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Entries<T>, A::Error> {
        let mut entries = Vec::new();
        while let Some((name, Required(value))) = map.next_entry::<String, Required<T>>()? {
            entries.push(Entry { name, value });
        }
        Ok(Entries { entries })
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Entries<T> {
    fn deserialize<D: Deserializer<'de>>(decoder: D) -> Result<Self, D::Error> {
        decoder.deserialize_newtype_struct(ENTRIES, EntriesVisitor(PhantomData))
    }
}
