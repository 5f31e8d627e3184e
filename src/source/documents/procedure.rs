//! The shape of a procedure: `<species>/<name>.yaml`.

use schemars::JsonSchema;
use serde::Deserialize;

use super::shared::{OneOrMany, Picture, Question, ToolChoice};
use super::texts::{
    AgeText, CountText, DateText, Id, LengthText, Line, Markdown, MassText, MinutesText, ProcedureId, ShareText, TemperatureText,
    WholeText, Word,
};
use crate::source::field::{Entries, Optional, Required};
use crate::source::schema::{rules, spelling, words};

/// A breakdown procedure: how one piece is cut into others.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(transform = rules::procedure)]
pub struct Procedure {
    /// What the guide is called.
    pub title: Required<Line>,
    /// The species; equals the folder.
    #[schemars(with = "Required<spelling::SpeciesId>")]
    pub species: Required<Id>,
    /// True for the usual way to break this piece here; at most one for each starting piece.
    #[schemars(with = "Optional<spelling::Truth>")]
    pub house_cut: Optional<bool>,
    /// Who wrote which state of the guide, and who stands for it.
    pub revision: Required<Revision>,
    /// What the work starts from.
    pub start: Required<Start>,
    /// The steps in the order of work.
    #[schemars(extend("minItems" = 1))]
    pub steps: Optional<Vec<Required<Step>>>,
    /// Declared shares of the starting weight, over all steps.
    #[schemars(extend("propertyNames" = rules::piece_names_and_loss()))]
    pub yields: Optional<Entries<ShareText>>,
    /// What the work is for and what comes of it.
    pub purpose: Optional<Markdown>,
    /// Who can do it: a level of training.
    pub level: Optional<Line>,
    /// Guides to know first.
    pub needs: Optional<Vec<Required<ProcedureId>>>,
    /// The class of product whose limits hold.
    #[schemars(extend("enum" = words::PRODUCT))]
    pub product: Optional<Word>,
    /// True for fish or meat that is eaten raw.
    #[schemars(with = "Optional<spelling::Truth>")]
    pub served_raw: Optional<bool>,
    /// How parasites are dealt with in fish served raw: `frozen` or `farmed-with-letter`.
    #[schemars(extend("enum" = words::PARASITES))]
    pub parasites: Optional<Word>,
    /// Allergens that the pieces hold.
    pub allergens: Optional<Vec<Required<Line>>>,
    /// The age of the animal, where law turns on it.
    pub age: Optional<AgeText>,
    /// Tools of each step that names none.
    pub tools: Optional<Vec<Required<ToolChoice>>>,
    /// What is worn in each step that names nothing.
    #[schemars(with = "Optional<Vec<Required<spelling::WearId>>>")]
    pub wear: Optional<Vec<Required<Id>>>,
    /// Cautions that cover every step.
    #[schemars(with = "Optional<Vec<Required<spelling::CautionId>>>")]
    pub cautions: Optional<Vec<Required<Id>>>,
    /// Minutes to set up, once.
    pub set_up_minutes: Optional<MinutesText>,
    /// Minutes to clean up, once.
    pub clean_minutes: Optional<MinutesText>,
    /// What is done when the cutting is over.
    pub after_work: Optional<Markdown>,
    /// Where the figures come from.
    pub sources: Optional<Vec<Required<Line>>>,
    /// Advice accepted at one place.
    pub waivers: Optional<Vec<Required<Waiver>>>,
    /// Ids under which the guide was known earlier.
    #[schemars(with = "Optional<Vec<Required<Line>>>")]
    pub was: Optional<Vec<Required<ProcedureId>>>,
}

/// The control block.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(transform = rules::revision)]
pub struct Revision {
    /// Counts up from 1.
    pub number: Required<WholeText>,
    /// The day from which this revision counts.
    pub date: Required<DateText>,
    /// Who wrote it.
    pub author: Required<Line>,
    /// Who answers for it, when that is not the author.
    pub owner: Optional<Line>,
    /// Who approved it; demanded while in force.
    pub approved_by: Optional<Line>,
    /// When it is to be looked at again; demanded while in force.
    pub review_by: Optional<DateText>,
    /// What changed; demanded from number 2 on.
    pub change: Optional<Markdown>,
    /// `draft`, `in-force` (when left out) or `withdrawn`.
    #[schemars(extend("enum" = words::STATE))]
    pub state: Optional<Word>,
}

/// What the work starts from.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Start {
    /// The piece.
    #[schemars(extend("not" = rules::reserved()))]
    pub piece: Required<Id>,
    /// The weights for which the guide is written.
    pub weight: Required<MassText>,
    /// The weight at which examples are worked.
    #[schemars(with = "Optional<spelling::OneWeight>")]
    pub typical: Optional<MassText>,
    /// On what basis it is weighed, and what is on it.
    #[serde(rename = "as")]
    pub basis: Optional<Line>,
    /// How cold it arrives at the bench.
    pub temperature: Optional<TemperatureText>,
    /// The animal's side.
    #[schemars(extend("enum" = words::SIDE))]
    pub side: Optional<Word>,
    /// Where the figures come from.
    pub sources: Optional<Vec<Required<Line>>>,
}

/// One step of the work.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Step {
    /// What is done, verb first.
    pub name: Required<Line>,
    /// The id; the name with hyphens when left out.
    pub id: Optional<Id>,
    /// The piece that is cut, or a list where a step joins pieces.
    #[schemars(extend("minItems" = 1))]
    pub take: Required<OneOrMany>,
    /// How it is done.
    #[serde(rename = "do")]
    pub instruction: Required<Markdown>,
    /// Where the other hand is.
    pub hold: Optional<Markdown>,
    /// `toward-body` when the blade comes toward the cutter.
    #[schemars(extend("enum" = words::DRAWS))]
    pub draws: Optional<Word>,
    /// Tools of this step.
    pub tools: Optional<Vec<Required<ToolChoice>>>,
    /// Cautions of this step.
    #[schemars(with = "Optional<Vec<Required<spelling::CautionId>>>")]
    pub cautions: Optional<Vec<Required<Id>>>,
    /// What is worn.
    #[schemars(with = "Optional<Vec<Required<spelling::WearId>>>")]
    pub wear: Optional<Vec<Required<Id>>>,
    /// From a trained cutter to a learner.
    pub minutes: Optional<MinutesText>,
    /// What is seen or felt at the right spot.
    pub landmark: Optional<Markdown>,
    /// Ids of bones, muscles, tissues, glands.
    pub anatomy: Optional<Vec<Required<Id>>>,
    /// Why the cut goes there.
    pub anatomy_note: Optional<Markdown>,
    /// What a good result looks like.
    pub good: Optional<Markdown>,
    /// What goes wrong, and why.
    pub mistakes: Optional<Markdown>,
    /// Pictures.
    pub pictures: Optional<Vec<Required<Picture>>>,
    /// Questions for the class.
    pub ask: Optional<Vec<Required<Question>>>,
    /// What comes of it.
    #[schemars(extend("minProperties" = 1, "propertyNames" = rules::piece_names()))]
    pub give: Required<Entries<Output>>,
    /// What no longer lies on the bench.
    pub loss: Optional<Output>,
    /// Steps that anatomy wants done first.
    pub after: Optional<Vec<Required<After>>>,
    /// How many are worked one after another while all lie out.
    pub at_once: Optional<WholeText>,
    /// `all`, or the pieces that go back to the cold after this step.
    pub back_to_cold: Optional<OneOrMany>,
    /// Anatomical parts that are sawn across.
    pub cuts_through: Optional<Vec<Required<Id>>>,
    /// The animal's side.
    #[schemars(extend("enum" = words::SIDE))]
    pub side: Optional<Word>,
    /// Where the figures come from.
    pub sources: Optional<Vec<Required<Line>>>,
}

/// A step that anatomy wants done first, and the reason.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct After {
    /// The id of the earlier step.
    pub step: Required<Id>,
    /// The reason.
    pub why: Required<Line>,
}

/// One output of a step: the share alone, or the long form.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename = "$either a share such as `5–7 %` or a mapping")]
pub enum Output {
    /// The share alone.
    #[serde(rename = "text")]
    Short(ShareText),
    /// The long form.
    #[serde(rename = "mapping")]
    Long(Box<LongOutput>),
}

/// The long form of an output.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct LongOutput {
    /// Its share of what the step takes.
    pub share: Required<ShareText>,
    /// The usual share, inside the range.
    #[schemars(with = "Optional<spelling::OneShare>")]
    pub typical: Optional<ShareText>,
    /// How many lie there together.
    pub pieces: Optional<WholeText>,
    /// Anatomical parts inside.
    #[schemars(extend("propertyNames" = rules::names()))]
    pub counts: Optional<Entries<CountText>>,
    /// Anatomy that travels with the piece.
    pub holds: Optional<Vec<Required<Id>>>,
    /// What becomes of a final piece.
    #[serde(rename = "use")]
    #[schemars(extend("enum" = words::USE))]
    pub purpose: Optional<Word>,
    /// How it is portioned.
    pub portions: Optional<Portions>,
    /// The animal's side.
    #[schemars(extend("enum" = words::SIDE))]
    pub side: Optional<Word>,
    /// Where the figures come from.
    pub sources: Optional<Vec<Required<Line>>>,
}

/// Portions of a piece: by weight or by thickness.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(transform = rules::portions)]
pub struct Portions {
    /// The weight of one.
    pub weight: Optional<MassText>,
    /// The thickness of one.
    pub thickness: Optional<LengthText>,
    /// How many, from all `pieces` together.
    #[schemars(with = "Optional<spelling::Count>")]
    pub count: Optional<CountText>,
}

/// One advice accepted at one place.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Waiver {
    /// The id of the check.
    pub check: Required<Id>,
    /// The step, piece or key that it is about.
    #[serde(rename = "where")]
    pub place: Required<Line>,
    /// Why it is accepted.
    pub reason: Required<Line>,
    /// Who accepts it.
    pub by: Required<Line>,
    /// Until when.
    pub until: Optional<DateText>,
}
