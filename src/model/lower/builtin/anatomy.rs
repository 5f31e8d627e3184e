//! The embedded anatomy into the model, group by group.

use std::collections::BTreeMap;

use super::read::{list, mapping, optional, text, whole, word};
use crate::finding::Finding;
use crate::model::builtin::anatomy::{BuiltinPart, GroupAnatomy, PartCount};
use crate::model::words::{PartKind, Verified};
use crate::source::documents::builtin::anatomy as doc;

/// Each group with the files that hold its parts.
const FILES: &[(&str, &[&str])] = &[
    ("bird", &[include_str!("../../../reference/anatomy-bird-bones.yaml"), include_str!("../../../reference/anatomy-bird-soft.yaml")]),
    (
        "cattle",
        &[
            include_str!("../../../reference/anatomy-cattle-bones.yaml"),
            include_str!("../../../reference/anatomy-cattle-muscles.yaml"),
            include_str!("../../../reference/anatomy-cattle-tissues.yaml"),
        ],
    ),
    ("deer", &[include_str!("../../../reference/anatomy-deer-bones.yaml"), include_str!("../../../reference/anatomy-deer-soft.yaml")]),
    ("flat-fish", &[include_str!("../../../reference/anatomy-flat-fish.yaml")]),
    ("goat", &[include_str!("../../../reference/anatomy-goat-bones.yaml"), include_str!("../../../reference/anatomy-goat-soft.yaml")]),
    ("pig", &[include_str!("../../../reference/anatomy-pig-bones.yaml"), include_str!("../../../reference/anatomy-pig-soft.yaml")]),
    ("rabbit", &[include_str!("../../../reference/anatomy-rabbit.yaml")]),
    ("round-fish", &[include_str!("../../../reference/anatomy-round-fish.yaml")]),
    ("sheep", &[include_str!("../../../reference/anatomy-sheep-bones.yaml"), include_str!("../../../reference/anatomy-sheep-soft.yaml")]),
];

/// All groups.
pub(super) fn load(findings: &mut Vec<Finding>) -> BTreeMap<String, GroupAnatomy> {
    let mut groups = BTreeMap::new();
    for (group, files) in FILES {
        let parts = files.iter().flat_map(|file| mapping(file, findings, part)).collect();
        groups.insert((*group).to_owned(), GroupAnatomy::new(parts));
    }
    groups
}

fn part(stated: &doc::Part) -> Option<BuiltinPart> {
    Some(BuiltinPart {
        name: text(&stated.name)?,
        also: list(&stated.also),
        kind: word(&stated.kind, PartKind::from_word)?,
        count: optional(&stated.count, count)?,
        paired: stated.paired.value().copied().unwrap_or(false),
        part_of: text(&stated.part_of),
        regions: list(&stated.regions),
        does: text(&stated.does)?,
        lies: text(&stated.lies)?,
        sources: list(&stated.sources),
        verified: word(&stated.verified, Verified::from_word)?,
    })
}

fn count(stated: &doc::PartCount) -> Option<PartCount> {
    match stated {
        doc::PartCount::Every(number) => whole(number).map(PartCount::Every),
        doc::PartCount::Each(entries) => {
            let by_species = entries.entries.iter().map(|entry| Some((entry.name.clone(), whole(entry.value.value()?)?)));
            by_species.collect::<Option<_>>().map(PartCount::Each)
        }
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use crate::model::builtin::Builtin;
    use crate::model::names::hyphenated;

    /// What the files promise at their top: every group of a species is there, parts belong to parts of the same
    /// group, and no name stands twice in a group.
    #[test]
    fn names_are_unique_and_parts_belong_to_parts() {
        let builtin = Builtin::get();
        for species in builtin.species.values() {
            assert!(builtin.anatomy.contains_key(&species.group), "{}", species.group);
        }
        for (group, anatomy) in &builtin.anatomy {
            let mut names = BTreeSet::new();
            for (id, part) in &anatomy.parts {
                let also = part.also.iter().map(|name| hyphenated(name));
                let own: BTreeSet<String> = [id.clone(), hyphenated(&part.name)].into_iter().chain(also).collect();
                for name in own {
                    assert!(names.insert(name.clone()), "{group}: `{name}` stands twice, again under `{id}`");
                }
                assert!(!part.regions.is_empty(), "{group}: `{id}` lies nowhere");
                if let Some(whole) = &part.part_of {
                    assert!(anatomy.parts.contains_key(whole), "{group}: `{id}` belongs to `{whole}`, which is not there");
                }
            }
        }
    }

    #[test]
    fn a_part_is_found_by_another_name() {
        let pig = &Builtin::get().anatomy["pig"];
        assert_eq!(pig.find("shoulder-node").unwrap().0, "prescapular-node");
        assert_eq!(pig.find("prescapular-node").unwrap().0, "prescapular-node");
        assert!(pig.find("keel").is_none());
    }
}
