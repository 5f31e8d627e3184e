//! `tables.html`, `species-table.html` and `guide-table.html`: yields as tables.

use serde::Serialize;

use super::downloads::Download;
use super::frame::{Frame, Link};
use super::guide::{Control, Start, Yields};
use super::step::StepOutput;
use crate::figures::YieldTable;

/// `tables.html`: all tables.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TablesPage {
    /// The frame.
    pub page: Frame,
    /// What house cuts make of starting pieces.
    pub chains: Vec<Link>,
    /// Each species with the tables of its guides.
    pub species: Vec<SpeciesTables>,
}

/// The tables of a species.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesTables {
    /// What it is called.
    pub name: String,
    /// All its guides on one page.
    pub href: String,
    /// One for each guide.
    pub guides: Vec<Link>,
}

/// `species-table.html`: the yields of all guides of a species.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesTablePage {
    /// The frame.
    pub page: Frame,
    /// What the species is called.
    pub name: String,
    /// One table for each guide.
    pub guides: Vec<GuideYields>,
    /// What house cuts make of its starting pieces.
    pub chains: Vec<Link>,
    /// All figures as files.
    pub downloads: Vec<Download>,
}

/// The yields of one guide among others.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GuideYields {
    /// The id of the guide.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// The guide.
    pub href: String,
    /// The yield of every step.
    pub table_href: String,
    /// `draft`, `in-force` or `withdrawn`.
    pub state: &'static str,
    /// The table.
    pub table: YieldTable,
}

/// `guide-table.html`: the yields of a guide, step by step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GuideTablePage {
    /// The frame.
    pub page: Frame,
    /// The id of the guide.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// The guide's own page.
    pub guide_href: String,
    /// What the work starts from.
    pub start: Start,
    /// The yields.
    pub yields: Yields,
    /// The steps.
    pub steps: Vec<TableStep>,
    /// The control block.
    pub control: Control,
    /// Chains in which the guide stands.
    pub chains: Vec<Link>,
    /// The figures as files.
    pub downloads: Vec<Download>,
}

/// A step in a table.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TableStep {
    /// Counts from 1.
    pub number: usize,
    /// What is done.
    pub name: String,
    /// The pieces taken.
    pub takes: Vec<String>,
    /// What comes out, the loss last.
    pub outputs: Vec<StepOutput>,
}
