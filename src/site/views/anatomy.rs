//! Bones, muscles, tissues and glands of a species, region by region, each with the steps that name it.
//!
//! A part is told once, in the region that it names first; its other regions link to it.

use std::collections::BTreeMap;

use super::Views;
use super::frame::About;
use crate::analysis::anatomy::{Anatomy, named_parts};
use crate::analysis::risk_material::entries;
use crate::figures::numbers::joined;
use crate::figures::yield_table::capitalised;
use crate::model::Procedure;
use crate::model::words::{PartKind, Verified};
use crate::site::context::anatomy::{AnatomyPage, KindParts, Part, Region, Risk};
use crate::site::context::frame::Link;
use crate::site::escape::keep_units;
use crate::site::paths;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

/// Regions from the head to the tail; others follow by name, the inside comes last.
const ORDER: &[&str] = &[
    "head", "neck", "chuck", "shoulder", "wing", "rack", "rib", "back", "saddle", "loin", "rump", "chump", "breast", "brisket", "plate",
    "belly", "flank", "body", "edge", "round", "leg", "haunch", "shank", "foot", "tail",
];
/// Comes after all other regions.
const INSIDE: &str = "inside";

/// What is told in a region: its parts, and links to those that reach in.
#[derive(Debug, Default)]
struct Told {
    parts: Vec<Part>,
    more: Vec<Link>,
}

impl Views<'_> {
    /// What `anatomy.html` gets.
    pub(super) fn anatomy(&self, path: &str, species: &str) -> Result<AnatomyPage, ThemeError> {
        let name = self.species_name(species);
        let page = self.frame(About {
            path,
            title: self.engine.words.with("anatomy-title", &[("species", name.as_str().into())])?,
            trail: vec![self.home_link(path), Link { name: name.clone(), href: paths::link(path, &paths::species(species)) }],
            procedure: None,
            data: None,
            look: Look::Anatomy,
            paints: Vec::new(),
            scripts: &[],
            anchor: "main",
        })?;
        let regions = match self.anatomies.get(species) {
            Some(anatomy) => self.regions_of(path, anatomy)?,
            None => Vec::new(),
        };
        let parts = || regions.iter().flat_map(|region| &region.kinds).flat_map(|kind| &kind.parts);
        Ok(AnatomyPage {
            page,
            name,
            count: parts().count(),
            glands: parts().any(|part| part.kind == PartKind::Gland.word()),
            risk_material: parts().any(|part| !part.risk.is_empty()),
            species_href: paths::link(path, &paths::species(species)),
            pieces_href: paths::link(path, &paths::pieces_of(species)),
            limits_href: paths::link(path, paths::LIMITS),
            regions,
        })
    }

    /// The link from a page to a part of the animal, by the name that an author gave it.
    pub(super) fn part_link(&self, page: &str, procedure: &Procedure, part: &str) -> Link {
        let species = procedure.species.value().map_or("", String::as_str);
        let id = self.anatomies.get(species).and_then(|anatomy| anatomy.id_of(part));
        Link { name: self.part_name(procedure, part), href: id.map_or_else(String::new, |id| part_href(page, species, id)) }
    }

    /// The page of a species' anatomy, when there is one.
    pub(super) fn anatomy_link(&self, page: &str, species: &str) -> Result<Option<Link>, ThemeError> {
        if !self.anatomies.contains_key(species) {
            return Ok(None);
        }
        let name = self.engine.words.with("anatomy-title", &[("species", self.species_name(species).into())])?;
        Ok(Some(Link { name, href: paths::link(page, &paths::anatomy(species)) }))
    }

    fn regions_of(&self, page: &str, anatomy: &Anatomy<'_>) -> Result<Vec<Region>, ThemeError> {
        let steps = self.steps_by_part(anatomy);
        let mut regions: BTreeMap<(usize, &str), Told> = BTreeMap::new();
        for part in anatomy.parts() {
            let Some(told) = anatomy.told(part.id) else { continue };
            let mut places = part.regions.iter().map(|region| place(region));
            let home = places.next().unwrap_or_else(|| place(""));
            let name = capitalised(&told.name);
            for other in places {
                regions.entry(other).or_default().more.push(Link { name: name.clone(), href: format!("#part-{}", part.id) });
            }
            let part_of =
                part.part_of.and_then(|whole| Some(Link { name: capitalised(&anatomy.told(whole)?.name), href: format!("#part-{whole}") }));
            let entry = Part {
                id: part.id.to_owned(),
                name,
                also: told.also.iter().map(|name| (*name).to_owned()).collect(),
                kind: part.kind.map_or("", PartKind::word),
                count: part.count.map_or_else(String::new, |count| joined(&count.low.to_string(), &count.high.to_string())),
                spread: part.count.is_some_and(|count| count.low != count.high),
                paired: part.paired,
                part_of,
                regions: part.regions.iter().map(|region| self.region_name(region)).collect::<Result<_, _>>()?,
                does: keep_units(told.does),
                lies: keep_units(told.lies),
                risk: self.risk(page, anatomy, part.id)?,
                sources: told.sources.iter().map(|source| keep_units(source)).collect(),
                verified: told.verified.map_or("", Verified::word),
                steps: steps.get(part.id).into_iter().flatten().filter_map(|(at, steps)| self.in_guide(page, *at, steps)).collect(),
            };
            regions.entry(home).or_default().parts.push(entry);
        }
        let region = |((_, id), mut told): ((usize, &str), Told)| {
            told.more.sort_by(|one, other| one.name.cmp(&other.name));
            Ok(Region { id: id.to_owned(), name: self.region_name(id)?, kinds: by_kind(told.parts), more: told.more })
        };
        regions.into_iter().map(region).collect()
    }

    /// The steps that name each part, by its id: the guide's position with the steps, counted from 0.
    fn steps_by_part<'a>(&self, anatomy: &Anatomy<'a>) -> BTreeMap<&'a str, Vec<(usize, Vec<usize>)>> {
        let mut found: BTreeMap<&str, Vec<(usize, Vec<usize>)>> = BTreeMap::new();
        for at in self.procedures_of(anatomy.species) {
            let steps = self.book.procedures.get(at).map_or(&[][..], |procedure| &procedure.steps);
            for (position, step) in steps.iter().enumerate() {
                for id in named_parts(step).filter_map(|part| anatomy.id_of(&part.value)) {
                    let guides = found.entry(id).or_default();
                    match guides.last_mut() {
                        Some((guide, steps)) if *guide == at => {
                            if steps.last() != Some(&position) {
                                steps.push(position);
                            }
                        }
                        _ => guides.push((at, vec![position])),
                    }
                }
            }
        }
        found
    }

    /// The rules of the profile that make a part risk material.
    fn risk(&self, page: &str, anatomy: &Anatomy<'_>, part: &str) -> Result<Vec<Risk>, ThemeError> {
        let listed = entries(self.book, anatomy.species).filter(|limit| limit.parts.iter().any(|own| anatomy.is(own, part)));
        let risk = listed.map(|limit| {
            let href = paths::anchored(paths::link(page, paths::LIMITS), &format!("limit-{}", limit.id));
            Ok(Risk { age: self.age_bound(limit)?, href, from_memory: limit.verified == Verified::Memory })
        });
        risk.collect()
    }

    fn region_name(&self, region: &str) -> Result<String, ThemeError> {
        match region {
            "" => self.engine.words.plain("region-none").map(str::to_owned),
            INSIDE => self.engine.words.plain("region-inside").map(str::to_owned),
            other => Ok(capitalised(&other.replace('-', " "))),
        }
    }
}

/// The place of a part on the page of its species.
fn part_href(page: &str, species: &str, id: &str) -> String {
    paths::anchored(paths::link(page, &paths::anatomy(species)), &format!("part-{id}"))
}

/// Where a region stands on the page.
fn place(region: &str) -> (usize, &str) {
    let known = ORDER.iter().position(|known| *known == region);
    (known.unwrap_or(ORDER.len() + usize::from(region == INSIDE) + 2 * usize::from(region.is_empty())), region)
}

/// Bones first, then muscles, tissues and glands; each by name.
fn by_kind(parts: Vec<Part>) -> Vec<KindParts> {
    let mut kinds: Vec<KindParts> = PartKind::ALL.iter().map(|kind| KindParts { kind: kind.word(), parts: Vec::new() }).collect();
    for part in parts {
        if let Some(kind) = kinds.iter_mut().find(|kind| kind.kind == part.kind) {
            kind.parts.push(part);
        }
    }
    kinds.retain(|kind| !kind.parts.is_empty());
    for kind in &mut kinds {
        kind.parts.sort_by(|one, other| one.name.cmp(&other.name));
    }
    kinds
}
