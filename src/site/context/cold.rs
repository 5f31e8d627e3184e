//! `cold.html`: the cold clock of a procedure.

use serde::Serialize;

use super::frame::{Frame, Link};
use super::guide::{Control, Drawing};

/// `cold.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ColdPage {
    /// The frame.
    pub page: Frame,
    /// The id of the procedure.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// The guide.
    pub guide_href: String,
    /// How cold the start arrives; may be empty.
    pub temperature: String,
    /// The highest temperature at which it may arrive, with the limit behind it.
    pub hold: Option<Limit>,
    /// The longest time out of the cold, with the limit behind it; absent where no rule sets one.
    pub limit: Option<Limit>,
    /// True when all stretches of a piece add up against the limit.
    pub cumulative: bool,
    /// The limit of the shop, when it is the one that holds.
    pub own: Option<super::guide::Stricter>,
    /// The drawing; absent when a step has no minutes.
    pub drawing: Option<Drawing>,
    /// Steps without minutes, with which no longest time is known.
    pub unknown: Vec<Step>,
    /// A row for every stretch of every piece.
    pub rows: Vec<Row>,
    /// The control block.
    pub control: Control,
}

/// A limit in short.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limit {
    /// The figure: `30 min`, `7 °C`.
    pub figure: String,
    /// True when the shop sets it, false when the profile does.
    pub own: bool,
    /// Where it stands with its source.
    pub href: String,
    /// What to know about it; may be empty.
    pub note: String,
}

/// A step by its number.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Counts from 1.
    pub number: usize,
    /// Its place in the guide.
    pub href: String,
}

/// One stretch of one piece; minutes as numbers, empty when not known.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Row {
    /// The piece among all pieces.
    pub piece: Link,
    /// The first step, counted from 1.
    pub from: usize,
    /// The last step.
    pub to: usize,
    /// The shortest time.
    pub shortest: String,
    /// The longest time.
    pub longest: String,
    /// The shortest time with all stretches before.
    pub shortest_in_all: String,
    /// Likewise the longest.
    pub longest_in_all: String,
    /// The limit; empty where none is set.
    pub limit: String,
    /// What the longest time leaves to the limit.
    pub left: String,
}
