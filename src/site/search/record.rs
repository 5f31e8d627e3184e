//! One place that search can lead to: what it is called, where it lies, and the words by which it is found.

use crate::model::words::State;

/// What a record leads to. The order is that of equal results.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A piece; it leads to the step that gives it.
    Piece,
    /// A bone, muscle, tissue or gland; it leads to the first step that names it.
    Anatomy,
    /// A guide.
    Guide,
    /// A step of a guide.
    Step,
    /// A course.
    Course,
    /// A free page.
    Page,
}

impl Kind {
    /// All kinds in their order.
    pub const ALL: &'static [Self] = &[Self::Piece, Self::Anatomy, Self::Guide, Self::Step, Self::Course, Self::Page];

    /// The word that stands for the kind in the address of a search and in the theme.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Piece => "piece",
            Self::Anatomy => "anatomy",
            Self::Guide => "guide",
            Self::Step => "step",
            Self::Course => "course",
            Self::Page => "page",
        }
    }
}

/// Another name of what a record leads to, or a code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherName {
    /// The name as it is written.
    pub name: String,
    /// The region that uses it; `None` for everywhere.
    pub region: Option<String>,
}

/// One place that search can lead to. All texts are plain, without Markdown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Record {
    /// What it is.
    pub kind: Kind,
    /// The id of its species; `None` where it belongs to none.
    pub species: Option<String>,
    /// What the species is called. It weighs the same in each record of the species, whether or not the title says it.
    pub species_name: String,
    /// The name of the piece or step, the title of the guide or page.
    pub title: String,
    /// True when the title is a name of the trade, which ranks above every text: that of a guide, of a part, and of a
    /// piece unless it only passes from one step to the next.
    pub named: bool,
    /// The number of the step that it leads to, from 1.
    pub step: Option<usize>,
    /// Where it stands: the title of the guide; empty where the title says enough.
    pub context: String,
    /// The state of the guide that it leads into, so that a draft is never met unawares.
    pub state: State,
    /// The page and the place on it, from the root of the site.
    pub url: String,
    /// Other names and codes, in the order in which they are shown.
    pub names: Vec<OtherName>,
    /// What it says.
    pub text: String,
    /// What it says beside that; found last.
    pub notes: String,
}
