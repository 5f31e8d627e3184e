//! A finding as data: what is wrong, how grave it is, where it stands, and what to do about it.
//!
//! The lowest room: it imports nothing of ours, reads no files and prints nothing. Rendering is here
//! (`text`, `json`, `sarif`), but always into a string that the caller may print.

mod excerpt;
pub mod json;
pub mod order;
pub mod place;
pub mod sarif;
pub mod text;

pub use place::{FileId, LineColumn, Part, Place, SourceMap, SourceText, Span};

/// How grave a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Level {
    /// Nothing is published until it is mended.
    Fault,
    /// Worth a look; the guidebook can be published with it.
    Advice,
}

impl Level {
    /// The word used in text and in machine-readable answers.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fault => "fault",
            Self::Advice => "advice",
        }
    }
}

/// A second place that explains a finding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Related {
    /// Where it stands.
    pub place: Place,
    /// What stands there, as a phrase.
    pub text: String,
}

/// One thing found wrong, or worth a look, in a guidebook.
///
/// `message` is a phrase that stands alone: lower-case start, numbers with units, authored names in
/// backquotes, no final stop. `help` starts with a verb and names one thing to type.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// The id of the check, which names the wrong thing: `shares-exceed-whole`.
    pub check: &'static str,
    /// How grave it is.
    pub level: Level,
    /// Where it points.
    pub place: Place,
    /// The headline.
    pub message: String,
    /// A few words under the carets; may be empty.
    pub label: String,
    /// Other places that explain it.
    pub related: Vec<Related>,
    /// What to do; may be empty.
    pub help: String,
}

impl Finding {
    /// A fault of `check` at `place`.
    #[must_use]
    pub fn fault(check: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self::new(check, Level::Fault, place, message.into())
    }

    /// Advice of `check` at `place`.
    #[must_use]
    pub fn advice(check: &'static str, place: Place, message: impl Into<String>) -> Self {
        Self::new(check, Level::Advice, place, message.into())
    }

    fn new(check: &'static str, level: Level, place: Place, message: String) -> Self {
        Self { check, level, place, message, label: String::new(), related: Vec::new(), help: String::new() }
    }

    /// Sets the words under the carets.
    #[must_use]
    pub fn label(mut self, label: impl Into<String>) -> Self {
        self.label = label.into();
        self
    }

    /// Sets what to do: sentences, so a capital begins them and a stop ends them, whoever wrote them.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        let help: String = help.into();
        let mut letters = help.chars();
        let first = letters.next().map_or_else(String::new, |first| first.to_uppercase().collect());
        let stop = if help.is_empty() || help.ends_with(['.', '!', '?']) { "" } else { "." };
        self.help = format!("{first}{}{stop}", letters.as_str());
        self
    }

    /// Adds a second place.
    #[must_use]
    pub fn also(mut self, place: Place, text: impl Into<String>) -> Self {
        self.related.push(Related { place, text: text.into() });
        self
    }
}
