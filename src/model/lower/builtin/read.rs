//! Helpers of lowering embedded data: a text into entries, and fields into plain values.
//!
//! Embedded data has no author to tell, so what cannot be lowered is a finding that a test wants none of.

use std::collections::BTreeMap;
use std::ops::Deref;

use serde::de::DeserializeOwned;

use crate::finding::{FileId, Finding, Place};
use crate::model::quantity::Range;
use crate::model::quantity::parse;
use crate::source::documents::builtin as doc;
use crate::source::field::{Entries, Field, Optional, Required};
use crate::source::{decode, yaml};

/// The entries of an embedded file, in their order; one that cannot be lowered is left out and told.
pub(super) fn entries<D, T>(text: &str, findings: &mut Vec<Finding>, lower: impl Fn(&D) -> Option<T>) -> Vec<(String, T)>
where
    D: DeserializeOwned + std::fmt::Debug,
{
    let (node, found) = yaml::parse(text, FileId(0));
    findings.extend(found);
    let Some(node) = node else { return Vec::new() };
    let (entries, found): (Option<Entries<D>>, Vec<Finding>) = decode::decode(&node, FileId(0));
    findings.extend(found);
    let mut lowered = Vec::new();
    for entry in entries.map_or_else(Vec::new, |entries| entries.entries) {
        match entry.value.value().and_then(&lower) {
            Some(value) => lowered.push((entry.name, value)),
            None => findings.push(Finding::fault("value-malformed", Place::new(FileId(0), entry.value.key), entry.name)),
        }
    }
    lowered
}

/// The same by name.
pub(super) fn mapping<D, T>(text: &str, findings: &mut Vec<Finding>, lower: impl Fn(&D) -> Option<T>) -> BTreeMap<String, T>
where
    D: DeserializeOwned + std::fmt::Debug,
{
    entries(text, findings, lower).into_iter().collect()
}

/// A text without the white space around it.
pub(super) fn text<T: Deref<Target = str>>(field: &Field<T>) -> Option<String> {
    field.value().map(|text| text.trim().to_owned())
}

/// A word of a list.
pub(super) fn word<T: Deref<Target = str>, W>(field: &Field<T>, from_word: impl Fn(&str) -> Option<W>) -> Option<W> {
    from_word(field.value()?.trim())
}

/// A list of texts; empty when it is left out.
pub(super) fn list<T: Deref<Target = str>>(field: &Field<Vec<Required<T>>>) -> Vec<String> {
    field.value().into_iter().flatten().filter_map(|item| text(item)).collect()
}

/// A value that may be left out but not be wrong: the outer `None` is wrong.
pub(super) fn optional<T, U>(field: &Field<T>, lower: impl Fn(&T) -> Option<U>) -> Option<Option<U>> {
    match field.value() {
        Some(value) => lower(value).map(Some),
        None => field.is_absent().then_some(None),
    }
}

/// Whole numbers or a range of them.
pub(super) fn whole<T: Deref<Target = str>>(text: &T) -> Option<Range<u32>> {
    parse::whole(text).ok()
}

/// Each source as one text: title, section, publisher, year or edition, and where it was read when elsewhere.
pub(super) fn sources(field: &Optional<Vec<Required<doc::Source>>>) -> Vec<String> {
    let stated = field.value().map_or(&[][..], |list| list.as_slice());
    stated.iter().filter_map(|source| source.value()).map(source).collect()
}

/// One source as a text.
pub(super) fn source(stated: &doc::Source) -> String {
    let parts = [text(&stated.title), text(&stated.section), text(&stated.publisher), text(&stated.edition), text(&stated.year)];
    let mut line = parts.into_iter().flatten().collect::<Vec<_>>().join(", ");
    if let Some(other) = text(&stated.read_in) {
        line.push_str(&format!(" (read in {other})"));
    }
    line
}
