//! `class-sheet.html`: what a class takes to the bench on paper: what to wear, what the piece should give, room to write
//! what it gave, and questions. Answers are in none of these types.

use serde::Serialize;

use super::caution::CautionGroup;
use super::frame::{Frame, Link};
use crate::figures::Kind;
use crate::figures::share::Percent;

/// `class-sheet.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ClassSheetPage {
    /// The frame.
    pub page: Frame,
    /// What stands on paper only once, and around the sheets.
    pub class: Class,
    /// The sheets in order.
    pub sheets: Vec<ClassSheet>,
}

/// A class sheet.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Class {
    /// What the guide is called.
    pub title: String,
    /// The guide's own page.
    pub guide_href: String,
    /// Other views of the guide.
    pub ways: Vec<Link>,
    /// Id, revision and date, on every sheet.
    pub strip: String,
    /// `draft` or `withdrawn`, large on every sheet; empty when in force.
    pub mark: &'static str,
    /// The piece that the work starts from.
    pub start: String,
    /// Its weights: `6–9 kg`.
    pub weight: String,
    /// `kg` or `lb`.
    pub unit: &'static str,
    /// On what basis it is weighed; may be empty.
    pub basis: String,
    /// How cold it arrives; may be empty.
    pub temperature: String,
    /// Minutes of work; empty when not known.
    pub minutes: String,
    /// The limit on the temperature of the piece; empty where all rules are silent.
    pub hold: String,
    /// The longest time out of the cold; empty where none is set.
    pub time_out: String,
    /// What is done when that is missed; may be empty.
    pub if_missed: String,
    /// Every tool once; each entry is a choice of one or several.
    pub tools: Vec<Vec<String>>,
    /// What is worn in most steps.
    pub wear: Vec<String>,
    /// Steps in which something else is worn or something comes off.
    pub other_wear: Vec<StepWear>,
    /// The share that is lost on the way; absent when nothing is.
    pub loss: Option<Percent>,
    /// True when all shares are own judgement.
    pub own_judgement: bool,
}

/// What is worn in one step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct StepWear {
    /// Counts from 1.
    pub number: usize,
    /// Worn.
    pub wear: Vec<String>,
    /// Taken off.
    pub take_off: Vec<String>,
}

/// One sheet. What is empty stands on another sheet.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
pub struct ClassSheet {
    /// Counts from 1.
    pub number: usize,
    /// Rows of the table to weigh into.
    pub rows: Vec<WeighRow>,
    /// True where the table begins.
    pub begins: bool,
    /// True where the table ends, with the check of the sum below it.
    pub ends: bool,
    /// What can hurt.
    pub hurt: Vec<CautionGroup>,
    /// Questions.
    pub questions: Vec<ClassQuestion>,
}

/// A row to weigh into.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeighRow {
    /// The piece; empty for the sum of a use.
    pub name: String,
    /// True for a piece whose name says what it is for.
    pub named_by_use: bool,
    /// What becomes of it.
    pub kind: Kind,
    /// Percent of the start.
    pub low: String,
    /// See `low`.
    pub typical: String,
    /// See `low`.
    pub high: String,
}

/// A question without its answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ClassQuestion {
    /// Counts from 1 over the whole sheet.
    pub number: usize,
    /// The step that it belongs to, counted from 1.
    pub step: usize,
    /// The question, plain.
    pub question: String,
}
