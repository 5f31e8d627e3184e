//! `chain-table.html`: what house cuts make of a starting piece, down to the last cut.

use serde::Serialize;

use super::downloads::Download;
use super::frame::{Frame, Link};
use super::guide::Start;
use crate::figures::YieldTable;

/// `chain-table.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChainPage {
    /// The frame.
    pub page: Frame,
    /// The chain.
    pub chain: Chain,
    /// Its figures as files.
    pub downloads: Vec<Download>,
    /// The start of its first guide.
    pub start: Start,
}

/// A chain of house cuts.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Chain {
    /// The id of the starting piece.
    pub piece: String,
    /// The page with the table.
    pub href: String,
    /// The guides in the order of work.
    pub guides: Vec<Link>,
    /// Final pieces over the whole chain.
    #[serde(flatten)]
    pub table: YieldTable,
}
