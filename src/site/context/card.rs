//! `card.html`: a guide on sheets for the wall, every sheet written out.

use serde::Serialize;

use super::caution::CautionGroup;
use super::frame::{Frame, Link};
use crate::figures::Kind;

/// `card.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CardPage {
    /// The frame.
    pub page: Frame,
    /// What stands on paper only once, and around the sheets.
    pub card: Card,
    /// The sheets in order.
    pub sheets: Vec<CardSheet>,
    /// All steps by name, where the first sheet holds none of them and has room for this.
    pub overview: Vec<OverviewStep>,
}

/// A step by its name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OverviewStep {
    /// Counts from 1.
    pub number: usize,
    /// What is done.
    pub name: String,
    /// Minutes; empty when not stated.
    pub minutes: String,
    /// The sheet on which it stands, counted from 1.
    pub sheet: usize,
}

/// A wall card.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Card {
    /// What the guide is called.
    pub title: String,
    /// True where the sentences of each instruction would fill more than two sheets, and stand in the guide alone.
    pub short: bool,
    /// The guide's own page.
    pub guide_href: String,
    /// Other views of the guide.
    pub ways: Vec<Link>,
    /// Id, revision and date, on every sheet.
    pub strip: String,
    /// `draft` or `withdrawn`, large on every sheet; empty when in force.
    pub mark: &'static str,
    /// The revision.
    pub number: u32,
    /// The piece, its weight and how cold it arrives: `Loin, bone-in, 6–9 kg, 0–4 °C`.
    pub start: String,
    /// Minutes of work; empty when not known.
    pub minutes: String,
    /// The limit on the temperature of the piece: `7 °C`; empty where all rules are silent.
    pub hold: String,
    /// The longest time out of the cold: `30 min`; empty where none is set.
    pub time_out: String,
    /// Every tool once; each entry is a choice of one or several.
    pub tools: Vec<Vec<String>>,
    /// What is worn in most steps.
    pub wear: Vec<String>,
    /// Cautions and notices that cover every step.
    pub weaker: Vec<CautionGroup>,
    /// The code to scan; absent where the guidebook states no address.
    pub code: Option<Code>,
}

/// The code that opens the guide with the card's revision.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Code {
    /// The address that it holds.
    pub address: String,
    /// The same inside the site.
    pub href: String,
    /// Modules along one side.
    pub side: usize,
    /// Dark modules as an SVG path.
    pub path: String,
    /// Its width on paper: `28mm`.
    pub width: String,
}

/// One sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CardSheet {
    /// Counts from 1.
    pub number: usize,
    /// Dangers and warnings that cover every step, and all cautions of the steps of this sheet, whole.
    pub cautions: Vec<CautionGroup>,
    /// Likewise those that stand whole on an earlier sheet.
    pub again: Vec<CautionGroup>,
    /// How text is set: `wide`, `lines` (lines closer) or `close` (sentences run on too).
    pub set: &'static str,
    /// True where the text runs on from one column to the next.
    pub runs: bool,
    /// Steps by column; one list where the text runs on.
    pub columns: Vec<Vec<CardStep>>,
}

/// A step, or a part of one that no sheet holds whole.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CardStep {
    /// Counts from 1.
    pub number: usize,
    /// What is done.
    pub name: String,
    /// True for the second part of a step and those after it.
    pub continued: bool,
    /// `2–5 min`; empty when not stated.
    pub minutes: String,
    /// Cautions that stand at the head of the sheet, named here.
    pub named: Vec<NamedCautions>,
    /// What is worn, where it differs from most steps.
    pub wear: Vec<String>,
    /// True where that comes on top of what is worn in most steps.
    pub also: bool,
    /// Protection that a tool of the step forbids.
    pub take_off: Vec<String>,
    /// The instruction, sentence by sentence; none on a card in short.
    pub lines: Vec<String>,
    /// Where the other hand is; may be empty.
    pub hold: String,
    /// What is seen or felt; may be empty.
    pub landmark: String,
    /// What comes off.
    pub outputs: Vec<CardOutput>,
    /// What goes back to the cold: empty, `all`, or `pieces`.
    pub back_to_cold: &'static str,
    /// The names of those pieces.
    pub back_pieces: Vec<String>,
}

/// Names of cautions under one signal word.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct NamedCautions {
    /// `danger`, `warning`, `caution` or `notice`.
    pub signal: &'static str,
    /// True when some of them are cautions of every step of the sheet, which are not named.
    pub every: bool,
    /// Names of the others.
    pub names: Vec<String>,
}

/// What comes off.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CardOutput {
    /// What it is called; empty where the word for its use says the same.
    pub name: String,
    /// What becomes of it.
    pub kind: Kind,
    /// The step that takes it, counted from 1.
    pub to_step: Option<usize>,
    /// The typical share of the start in percent: `4.7`.
    pub typical: String,
}
