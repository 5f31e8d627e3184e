//! `guide.html`: a procedure, and `guide-table.html`: its yields.

use serde::Serialize;

use super::caution::CautionGroup;
use super::frame::{Frame, Link};
use super::step::Step;
use crate::figures::{YieldRow, YieldTable};

/// `guide.html`.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GuidePage {
    /// The frame.
    pub page: Frame,
    /// The guide.
    pub guide: Guide,
}

/// A guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Guide {
    /// Its id: `pork/loin-boneless`.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// What it is for; may be empty.
    pub purpose_html: String,
    /// The level of training; may be empty.
    pub level: String,
    /// True for the usual way to break the piece here.
    pub house_cut: bool,
    /// What the work starts from.
    pub start: Start,
    /// Minutes of work; empty when not known.
    pub minutes: String,
    /// Minutes to set up; may be empty.
    pub set_up: String,
    /// Minutes to clean up; may be empty.
    pub clean: String,
    /// The longest time out of the cold; empty when not known.
    pub longest_out: String,
    /// Every stretch out of the cold, in the order of the work; empty when not known.
    pub stretches: Vec<Stretch>,
    /// Other views of the guide: at the bench, on paper, in the room.
    pub ways: Vec<Link>,
    /// The parts of the animal, when they are known.
    pub anatomy: Option<Link>,
    /// Guides to know first.
    pub needs: Vec<Link>,
    /// Allergens.
    pub allergens: Vec<String>,
    /// The age of the animal in words; may be empty.
    pub age: String,
    /// True for what is eaten raw.
    pub served_raw: bool,
    /// All dangers, warnings, cautions and notices once, the strongest first.
    pub hurt: Vec<CautionGroup>,
    /// The profile of limits.
    pub limits: Limits,
    /// The page of limits.
    pub limits_href: String,
    /// The class of product, whose limits stand there at `product-` and this; empty when it is not known.
    pub product: &'static str,
    /// The cold clock; empty when there is none.
    pub cold_href: String,
    /// The steps.
    pub steps: Vec<Step>,
    /// True when the procedure states yields alone: there is one step and no instruction in it.
    pub yields_only: bool,
    /// The yields; absent when they could not be computed.
    pub yields: Option<Yields>,
    /// Questions.
    pub questions: Vec<Question>,
    /// What is done after the cutting; may be empty.
    pub after_work_html: String,
    /// Where the figures come from, each as HTML without blocks around.
    pub sources_html: Vec<String>,
    /// Accepted advice.
    pub waivers: Vec<Waiver>,
    /// The control block.
    pub control: Control,
    /// The file as it was written.
    pub source_href: String,
}

/// What the work starts from.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Start {
    /// The piece.
    pub name: String,
    /// The piece among all pieces.
    pub piece_href: String,
    /// Guides that give it.
    pub from: Vec<Link>,
    /// The weights for which the guide is written: `6–9 kg`.
    pub weight: String,
    /// The lowest and the highest as numbers of the unit of tables.
    pub low: String,
    /// See `low`.
    pub high: String,
    /// On what basis it is weighed; may be empty.
    pub basis: String,
    /// How cold it arrives; may be empty.
    pub temperature: String,
    /// The animal's side: `left`, `right`, `both` or empty.
    pub side: &'static str,
}

/// A stretch out of the cold.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stretch {
    /// Its first step, counted from 1.
    pub from: usize,
    /// Its last step.
    pub to: usize,
    /// From the shortest to the longest.
    pub time: String,
}

/// The profile of limits against which the guide was held.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Limits {
    /// Its name; empty when the guidebook names none.
    pub name: String,
    /// Where it holds.
    pub jurisdiction: String,
    /// The text from which the figures were taken.
    pub edition: String,
    /// What it covers and what not.
    pub about: String,
    /// Limits that the shop set stricter.
    pub stricter: Vec<Stricter>,
}

/// A limit of the shop.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Stricter {
    /// Which: `time-out`.
    pub limit: &'static str,
    /// The figure as it was written.
    pub at_most: String,
    /// Who watches it; may be empty.
    pub watch: String,
    /// How often; may be empty.
    pub every: String,
    /// What is done when it is missed; may be empty.
    pub if_missed: String,
}

/// The yields of a guide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Yields {
    /// The table.
    #[serde(flatten)]
    pub table: YieldTable,
    /// Beside the rows of the table, by id of the piece: where it leads and what the figures rest on.
    pub rows: Vec<EvidenceRow>,
    /// True when the rows rest on different things, so that each must say on what.
    pub mixed: bool,
    /// What all rows rest on: `source`, `own`, or empty when they differ or are tested.
    pub rests_on: &'static str,
    /// How many pieces are for the counter.
    pub retail: usize,
    /// How many are cut further.
    pub for_cutting: usize,
    /// The drawing of where the weight goes.
    pub drawing: Drawing,
    /// The page with the yield of every step, relative to the page.
    pub table_href: String,
}

/// A row of the table with its evidence.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct EvidenceRow {
    /// The row.
    #[serde(flatten)]
    pub row: YieldRow,
    /// The guide that cuts it further; empty when there is none.
    pub href: String,
    /// `tested`, `source`, `own`, or empty for the loss.
    pub rests_on: &'static str,
    /// How many weighed runs, when tested.
    pub runs: usize,
}

/// A drawing in a file.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Drawing {
    /// Relative to the page.
    pub src: String,
    /// Pixels.
    pub width: u32,
    /// Pixels.
    pub height: u32,
}

/// A question with its answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Question {
    /// The step that it belongs to, counted from 1.
    pub step: usize,
    /// The question, plain.
    pub question: String,
    /// The answer.
    pub answer_html: String,
}

/// One waiver.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Waiver {
    /// What was advised and is accepted, each advice a sentence; empty when the waiver accepts nothing.
    pub advice_html: Vec<String>,
    /// What it is about: the number of a step, which leads there, or a key without a link.
    pub target: Link,
    /// Why.
    pub reason: String,
    /// Who accepts it.
    pub by: String,
    /// Until when, in words; may be empty.
    pub until: String,
    /// The check by its id, which leads to its text.
    pub check: Link,
}

/// The control block.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Control {
    /// Revision number.
    pub number: u32,
    /// `draft`, `in-force` or `withdrawn`.
    pub state: &'static str,
    /// The date in words: `2 March 2026`.
    pub date: String,
    /// The date as `2026-03-02`.
    pub date_iso: String,
    /// Who wrote it.
    pub author: String,
    /// Who answers for it.
    pub owner: String,
    /// Who approved it; may be empty.
    pub approved_by: String,
    /// When it is looked at again, in words; may be empty.
    pub review_by: String,
    /// Likewise as `2027-03-02`.
    pub review_by_iso: String,
    /// What changed; may be empty.
    pub change_html: String,
    /// Likewise, the first paragraph on one line.
    pub change: String,
}
