//! What a check says of itself: its id, its group, how grave it is, and its text, which is the manual.

use super::report::{Report, Subject};
use super::waived::Idle;
use crate::finding::Level;

/// A family of checks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// How the files are written.
    Form,
    /// Whether weights and shares add up.
    Balance,
    /// Whether the steps can be done in this order.
    Order,
    /// Whether counted parts are conserved.
    Counts,
    /// Whether what is named exists.
    Reference,
    /// Whether instructions can be read at the bench.
    Language,
    /// Whether revisions, reviews and waivers are in order.
    Control,
    /// Whether hazards are told before they hurt.
    Caution,
    /// Whether the meat stays cold.
    Cold,
    /// Whether the animal has the parts that are named.
    Anatomy,
}

impl Group {
    /// The word used in text.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Form => "form",
            Self::Balance => "balance",
            Self::Order => "order",
            Self::Counts => "counts",
            Self::Reference => "reference",
            Self::Language => "language",
            Self::Control => "control",
            Self::Caution => "caution",
            Self::Cold => "cold",
            Self::Anatomy => "anatomy",
        }
    }

    /// True when its advice can be waived or turned off. No fault ever can.
    #[must_use]
    pub const fn can_be_waived(self) -> bool {
        !matches!(self, Self::Balance | Self::Caution | Self::Cold)
    }
}

/// What a check says of itself.
#[derive(Debug)]
pub struct CheckInfo {
    /// Names the wrong thing: `shares-exceed-whole`.
    pub id: &'static str,
    /// Its family.
    pub group: Group,
    /// How grave its findings are. A check that makes both names the graver.
    pub level: Level,
    /// What it finds, in a sentence or two.
    pub what: &'static str,
    /// Why that matters at the bench.
    pub why: &'static str,
    /// A few lines of YAML that have it.
    pub example: &'static str,
    /// How to mend it.
    pub mend: &'static str,
    /// Where the rule comes from: a published source, the guidebook format, or `common practice`.
    pub source: &'static str,
}

impl CheckInfo {
    /// True when its advice can be waived at a place or turned off: it makes no fault, and its group allows it.
    #[must_use]
    pub fn can_be_waived(&self) -> bool {
        self.level == Level::Advice && self.group.can_be_waived()
    }
}

/// How the findings of a check come about.
#[derive(Clone, Copy)]
pub enum Run {
    /// Made while files are read; the check holds text and tests.
    WhileReading,
    /// Made while pages are tried with the guidebook's own theme; the check holds text and tests.
    WithTheme,
    /// Made by this function over the whole guidebook.
    Check(fn(&Subject<'_>, &mut Report)),
    /// Made by this function when waivers have been held against all other findings.
    OfWaivers(fn(&Subject<'_>, &[Idle<'_>], &mut Report)),
}

impl std::fmt::Debug for Run {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::WhileReading => "WhileReading",
            Self::WithTheme => "WithTheme",
            Self::Check(_) => "Check",
            Self::OfWaivers(_) => "OfWaivers",
        })
    }
}

/// A check: what it says of itself, and how it runs.
#[derive(Debug)]
pub struct Check {
    /// Its text.
    pub info: CheckInfo,
    /// Its code.
    pub run: Run,
}
