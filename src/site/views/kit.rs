//! Tools of a step, what is worn with them, and what comes off before they run.
//!
//! Of a choice of tools one is taken: what holds for one of them alone says so by its name.

use super::Views;
use crate::analysis::demands::{Because, Demands, StepDemands, choices_of, wear_of};
use crate::model::builtin::demands::WearDemand;
use crate::model::{Procedure, Step, ToolChoice};

impl Views<'_> {
    /// Tools of the step, else those of the whole procedure; each entry is a choice of one or several.
    pub(super) fn tools(&self, procedure: &Procedure, step: &Step) -> Vec<Vec<String>> {
        let names = |choice: &ToolChoice| choice.any_of.iter().map(|tool| self.tool_name(&tool.value)).collect();
        choices_of(procedure, step).unwrap_or(&[]).iter().map(|choice| names(&choice.value)).collect()
    }

    /// What is worn in the step, else in the whole procedure; and what one tool of a choice asks for where another one
    /// forbids it: `cut glove or mesh gauntlet (hand saw)`.
    pub(super) fn wear(&self, procedure: &Procedure, step: &Step) -> Vec<String> {
        let mut worn: Vec<String> = wear_of(procedure, step).unwrap_or(&[]).iter().map(|id| self.wear_name(&id.value)).collect();
        for demand in self.owed(procedure, step).wear_where_taken {
            if let Because::Tool(tool) = demand.because {
                worn.push(format!("{} ({})", self.sets(&demand.what), self.tool_name(tool)));
            }
        }
        worn
    }

    /// Protection that comes off, because a tool of the step forbids it: `cut glove`, or `cut glove (band saw)` where
    /// another tool could be taken instead.
    pub(super) fn never_wear(&self, procedure: &Procedure, step: &Step) -> Vec<String> {
        let choices = choices_of(procedure, step).unwrap_or(&[]);
        let owed = self.owed(procedure, step);
        let mut ids: Vec<&str> = Vec::new();
        for (id, _) in &owed.never {
            if !ids.contains(id) {
                ids.push(id);
            }
        }
        let name = |id: &&str| {
            let forbids = |tool: &str| owed.never.iter().any(|(never, by)| never == id && *by == tool);
            let whichever = choices.iter().any(|choice| choice.value.any_of.iter().all(|tool| forbids(&tool.value)));
            if whichever {
                return self.wear_name(id);
            }
            let by: Vec<String> = owed.never.iter().filter(|(never, _)| never == id).map(|(_, tool)| self.tool_name(tool)).collect();
            format!("{} ({})", self.wear_name(id), by.join(", "))
        };
        ids.iter().map(name).collect()
    }

    fn owed<'a>(&'a self, procedure: &'a Procedure, step: &'a Step) -> StepDemands<'a> {
        Demands::of(self.book, procedure).of_step(step).unwrap_or_default()
    }

    /// Sets of protection of which any one serves: `mesh gauntlet or cut glove with arm guard`.
    fn sets(&self, demand: &WearDemand) -> String {
        let word = |id: &str| self.engine.words.plain(id).unwrap_or_default();
        let set = |set: &Vec<String>| set.iter().map(|id| self.wear_name(id)).collect::<Vec<_>>().join(&format!(" {} ", word("with")));
        demand.any_of.iter().map(set).collect::<Vec<_>>().join(&format!(" {} ", word("or")))
    }

    fn tool_name(&self, tool: &str) -> String {
        inside(&self.book.tool_name(tool))
    }

    fn wear_name(&self, id: &str) -> String {
        self.book.builtin.wear.get(id).map_or_else(|| id.replace('-', " "), |wear| inside(&wear.name))
    }
}

/// A name as it stands inside a list: without its capital, unless it is a name of capitals.
pub(super) fn inside(name: &str) -> String {
    let mut chars = name.chars();
    match (chars.next(), chars.clone().next()) {
        (Some(first), Some(second)) if second.is_lowercase() => first.to_lowercase().chain(chars).collect(),
        _ => name.to_owned(),
    }
}
