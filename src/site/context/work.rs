//! `bench.html` and `room.html`: a guide to work from and to teach from, with the same steps as the guide itself.

use serde::Serialize;

use super::caution::CautionGroup;
use super::frame::Frame;
use super::guide::Guide;

/// `bench.html` and `room.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WorkPage {
    /// The frame.
    pub page: Frame,
    /// The guide; its links are relative to this page, those between steps stay on it.
    pub guide: Guide,
    /// The guide's own page.
    pub guide_href: String,
    /// What lies ready and what is worn before the first cut.
    pub gear: Gear,
    /// Cautions about every step that stand beside none: the weaker ones.
    pub general: Vec<CautionGroup>,
}

/// What the whole work needs, each thing once, in the order of the work.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Gear {
    /// Tools.
    pub tools: Vec<Item>,
    /// What is worn.
    pub wear: Vec<Item>,
    /// Protection that a tool forbids, to be taken off at its steps.
    pub off: Vec<Item>,
}

/// One thing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Item {
    /// What it is called; several where one of them is enough.
    pub any_of: Vec<String>,
    /// The steps that need it, counted from 1.
    pub steps: Vec<usize>,
    /// True when every step does.
    pub every_step: bool,
}
