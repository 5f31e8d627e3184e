//! What tools and conditions demand of a step: cautions, protection, and protection that is forbidden.
//!
//! The tables themselves stand in `src/reference/tools.yaml` and `cautions.yaml`; what a step of a guide owes
//! under them is computed in `analysis::demands`.

use crate::model::words::Product;

/// A demand for protection, met when all ids of any one set are worn.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct WearDemand {
    /// The sets; never empty.
    pub any_of: Vec<Vec<String>>,
}

impl WearDemand {
    /// A demand for one thing.
    #[must_use]
    pub fn one(id: &str) -> Self {
        Self { any_of: vec![vec![id.to_owned()]] }
    }

    /// True when `worn` holds all of some set.
    pub fn is_met_by(&self, worn: impl Fn(&str) -> bool) -> bool {
        self.any_of.iter().any(|set| set.iter().all(|id| worn(id)))
    }
}

/// What a tool brings with it.
#[derive(Debug, Clone, Default)]
pub struct ToolDemands {
    /// Cautions that a step with it must carry.
    pub cautions: Vec<String>,
    /// The same, under the profiles whose ids start with the word.
    pub cautions_in: Vec<(String, Vec<String>)>,
    /// Cautions that are advised.
    pub advised_cautions: Vec<String>,
    /// Protection that a step with it must name.
    pub wear: Vec<WearDemand>,
    /// Protection that is advised.
    pub advised_wear: Vec<WearDemand>,
    /// Protection that must not be worn with it.
    pub never: Vec<String>,
}

impl ToolDemands {
    /// The cautions demanded under a profile; `None` for a guidebook without one.
    pub fn cautions_under<'a>(&'a self, profile: Option<&'a str>) -> impl Iterator<Item = &'a str> {
        let here = move |start: &str| profile.and_then(|profile| profile.split('-').next()).is_some_and(|first| first == start);
        let more = self.cautions_in.iter().filter(move |(start, _)| here(start)).flat_map(|(_, cautions)| cautions);
        self.cautions.iter().chain(more).map(String::as_str)
    }
}

/// A condition on a step under which a caution is demanded; all that is stated must hold.
#[derive(Debug, Clone, Default)]
pub struct Condition {
    /// The group of the species.
    pub group: Option<String>,
    /// Parts of which the step names, frees or cuts one; empty for any step.
    pub anatomy: Vec<String>,
    /// The class of product.
    pub product: Option<Product>,
    /// Eaten raw, or not.
    pub served_raw: Option<bool>,
    /// The species forms histamine, or does not.
    pub histamine: Option<bool>,
    /// The blade is drawn toward the body.
    pub draws_toward_body: bool,
    /// Protection of which all is worn; empty for any.
    pub wear: Vec<String>,
}
