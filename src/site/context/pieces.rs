//! `pieces.html`: the names of all pieces, and `pieces-of-species.html`: those of a species, with the guides that make
//! them and cut them further.

use serde::Serialize;

use super::frame::{Frame, Link};

/// `pieces.html`: the names of all pieces.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PiecesPage {
    /// The frame.
    pub page: Frame,
    /// How many pieces there are.
    pub count: usize,
    /// Species in the order of their ids.
    pub species: Vec<SpeciesCount>,
    /// All names by their first letter; empty when they are too many for one page.
    pub letters: Vec<LetterNames>,
}

/// A species with how many pieces it has.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesCount {
    /// The id of the species; the anchor is `species-` and this.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// How many pieces it has.
    pub count: usize,
    /// The page of its pieces.
    pub href: String,
}

/// Names with the same first letter.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LetterNames {
    /// The letter, or `0–9`.
    pub letter: String,
    /// In the order of the letters.
    pub names: Vec<PieceName>,
}

/// A name of a piece.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PieceName {
    /// The id of the piece where this is what it is called here, whose anchor is `piece-` and this; else empty.
    pub id: String,
    /// The name.
    pub name: String,
    /// The region in which it is used, as it is read: `UK`; empty for everywhere.
    pub region: String,
    /// What the piece is called here, where that is another name; else empty.
    pub of: String,
    /// The species.
    pub species: String,
    /// The piece on the page of its species.
    pub href: String,
}

/// `pieces-of-species.html`: the pieces of a species.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpeciesPiecesPage {
    /// The frame.
    pub page: Frame,
    /// What the species is called.
    pub name: String,
    /// The page of the species; empty when it has no guide.
    pub species_href: String,
    /// Its bones, muscles and glands, when they are known.
    pub anatomy: Option<Link>,
    /// How many pieces there are.
    pub count: usize,
    /// Regions of the animal in the order in which the cut list names them.
    pub regions: Vec<RegionPieces>,
}

/// The pieces of a region of the animal.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RegionPieces {
    /// What it is called; empty for pieces of no one region.
    pub name: String,
    /// False for pieces that no cut list names.
    pub listed: bool,
    /// In the order of the cut list.
    pub pieces: Vec<Piece>,
}

/// A piece.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Piece {
    /// Its id; the anchor is `piece-` and this.
    pub id: String,
    /// What it is called here.
    pub name: String,
    /// Other trade names, those of the guidebook's own region first.
    pub names: Vec<TradeName>,
    /// Codes in the order in which they stand.
    pub codes: Vec<Code>,
    /// The usual weight of one; may be empty.
    pub weight: String,
    /// How many an animal has; 0 when not stated.
    pub per_animal: u32,
    /// Where it lies; may be empty.
    pub lies: String,
    /// What becomes of it: each use once, by id.
    pub uses: Vec<&'static str>,
    /// The steps that give it.
    pub made: Vec<InGuide>,
    /// The steps that cut it up in the same guide.
    pub taken: Vec<InGuide>,
    /// The guides that start from it.
    pub becomes: Vec<Start>,
}

/// Another trade name.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TradeName {
    /// The name.
    pub name: String,
    /// The region in which it is used, as it is read: `UK`; empty for everywhere.
    pub region: String,
}

/// The number of a piece in a system of codes.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Code {
    /// The system: `IMPS`.
    pub system: String,
    /// The number or letters.
    pub code: String,
}

/// A guide with some of its steps.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct InGuide {
    /// The guide.
    pub guide: Link,
    /// Steps that give or take the piece.
    pub steps: Vec<StepLink>,
}

/// A link to a step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepLink {
    /// Counts from 1.
    pub number: usize,
    /// Relative to the page.
    pub href: String,
}

/// A guide that starts from a piece.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Start {
    /// The guide.
    pub guide: Link,
    /// True for the usual way to break the piece here.
    pub house_cut: bool,
}
