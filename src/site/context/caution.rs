//! A caution as it is shown, in its parts.

use serde::Serialize;

/// All cautions of one signal word, the words in the order of their strength.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CautionGroup {
    /// `danger`, `warning`, `caution` or `notice`.
    pub signal: &'static str,
    /// The cautions.
    pub items: Vec<Caution>,
}

/// One caution.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Caution {
    /// Its id.
    pub id: String,
    /// A short name, for where the caution stands whole elsewhere on the same sheet.
    pub name: String,
    /// What can hurt.
    pub hazard: String,
    /// What it does; may be empty.
    pub consequence: String,
    /// What to do.
    pub avoid: String,
    /// The code of an ISO 7010 sign: `W022`; empty when there is none.
    pub sign: String,
    /// What the sign means; may be empty.
    pub sign_name: String,
    /// The steps that it is about, counted from 1; only in the group at the head of a guide.
    pub steps: Vec<usize>,
    /// True when it is about every step.
    pub every_step: bool,
}
