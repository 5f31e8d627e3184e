//! Parts that guides name, each where it stands first in its file: for the checks on anatomy.
//!
//! A name that stands in ten steps is one mistake. Nothing is reported here.

use std::collections::BTreeMap;

use crate::analysis::anatomy::{Anatomy, Part, named_parts};
use crate::model::words::PartKind;
use crate::model::{Procedure, Spanned};

/// A name, and in how many more places of the guide it stands.
#[derive(Debug, Clone, Copy)]
pub(super) struct Named<'a> {
    /// The first place.
    pub name: &'a Spanned<String>,
    /// How often it stands again.
    pub more: usize,
}

/// Each name once, in the order in which they stand first.
pub(super) fn each_once(procedure: &Procedure) -> Vec<Named<'_>> {
    let mut first: Vec<Named<'_>> = Vec::new();
    let mut known: BTreeMap<&str, usize> = BTreeMap::new();
    for step in &procedure.steps {
        for name in named_parts(step) {
            let at = *known.entry(&name.value).or_insert_with(|| {
                first.push(Named { name, more: 0 });
                first.len() - 1
            });
            if let Some(named) = first.get_mut(at).filter(|named| named.name.place != name.place) {
                named.more += 1;
            }
        }
    }
    first
}

/// ` (here and in 2 more places)`, or nothing.
pub(super) fn here_and_in(more: usize) -> String {
    match more {
        0 => String::new(),
        1 => " (here and in 1 more place)".to_owned(),
        many => format!(" (here and in {many} more places)"),
    }
}

/// The parts of a kind that lie in some of these regions, or all of the kind where no region is named.
pub(super) fn of_kind<'a>(anatomy: &Anatomy<'a>, kind: Option<PartKind>, lies: impl Fn(&Part<'a>) -> bool) -> Vec<&'a str> {
    anatomy.parts().filter(|part| part.kind == kind && lies(part)).map(|part| part.id).collect()
}

/// A kind of part in plural.
pub(super) const fn kinds(kind: Option<PartKind>) -> &'static str {
    match kind {
        Some(PartKind::Bone) => "bones",
        Some(PartKind::Muscle) => "muscles",
        Some(PartKind::Tissue) => "tissues",
        Some(PartKind::Gland) => "glands",
        None => "parts",
    }
}
