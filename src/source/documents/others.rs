//! The shapes of the documents beside the procedures: cut lists, anatomy, cautions, tools, courses, prices.

use schemars::JsonSchema;
use serde::Deserialize;

use super::texts::{CountText, DateText, Id, Line, Markdown, MassText, PriceText, ProcedureId, ShareText, WholeText, Word};
use crate::source::field::{Entries, Optional, Required};
use crate::source::schema::{rules, spelling, words};

/// One piece of a cut list, `cuts/<species>.yaml`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Cut {
    /// What it is called first here.
    pub name: Required<Line>,
    /// Other trade names; `{ name: region }` ties one to a region.
    pub also: Optional<Vec<Required<TradeName>>>,
    /// Codes by system.
    pub codes: Optional<Entries<Line>>,
    /// The usual weight of one.
    pub weight: Optional<MassText>,
    /// How many an animal has.
    pub per_animal: Optional<WholeText>,
    /// The region of the animal.
    #[schemars(with = "Optional<Line>")]
    pub region: Optional<Id>,
    /// Where it lies.
    pub lies: Optional<Line>,
    /// Ids under which it was known earlier.
    #[schemars(with = "Optional<Vec<Required<Line>>>")]
    pub was: Optional<Vec<Required<Id>>>,
}

/// A trade name, used everywhere or in one region.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename = "$either a name or `{ name: region }`")]
pub enum TradeName {
    /// Used everywhere.
    #[serde(rename = "text")]
    Everywhere(Line),
    /// Used in a region: `{ fillet: uk }`.
    #[serde(rename = "mapping")]
    Regional(Entries<Line>),
}

/// One entry of `anatomy/<species>.yaml`: a part, or under `like` the group whose anatomy the species shares.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename = "$either a mapping")]
pub enum AnatomyEntry {
    /// `like: round-fish`.
    #[serde(rename = "text")]
    Like(Id),
    /// A part.
    #[serde(rename = "mapping")]
    Part(Box<AnatomyPart>),
}

/// A bone, muscle, tissue or gland, `anatomy/<species>.yaml`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct AnatomyPart {
    /// What it is called.
    pub name: Required<Line>,
    /// Other names.
    pub also: Optional<Vec<Required<Line>>>,
    /// `bone`, `muscle`, `tissue` or `gland`.
    #[schemars(extend("enum" = words::PART_KIND))]
    pub kind: Required<Word>,
    /// How many an animal has.
    #[schemars(with = "Optional<spelling::Count>")]
    pub count: Optional<CountText>,
    /// The regions in which it lies.
    #[schemars(with = "Optional<Vec<Required<Line>>>")]
    pub regions: Optional<Vec<Required<Id>>>,
    /// What it does.
    pub does: Optional<Markdown>,
    /// Where it lies.
    pub lies: Optional<Markdown>,
    /// Where the facts come from.
    pub sources: Optional<Vec<Required<Line>>>,
}

/// One caution, `cautions.yaml`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(transform = rules::caution)]
pub struct Caution {
    /// A short name.
    pub name: Optional<Line>,
    /// `danger`, `warning`, `caution` or `notice`.
    #[schemars(extend("enum" = words::SIGNAL))]
    pub signal: Required<Word>,
    /// What can hurt.
    pub hazard: Required<Line>,
    /// What it does.
    pub consequence: Required<Line>,
    /// What to do so that it does not.
    pub avoid: Required<Line>,
    /// `death`, `lasting`, `healing` or `property`.
    #[schemars(extend("enum" = words::HARM))]
    pub harm: Required<Word>,
    /// An ISO 7010 code.
    pub sign: Optional<Line>,
    /// Where it comes from.
    pub sources: Optional<Vec<Required<Line>>>,
}

/// One tool, `tools.yaml`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Tool {
    /// What it is called.
    pub name: Required<Line>,
    /// Cautions that it demands.
    #[schemars(with = "Optional<Vec<Required<spelling::CautionId>>>")]
    pub cautions: Optional<Vec<Required<Id>>>,
    /// Protection that it demands.
    #[schemars(with = "Optional<Vec<Required<spelling::WearId>>>")]
    pub wear: Optional<Vec<Required<Id>>>,
    /// Protection that it forbids.
    #[schemars(with = "Optional<Vec<Required<spelling::WearId>>>")]
    pub never: Optional<Vec<Required<Id>>>,
}

/// A course, `courses/<name>.yaml`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Course {
    /// What it is called.
    pub title: Required<Line>,
    /// How many learners.
    pub class_size: Optional<WholeText>,
    /// The lessons in order.
    pub lessons: Required<Vec<Required<Lesson>>>,
}

/// One lesson.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Lesson {
    /// What it is called.
    pub name: Required<Line>,
    /// The guides that it works through.
    pub procedures: Required<Vec<Required<ProcedureId>>>,
    /// What the learners are to take away.
    pub aims: Optional<Markdown>,
}

/// `prices.yaml`.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Prices {
    /// The currency, ISO 4217.
    pub currency: Required<Line>,
    /// The day of the prices.
    pub date: Required<DateText>,
    /// `with` or `without`.
    #[schemars(extend("enum" = words::TAX))]
    pub tax: Optional<Word>,
    /// What pieces cost.
    #[schemars(extend("propertyNames" = rules::piece_names()))]
    pub buy: Optional<Entries<PriceText>>,
    /// What it would cost to buy a by-product elsewhere.
    #[schemars(extend("propertyNames" = rules::piece_names()))]
    pub credit: Optional<Entries<PriceText>>,
    /// What pieces sell for at the counter.
    #[schemars(extend("propertyNames" = rules::piece_names()))]
    pub sell: Optional<Entries<PriceText>>,
    /// What an hour of work costs.
    #[schemars(with = "Optional<spelling::PriceOfWork>")]
    pub labour: Optional<PriceText>,
    /// Cooked yield of pieces.
    #[schemars(with = "Optional<Entries<spelling::ShareOfWhole>>", extend("propertyNames" = rules::piece_names()))]
    pub cooked: Optional<Entries<ShareText>>,
}
