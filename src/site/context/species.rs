//! `species.html`: the guides of a species, and what whole pieces become.

use serde::Serialize;

use super::chain::Chain;
use super::frame::{Frame, Link};
use super::home::GuideRow;

/// `species.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesPage {
    /// The frame.
    pub page: Frame,
    /// What the species is called.
    pub name: String,
    /// Its guides.
    pub guides: Vec<GuideRow>,
    /// What house cuts make of the pieces with which the work on this species begins.
    pub chains: Vec<Chain>,
    /// Its cut map; empty when it has more pieces than one can be read of.
    pub cut_map_href: String,
    /// The tables of the species.
    pub tables_href: String,
    /// Its bones, muscles and glands, when they are known.
    pub anatomy: Option<Link>,
}
