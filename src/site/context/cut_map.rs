//! `cut-map.html`: all pieces of a species and the guides between them, drawn, and the same in a table.

use serde::Serialize;

use super::frame::{Frame, Link};
use super::guide::Drawing;
use crate::figures::Figure;

/// `cut-map.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CutMapPage {
    /// The frame.
    pub page: Frame,
    /// What the species is called.
    pub name: String,
    /// The drawing.
    pub drawing: Drawing,
    /// The same in parts for paper, where it is too long for one sheet; else none.
    pub parts: Vec<Drawing>,
    /// How many pieces there are.
    pub pieces: usize,
    /// The guides in the order of the map.
    pub guides: Vec<Link>,
    /// The pieces by what their shares are of, in the order of the map; those without a share last.
    pub wholes: Vec<MapWhole>,
}

/// Pieces whose shares are of one start.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapWhole {
    /// The start; empty for pieces without a share.
    pub name: String,
    /// Its worked weight: `40`.
    pub weight: String,
    /// `kg` or `lb`.
    pub unit: &'static str,
    /// The pieces.
    pub rows: Vec<MapRow>,
    /// What is lost on the way, when something is.
    pub loss: Option<Figure>,
}

/// A piece of the map.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MapRow {
    /// The piece among all pieces.
    pub piece: Link,
    /// What becomes of it, by id; `on` for a piece that its own guide takes up again, empty for a start that no guide gives.
    pub kind: &'static str,
    /// Its share and weight.
    pub figure: Option<Figure>,
    /// The guides that give it.
    pub from: Vec<Link>,
    /// The guides that cut it up.
    pub to: Vec<Link>,
    /// The steps that take it up again in the guide that gives it.
    pub inside: Vec<InsideLink>,
}

/// A step inside a guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct InsideLink {
    /// The step, counted from 1.
    pub number: usize,
    /// The step in its guide.
    pub href: String,
    /// What the guide is called.
    pub guide: String,
}
