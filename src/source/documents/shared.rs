//! Shapes that several documents share.

use schemars::JsonSchema;
use serde::Deserialize;

use super::texts::{Id, Line, Markdown, PathText, Word};
use crate::source::field::{Optional, Required};
use crate::source::schema::{spelling, words};

/// One id, or a list of ids.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename = "$either an id or a list of ids")]
pub enum OneOrMany {
    /// One.
    #[serde(rename = "text")]
    One(Id),
    /// Several.
    #[serde(rename = "list")]
    Many(Vec<Required<Id>>),
}

/// A tool, or a choice of tools.
#[derive(Debug, Clone, Deserialize)]
#[serde(rename = "$either an id or `{ any-of: [ids] }`")]
pub enum ToolChoice {
    /// This tool.
    #[serde(rename = "text")]
    One(Id),
    /// Any of these.
    #[serde(rename = "mapping")]
    Any(AnyOf),
}

/// A choice of tools; the guide shows all, and demands what any of them demands.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct AnyOf {
    /// The tools.
    #[schemars(with = "Required<Vec<Required<spelling::ToolId>>>", extend("minItems" = 1))]
    pub any_of: Required<Vec<Required<Id>>>,
}

/// A photograph or a drawing.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Picture {
    /// The file, as a path inside the guidebook.
    #[schemars(with = "Required<spelling::InnerPath>")]
    pub file: Required<PathText>,
    /// What one sees, for those who cannot see it.
    pub alt: Optional<Line>,
    /// The words under it.
    pub caption: Optional<Line>,
    /// The animal's side.
    #[schemars(extend("enum" = words::SIDE))]
    pub side: Optional<Word>,
    /// Lines drawn over it.
    pub lines: Optional<Vec<Required<PictureLine>>>,
}

/// A labelled line over a picture.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct PictureLine {
    /// The words at the line.
    pub label: Required<Line>,
    /// Points as fractions of width and height.
    #[schemars(with = "Required<Vec<Required<spelling::Point>>>")]
    pub points: Required<Vec<Required<Vec<Required<Line>>>>>,
}

/// A question for the class.
#[derive(Debug, Clone, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub struct Question {
    /// The question.
    pub question: Required<Line>,
    /// The answer.
    pub answer: Required<Markdown>,
}
