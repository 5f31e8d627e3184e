//! `limits.html`: the limits of the guidebook's profile and of the shop, each with its source.

use serde::Serialize;

use super::frame::{Frame, Link};

/// `limits.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitsPage {
    /// The frame.
    pub page: Frame,
    /// The profile; absent when the guidebook names none.
    pub profile: Option<Profile>,
    /// Limits that the shop sets itself.
    pub own: Vec<OwnLimit>,
    /// What holds for each class of product, those of the guidebook's guides first; empty without a profile.
    pub products: Vec<ProductLimits>,
    /// All limits by what they are about. One without limits is silent.
    pub stages: Vec<StageLimits>,
    /// Further things that the profile says nothing about, by the id of the stage.
    pub silent: Vec<&'static str>,
}

/// A profile of limits.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Profile {
    /// Its id: `eu-853`.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Where it holds.
    pub jurisdiction: String,
    /// What it covers and what not.
    pub about: String,
    /// The text from which the figures were taken.
    pub edition: String,
}

/// A limit of the shop.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OwnLimit {
    /// Which: `time-out`; the anchor is `own-` and this.
    pub limit: &'static str,
    /// The figure as it was written.
    pub at_most: String,
    /// Likewise in the other unit; empty for times.
    pub other: String,
    /// Who watches it; may be empty.
    pub watch: String,
    /// How often; may be empty.
    pub every: String,
    /// What is done when it is missed; may be empty.
    pub if_missed: String,
    /// The option of the profile that the figure asks for, or none.
    pub option: Option<Link>,
}

/// What holds for a class of product.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProductLimits {
    /// The class: `red-meat`; the anchor is `product-` and this.
    pub product: &'static str,
    /// True when a guide of the guidebook is about it.
    pub used: bool,
    /// Keeping cold, arriving, room, time out of the cold.
    pub cells: Vec<Cell>,
}

/// What a profile says on one thing for one class of product.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cell {
    /// What it is about: `hold`.
    pub stage: &'static str,
    /// The limits; empty where the profile is silent.
    pub limits: Vec<CellLimit>,
    /// The figure of the shop, which links to `own-` and the stage; may be empty.
    pub own: String,
}

/// A limit in short.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CellLimit {
    /// Its id; the anchor is `limit-` and this.
    pub id: String,
    /// The figure; empty for a limit in words alone.
    pub figure: String,
    /// The figure in the other unit; may be empty.
    pub other: String,
    /// True when it was written from memory.
    pub from_memory: bool,
}

/// All limits about one thing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StageLimits {
    /// What they are about: `hold`; the anchor is `stage-` and this.
    pub stage: &'static str,
    /// The limits in the order of the profile; empty where it is silent.
    pub limits: Vec<Entry>,
}

/// One limit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Entry {
    /// Its id; the anchor is `limit-` and this.
    pub id: String,
    /// The classes of product or species that it is for; empty for all.
    pub about: Vec<String>,
    /// The figure with its bound: `7 °C at most`; may be empty.
    pub figure: String,
    /// The figure in the other unit; may be empty.
    pub other: String,
    /// True when the source prints the other unit itself.
    pub other_printed: bool,
    /// The time with its bound: `within 4 h`; may be empty.
    pub time: String,
    /// How time counts: `single`, `cumulative` or empty.
    pub clock: &'static str,
    /// What is measured: `core`, `surface`, `air`, `water` or `none`.
    pub measures: &'static str,
    /// From which age on, in words; empty for any age.
    pub age: String,
    /// Parts of the animal that it lists, each with its place in the anatomy where there is one.
    pub parts: Vec<Link>,
    /// The rule in words.
    pub text: String,
    /// What to know about it; may be empty.
    pub note: String,
    /// True for an option that holds only where the guidebook asks for it.
    pub option: bool,
    /// True when it has words alone: no figure, no time and no parts.
    pub in_words: bool,
    /// `law`, `guidance`, `standard` or `repealed`.
    pub force: &'static str,
    /// How it was verified: `read`, `adopted`, `secondary`, `memory` or `practice`.
    pub verified: &'static str,
    /// Where it comes from.
    pub source: Source,
}

/// Where a limit comes from.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Source {
    /// The title of the rule.
    pub title: String,
    /// The section; may be empty.
    pub section: String,
    /// Who publishes it; may be empty.
    pub publisher: String,
    /// The edition; may be empty.
    pub edition: String,
    /// The year; may be empty.
    pub year: String,
    /// Where it was read, when elsewhere; may be empty.
    pub read_in: String,
}
