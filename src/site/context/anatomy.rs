//! `anatomy.html`: bones, muscles, tissues and glands of a species, region by region.

use serde::Serialize;

use super::frame::{Frame, Link};
use super::pieces::InGuide;

/// `anatomy.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AnatomyPage {
    /// The frame.
    pub page: Frame,
    /// What the species is called.
    pub name: String,
    /// How many parts there are.
    pub count: usize,
    /// True when glands are among them.
    pub glands: bool,
    /// True when the profile lists some of them as risk material.
    pub risk_material: bool,
    /// The page of the species.
    pub species_href: String,
    /// The pieces of the species.
    pub pieces_href: String,
    /// The limits.
    pub limits_href: String,
    /// Regions from the head to the tail.
    pub regions: Vec<Region>,
}

/// A region of the animal.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Region {
    /// Its id; the anchor is `region-` and this.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// The parts that are told here.
    pub kinds: Vec<KindParts>,
    /// Parts that reach in here and are told under another region.
    pub more: Vec<Link>,
}

/// Parts of one kind.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct KindParts {
    /// `bone`, `muscle`, `tissue` or `gland`.
    pub kind: &'static str,
    /// The parts by name.
    pub parts: Vec<Part>,
}

/// A part of the animal.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Part {
    /// Its id; the anchor is `part-` and this.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Other names.
    pub also: Vec<String>,
    /// `bone`, `muscle`, `tissue` or `gland`.
    pub kind: &'static str,
    /// How many there are, of a paired part on each side: `13–17`; empty when not told.
    pub count: String,
    /// True when the number is not the same in every animal.
    pub spread: bool,
    /// True when the animal has it on both sides.
    pub paired: bool,
    /// The larger part that it belongs to.
    pub part_of: Option<Link>,
    /// The regions in which it lies.
    pub regions: Vec<String>,
    /// What it does; may be empty.
    pub does: String,
    /// Where it lies; may be empty.
    pub lies: String,
    /// Where it is risk material, by the profile.
    pub risk: Vec<Risk>,
    /// Where the facts come from, one text a source.
    pub sources: Vec<String>,
    /// How that was verified: `read`, `adopted`, `secondary`, `memory`, `practice`; empty for the guidebook's own entry.
    pub verified: &'static str,
    /// The steps that name it.
    pub steps: Vec<InGuide>,
}

/// A rule that makes a part risk material.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Risk {
    /// From which age on, in words.
    pub age: String,
    /// The rule with its source.
    pub href: String,
    /// True when it was written from memory.
    pub from_memory: bool,
}
