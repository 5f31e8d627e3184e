//! A breakdown procedure as it is meant: steps, pieces, shares, and the control block.

use jiff::civil::Date;

use super::age::Age;
use super::quantity::{Length, Mass, Minutes, Range, Share, Temperature};
use super::stated::{Spanned, Stated};
use super::words::{Parasites, Product, Side, State, Use};
use crate::finding::{FileId, Place};

/// A procedure.
#[derive(Debug, Clone)]
pub struct Procedure {
    /// Its path without the ending: `pork/loin-boneless`.
    pub id: String,
    /// The file that holds it.
    pub file: FileId,
    /// The first line of the file's mapping.
    pub place: Place,
    /// What the guide is called.
    pub title: Stated<String>,
    /// The species.
    pub species: Stated<String>,
    /// True for the usual way to break this piece here, with the place of the value.
    pub house_cut: Stated<bool>,
    /// The control block.
    pub revision: Revision,
    /// What the work starts from.
    pub start: Start,
    /// The steps in the order of work. A procedure that states `yields` alone has one step that takes the start.
    pub steps: Vec<Step>,
    /// True when the one step was made from `yields` alone.
    pub steps_from_yields: bool,
    /// Declared shares of the start; empty when none are declared beside steps.
    pub yields: Vec<DeclaredYield>,
    /// What it is for (Markdown).
    pub purpose: Stated<String>,
    /// The level of training.
    pub level: Stated<String>,
    /// Guides to know first.
    pub needs: Vec<Spanned<String>>,
    /// The class of product that was stated; see `Guidebook::product_of` for the one that holds.
    pub product: Stated<Product>,
    /// Eaten raw.
    pub served_raw: Stated<bool>,
    /// How parasites are dealt with.
    pub parasites: Stated<Parasites>,
    /// Allergens.
    pub allergens: Vec<Spanned<String>>,
    /// The age of the animal.
    pub age: Stated<Age>,
    /// Tools of each step that names none.
    pub tools: Stated<Vec<Spanned<ToolChoice>>>,
    /// What is worn in each step that names nothing.
    pub wear: Stated<Vec<Spanned<String>>>,
    /// Cautions that cover every step.
    pub cautions: Vec<Spanned<String>>,
    /// False when some of them could not be read.
    pub cautions_known: bool,
    /// Minutes to set up.
    pub set_up_minutes: Stated<Range<Minutes>>,
    /// Minutes to clean up.
    pub clean_minutes: Stated<Range<Minutes>>,
    /// What is done after the cutting (Markdown).
    pub after_work: Stated<String>,
    /// Where the figures come from.
    pub sources: Vec<Spanned<String>>,
    /// Accepted advice.
    pub waivers: Vec<Waiver>,
    /// Earlier ids.
    pub was: Vec<Spanned<String>>,
    /// False when some step could not be read at all, so that what is missing may have stood there.
    pub complete: bool,
}

/// The control block.
#[derive(Debug, Clone)]
pub struct Revision {
    /// Where the mapping begins.
    pub place: Place,
    /// Counts from 1.
    pub number: Stated<u32>,
    /// The day from which it counts.
    pub date: Stated<Date>,
    /// Who wrote it.
    pub author: Stated<String>,
    /// Who answers for it, when not the author.
    pub owner: Stated<String>,
    /// Who approved it.
    pub approved_by: Stated<String>,
    /// When to look at it again.
    pub review_by: Stated<Date>,
    /// What changed (Markdown).
    pub change: Stated<String>,
    /// Its state; `Absent` means in force.
    pub state: Stated<State>,
}

impl Revision {
    /// The state that holds: in force unless another was stated.
    #[must_use]
    pub fn state(&self) -> State {
        self.state.value().copied().unwrap_or(State::InForce)
    }
}

/// What the work starts from.
#[derive(Debug, Clone)]
pub struct Start {
    /// Where the mapping begins.
    pub place: Place,
    /// The piece.
    pub piece: Stated<String>,
    /// The weights for which the guide is written.
    pub weight: Stated<Range<Mass>>,
    /// The weight at which examples are worked; see `typical_mass`.
    pub typical: Stated<Mass>,
    /// On what basis it is weighed.
    pub basis: Stated<String>,
    /// How cold it arrives.
    pub temperature: Stated<Range<Temperature>>,
    /// The animal's side.
    pub side: Stated<Side>,
    /// Where the figures come from.
    pub sources: Vec<Spanned<String>>,
}

impl Start {
    /// The weight at which examples are worked: the stated one, else the middle of the range.
    #[must_use]
    pub fn typical_mass(&self) -> Option<Mass> {
        if let Some(mass) = self.typical.value() {
            return Some(*mass);
        }
        let range = self.weight.value()?;
        Some(Mass::from_picograms((range.low.picograms() + range.high.picograms()) / 2, range.low.unit()))
    }
}

/// One step.
#[derive(Debug, Clone)]
pub struct Step {
    /// Its id: stated, or its name with hyphens; empty where it could not be read, so that it may be any.
    pub id: String,
    /// Where the step begins.
    pub place: Place,
    /// What is done.
    pub name: Stated<String>,
    /// The pieces taken.
    pub take: Vec<Spanned<String>>,
    /// False when `take` could not be read in full.
    pub take_known: bool,
    /// How it is done (Markdown).
    pub instruction: Stated<String>,
    /// Where the other hand is (Markdown).
    pub hold: Stated<String>,
    /// True when the blade comes toward the body.
    pub draws_toward_body: Stated<bool>,
    /// Tools; `Absent` means those beside `steps`.
    pub tools: Stated<Vec<Spanned<ToolChoice>>>,
    /// The `tools` key, or the step's first line when there is none.
    pub tools_key: Place,
    /// Cautions of this step alone.
    pub cautions: Vec<Spanned<String>>,
    /// False when some of them could not be read.
    pub cautions_known: bool,
    /// What is worn; `Absent` means what stands beside `steps`.
    pub wear: Stated<Vec<Spanned<String>>>,
    /// From a trained cutter to a learner.
    pub minutes: Stated<Range<Minutes>>,
    /// What is seen or felt (Markdown).
    pub landmark: Stated<String>,
    /// Anatomical parts.
    pub anatomy: Vec<Spanned<String>>,
    /// Why the cut goes there (Markdown).
    pub anatomy_note: Stated<String>,
    /// A good result (Markdown).
    pub good: Stated<String>,
    /// What goes wrong (Markdown).
    pub mistakes: Stated<String>,
    /// Pictures.
    pub pictures: Vec<Picture>,
    /// Questions.
    pub ask: Vec<Question>,
    /// Outputs in the order in which they stand, without the loss.
    pub give: Vec<Output>,
    /// The `give` key.
    pub give_key: Place,
    /// False when `give` could not be read in full.
    pub give_known: bool,
    /// The loss; its piece is `loss`. `Absent` is zero.
    pub loss: Stated<Output>,
    /// Steps that anatomy wants done first.
    pub after: Vec<After>,
    /// How many are worked one after another while all lie out.
    pub at_once: Stated<u32>,
    /// What goes back to the cold after this step.
    pub back_to_cold: Stated<BackToCold>,
    /// Parts that are sawn across.
    pub cuts_through: Vec<Spanned<String>>,
    /// The animal's side.
    pub side: Stated<Side>,
    /// Where the figures come from.
    pub sources: Vec<Spanned<String>>,
}

/// A step that anatomy wants done first.
#[derive(Debug, Clone)]
pub struct After {
    /// The id of the earlier step.
    pub step: Spanned<String>,
    /// The reason.
    pub why: String,
}

/// What goes back to the cold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BackToCold {
    /// Everything that lies out.
    All,
    /// These pieces.
    Pieces(Vec<Spanned<String>>),
}

/// A tool, or a choice of tools; never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToolChoice {
    /// The ids; several when any of them serves.
    pub any_of: Vec<Spanned<String>>,
}

/// The share of an output.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShareSpec {
    /// Between these, of what the step takes.
    Between(Range<Share>),
    /// Whatever the other outputs leave.
    Rest,
}

/// One output of a step.
#[derive(Debug, Clone)]
pub struct Output {
    /// The piece, with the place of its key.
    pub piece: Spanned<String>,
    /// Where the value begins: the share of the short form, or the first line of the long form.
    pub place: Place,
    /// Its share of what the step takes.
    pub share: Stated<ShareSpec>,
    /// The usual share.
    pub typical: Stated<Share>,
    /// How many lie there together.
    pub pieces: Stated<u32>,
    /// Anatomical parts inside.
    pub counts: Vec<Count>,
    /// Anatomy that travels with the piece.
    pub holds: Vec<Spanned<String>>,
    /// What becomes of it; the place is that of the value.
    pub purpose: Stated<Use>,
    /// How it is portioned.
    pub portions: Stated<Portions>,
    /// The animal's side.
    pub side: Stated<Side>,
    /// Where the figures come from.
    pub sources: Vec<Spanned<String>>,
    /// True for the mapping form.
    pub long: bool,
}

/// So many of an anatomical part.
#[derive(Debug, Clone)]
pub struct Count {
    /// The part, with the place of its key.
    pub part: Spanned<String>,
    /// How many.
    pub number: Stated<CountSpec>,
}

/// A stated number of parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CountSpec {
    /// Between these.
    Between(Range<u32>),
    /// Whatever the other outputs leave.
    Rest,
}

/// How a piece is portioned.
#[derive(Debug, Clone)]
pub struct Portions {
    /// The weight of one.
    pub weight: Stated<Range<Mass>>,
    /// The thickness of one.
    pub thickness: Stated<Range<Length>>,
    /// How many come of all `pieces` together.
    pub count: Stated<Range<u32>>,
}

/// A declared share of the start.
#[derive(Debug, Clone)]
pub struct DeclaredYield {
    /// The piece, or `loss`, with the place of its key.
    pub piece: Spanned<String>,
    /// The declared share, with the place of its value.
    pub share: Stated<Range<Share>>,
}

/// A picture.
#[derive(Debug, Clone)]
pub struct Picture {
    /// Where the mapping begins.
    pub place: Place,
    /// The path inside the guidebook.
    pub file: Stated<String>,
    /// What one sees.
    pub alt: Stated<String>,
    /// The words under it.
    pub caption: Stated<String>,
    /// The animal's side.
    pub side: Stated<Side>,
    /// Lines drawn over it.
    pub lines: Vec<PictureLine>,
}

/// A labelled line over a picture; points are fractions of width and height.
#[derive(Debug, Clone, PartialEq)]
pub struct PictureLine {
    /// The words at the line.
    pub label: String,
    /// The points.
    pub points: Vec<(f64, f64)>,
}

/// A question for the class.
#[derive(Debug, Clone)]
pub struct Question {
    /// Where the mapping begins.
    pub place: Place,
    /// The question.
    pub question: Stated<String>,
    /// The answer (Markdown).
    pub answer: Stated<String>,
}

/// One advice accepted at one place.
#[derive(Debug, Clone)]
pub struct Waiver {
    /// Where the mapping begins.
    pub place: Place,
    /// The id of the check.
    pub check: Stated<String>,
    /// The step, piece or key that it is about.
    pub target: Stated<String>,
    /// Why.
    pub reason: Stated<String>,
    /// Who accepts it.
    pub by: Stated<String>,
    /// Until when.
    pub until: Stated<Date>,
}
