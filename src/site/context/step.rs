//! A step of a guide.

use serde::Serialize;

use super::caution::CautionGroup;
use super::frame::Link;
use crate::figures::{Output, StepBar};

/// One step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Step {
    /// Counts from 1.
    pub number: usize,
    /// Its id; the anchor is `step-` and this.
    pub id: String,
    /// What is done.
    pub name: String,
    /// The pieces taken.
    pub takes: Vec<Link>,
    /// `2–5 min`; empty when not stated.
    pub minutes: String,
    /// The time of the step as often as it is done before the next begins, for a clock; absent when not stated.
    pub clock: Option<Clock>,
    /// Tools; each entry is a choice of one or several.
    pub tools: Vec<Vec<String>>,
    /// What is worn.
    pub wear: Vec<String>,
    /// Protection that comes off, because a tool of the step forbids it.
    pub never_wear: Vec<String>,
    /// The animal's side: `left`, `right`, `both` or empty.
    pub side: &'static str,
    /// True when the blade comes toward the body.
    pub draws_toward_body: bool,
    /// How many are worked one after another while all lie out; 1 when one.
    pub at_once: u32,
    /// Cautions of this step, and the dangers and warnings that cover every step.
    pub cautions: Vec<CautionGroup>,
    /// Steps that anatomy wants done first, with the reason.
    pub after: Vec<After>,
    /// Pictures.
    pub pictures: Vec<Picture>,
    /// How it is done.
    pub do_html: String,
    /// Where the other hand is; may be empty.
    pub hold_html: String,
    /// What is seen or felt; may be empty.
    pub landmark_html: String,
    /// What goes back to the cold: empty, `all`, or `pieces`.
    pub back_to_cold: &'static str,
    /// The names of those pieces.
    pub back_pieces: Vec<String>,
    /// What comes out, the loss last.
    pub outputs: Vec<StepOutput>,
    /// All of that as one bar, for the component `step_bar`; absent where the figures are not known.
    pub bar: Option<StepBar>,
    /// Anatomical parts, each with its place on the page of its species; without a link where that has none.
    pub anatomy: Vec<Link>,
    /// Why the cut goes there; may be empty.
    pub anatomy_html: String,
    /// A good result; may be empty.
    pub good_html: String,
    /// What goes wrong; may be empty.
    pub mistakes_html: String,
}

/// The time that a step takes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Clock {
    /// In words: `12–30 min`.
    pub time: String,
    /// The shortest, seconds.
    pub low: i64,
    /// The longest, seconds.
    pub high: i64,
}

/// A step that comes first for a reason.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct After {
    /// Its number.
    pub number: usize,
    /// Its id.
    pub id: String,
    /// The reason, plain.
    pub why: String,
}

/// A piece that comes out of a step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepOutput {
    /// What it is called; empty for the loss.
    pub name: String,
    /// The piece among all pieces; empty for the loss.
    pub piece_href: String,
    /// The guide that cuts it further; empty when there is none.
    pub href: String,
    /// What it weighs and where it goes.
    #[serde(flatten)]
    pub figure: Output,
    /// The id of the step that takes it; empty when none does.
    pub to_id: String,
    /// How many lie there together; 1 when one.
    pub pieces: u32,
    /// True when other steps give to it too.
    pub tub: bool,
    /// Counted parts inside: `ribs 10–14`.
    pub counts: Vec<String>,
    /// The weight of one portion: `180–220 g`; empty when none is stated.
    pub portion: String,
    /// Likewise the thickness.
    pub thickness: String,
    /// How many portions come of all pieces together: `14–17`; empty when not known.
    pub portions: String,
    /// The animal's side: `left`, `right`, `both` or empty.
    pub side: &'static str,
}

/// A picture of a step.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Picture {
    /// Relative to the page.
    pub src: String,
    /// What one sees.
    pub alt: String,
    /// The words under it; may be empty.
    pub caption: String,
    /// The animal's side: `left`, `right`, `both` or empty.
    pub side: &'static str,
    /// Pixels.
    pub width: u32,
    /// Pixels.
    pub height: u32,
    /// Lines drawn over it, in pixels of the picture.
    pub lines: Vec<Line>,
    /// The size of words beside those lines, in pixels of the picture.
    pub label_size: u32,
}

/// A labelled line over a picture.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Line {
    /// The words.
    pub label: String,
    /// As SVG takes them: `12,40 85,44`.
    pub points: String,
    /// Where the words begin.
    pub x: String,
    /// Where the words stand.
    pub y: String,
    /// `start`, `middle` or `end`, so that the words stay inside the picture.
    pub anchor: &'static str,
}
