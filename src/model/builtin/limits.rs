//! The limits of a profile, each with its figure in the unit that the source prints, its force and its source.
//!
//! A stage or product without an entry is silent: there is no check, and never another profile's figure. What
//! holds for a guide is looked up in `analysis::cold_limits` and `analysis::risk_material`.

use std::fmt;

use crate::model::age::Age;
use crate::model::quantity::parse::{self, Slip, SlipKind};
use crate::model::quantity::{Minutes, Temperature};
use crate::model::words::{Clock, Force, LimitKind, Measure, Product, Stage, Verified};

/// One limit of a profile.
#[derive(Debug, Clone)]
pub struct Limit {
    /// Its id within the profile.
    pub id: String,
    /// What it is about.
    pub stage: Stage,
    /// The classes of product it is for; empty for all.
    pub products: Vec<Product>,
    /// The species it is for; empty for all.
    pub species: Vec<String>,
    /// What it measures.
    pub measures: Measure,
    /// The highest figure.
    pub at_most: Option<Figure>,
    /// The lowest figure.
    pub at_least: Option<Figure>,
    /// The figure above which it begins.
    pub above: Option<Figure>,
    /// The figure in the other unit, as the source prints it: shown, often rounded, never checked.
    pub printed_twin: Option<String>,
    /// The longest time, or for freezing and hot water the shortest.
    pub duration: Option<Duration>,
    /// How time out of the cold counts.
    pub clock: Option<Clock>,
    /// True for an option that holds only where the guidebook asks for it.
    pub only_when_asked: bool,
    /// From which age parts are risk material; `None` for any age.
    pub age: Option<AgeBound>,
    /// Parts of the animal that are risk material.
    pub parts: Vec<String>,
    /// The rule in plain words.
    pub text: String,
    /// What to know about it.
    pub note: Option<String>,
    /// What stands behind it.
    pub force: Force,
    /// Where it comes from.
    pub citation: Citation,
    /// How that was verified.
    pub verified: Verified,
}

impl Limit {
    /// True when it can be a fault by itself: neither repealed nor from memory.
    #[must_use]
    pub fn binds(&self) -> bool {
        self.force != Force::Repealed && self.verified != Verified::Memory
    }

    /// True when it is for this class of product and this species.
    #[must_use]
    pub fn covers(&self, product: Option<Product>, species: &str) -> bool {
        let product_fits = self.products.is_empty() || product.is_some_and(|product| self.products.contains(&product));
        product_fits && (self.species.is_empty() || self.species.iter().any(|own| own == species))
    }

    /// True when an animal of this age counts under it.
    #[must_use]
    pub fn counts_at(&self, age: Age) -> bool {
        match self.age {
            None => true,
            Some(AgeBound::Over(months)) => age.counts_as_over(months),
            Some(AgeBound::From(months)) => age.counts_as_from(months),
        }
    }
}

/// Where a limit comes from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Citation {
    /// The title of the rule.
    pub title: String,
    /// The section in it.
    pub section: Option<String>,
    /// Who publishes it.
    pub publisher: Option<String>,
    /// The edition that the figure was taken from.
    pub edition: Option<String>,
    /// The year of it.
    pub year: Option<String>,
    /// Where it was read, when that was elsewhere.
    pub read_in: Option<String>,
}

impl Citation {
    /// The title and the section: `FDA Food Code, 3-501.16(A)(2)`.
    #[must_use]
    pub fn rule(&self) -> String {
        self.section.as_ref().map_or_else(|| self.title.clone(), |section| format!("{}, {section}", self.title))
    }
}

/// A figure as the source prints it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// The text.
    pub printed: String,
    /// Its value, when it is a temperature.
    pub temperature: Option<Temperature>,
}

/// A time as the source prints it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Duration {
    /// The text.
    pub printed: String,
    /// Its value.
    pub minutes: Minutes,
}

/// From which age on parts are risk material.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AgeBound {
    /// Of so many months or older.
    From(u32),
    /// Over so many months.
    Over(u32),
}

impl fmt::Display for AgeBound {
    /// `from 30 months`, `over 12 months`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::From(months) => write!(f, "from {months} months"),
            Self::Over(months) => write!(f, "over {months} months"),
        }
    }
}

/// The figure of a limit that a shop sets itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OwnFigure {
    /// A temperature.
    Temperature(Temperature),
    /// A time.
    Time(Minutes),
}

/// Reads the figure of a limit of the shop: a temperature, or for times `30 minutes`, `2 h` or bare minutes.
///
/// # Errors
/// A slip when the figure is malformed, or of another kind than the limit.
pub fn own_figure(kind: LimitKind, text: &str) -> Result<OwnFigure, Slip> {
    let text = text.trim();
    match kind {
        LimitKind::TimeOut | LimitKind::CleaningInterval => time(text).map(OwnFigure::Time),
        LimitKind::Hold | LimitKind::Room | LimitKind::Receiving | LimitKind::ToolWater => {
            let range = parse::temperature(text)?;
            if range.is_single() {
                return Ok(OwnFigure::Temperature(range.low));
            }
            Err(Slip::new(SlipKind::Malformed, format!("expected one temperature, found the range `{text}`"), "Write one figure."))
        }
    }
}

/// Thousandths of a minute in the units of time that sources print.
const TIME_UNITS: &[(&str, i128)] = &[
    ("min", 1_000),
    ("minute", 1_000),
    ("minutes", 1_000),
    ("h", 60_000),
    ("hour", 60_000),
    ("hours", 60_000),
    ("day", 1_440_000),
    ("days", 1_440_000),
];

/// Reads one time: `4 h`, `30 minutes`, `15 days`, or a bare number of minutes.
///
/// # Errors
/// A slip when no number stands there, it is negative, or the unit is no unit of time.
pub fn time(text: &str) -> Result<Minutes, Slip> {
    let text = text.trim();
    let (number, unit) = parse::number(text)?;
    let unit = unit.trim();
    let wrong = || {
        let message = format!("`{text}` is no time");
        Slip::new(SlipKind::UnitWrong, message, "Write minutes or hours, as in `30 minutes` or `2 h`.")
    };
    // Seconds are no whole thousandths of a minute each, so they are counted in sixtieths.
    let (thousandths, parts) = match unit {
        "" => (1_000, 1),
        "s" => (1_000, 60),
        other => (TIME_UNITS.iter().find(|(word, _)| *word == other).ok_or_else(wrong)?.1, 1),
    };
    let total = number.times(thousandths).ok_or_else(wrong)? / parts;
    let minutes = i64::try_from(total).map_err(|_| wrong())?;
    if minutes < 0 {
        return Err(Slip::new(SlipKind::OutOfBounds, format!("a time below nothing: `{text}`"), "Write 0 or more."));
    }
    Ok(Minutes(minutes))
}
