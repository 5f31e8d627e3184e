//! Which steps lose something: they saw, trim or drain. Decided narrowly, from tools and from the step's name.

use crate::model::procedure::ToolChoice;
use crate::model::{Guidebook, Procedure, Spanned, Stated, Step};

/// Why a step loses something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Cause {
    /// It saws: with a saw, or its name says so.
    Saws,
    /// Its name says that it trims.
    Trims,
    /// Its name says that it drains.
    Drains,
}

/// Why a step loses something, when it is plain that it does.
pub(super) fn cause(book: &Guidebook, procedure: &Procedure, step: &Step) -> Option<Cause> {
    if procedure.steps_from_yields {
        return None;
    }
    let name = step.name.value().map_or_else(String::new, |name| name.to_lowercase());
    let verbs = verbs(&name);
    if saws(book, procedure, step) || verbs.contains(&"saw") {
        Some(Cause::Saws)
    } else if verbs.contains(&"drain") {
        Some(Cause::Drains)
    } else if verbs.contains(&"trim") {
        Some(Cause::Trims)
    } else {
        None
    }
}

/// True when a saw is among the step's own tools, or among those that hold for every step.
pub(super) fn saws(book: &Guidebook, procedure: &Procedure, step: &Step) -> bool {
    let tools = if step.tools.is_absent() { &procedure.tools } else { &step.tools };
    let choices: &[Spanned<ToolChoice>] = match tools {
        Stated::Given(given) => &given.value,
        Stated::Absent | Stated::Broken => &[],
    };
    let mut ids = choices.iter().flat_map(|choice| choice.value.any_of.iter());
    ids.any(|id| book.builtin.tools.get(&id.value).is_some_and(|tool| tool.saws()))
}

/// The words of a name that stand where an instruction has its verb: first, or after `and`, `then` or a comma.
fn verbs(name: &str) -> Vec<&str> {
    let mut verbs = Vec::new();
    let mut next_is_verb = true;
    for word in name.split_whitespace() {
        let bare = word.trim_matches(|c: char| !c.is_alphanumeric());
        if next_is_verb && bare != "then" {
            verbs.push(bare);
        }
        next_is_verb = matches!(bare, "and" | "then") || word.ends_with(',');
    }
    verbs
}

#[cfg(test)]
mod tests {
    use super::verbs;

    #[test]
    fn only_verbs_count() {
        assert_eq!(verbs("skin and trim the loin"), ["skin", "trim"]);
        assert_eq!(verbs("weigh the trim"), ["weigh"]);
        assert_eq!(verbs("drain, then weigh"), ["drain", "weigh"]);
    }
}
