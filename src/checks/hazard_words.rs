//! Words that findings about hazards share: reasons, sets of protection, lists of ids.
//!
//! Words only; what is owed is computed in `analysis::demands`.

use crate::analysis::demands::Because;
use crate::model::Guidebook;
use crate::model::builtin::demands::WearDemand;
use crate::model::words::{Harm, Signal};

/// `` `a` ``, `` `a` and `b` ``, `` `a`, `b` and `c` ``.
pub(super) fn and<'t>(ids: impl IntoIterator<Item = &'t str>) -> String {
    joined(ids, "and")
}

/// `` `a`, `b` or `c` ``.
pub(super) fn or<'t>(ids: impl IntoIterator<Item = &'t str>) -> String {
    joined(ids, "or")
}

fn joined<'t>(ids: impl IntoIterator<Item = &'t str>, word: &str) -> String {
    let mut quoted: Vec<String> = ids.into_iter().map(|id| format!("`{id}`")).collect();
    let Some(last) = quoted.pop() else { return String::new() };
    if quoted.is_empty() { last } else { format!("{} {word} {last}", quoted.join(", ")) }
}

/// The sets that meet a demand: `` `mesh-gauntlet`, or `cut-glove` with `arm-guard` ``.
pub(super) fn sets(demand: &WearDemand) -> String {
    let set = |set: &Vec<String>| set.iter().map(|id| format!("`{id}`")).collect::<Vec<_>>().join(" with ");
    demand.any_of.iter().map(set).collect::<Vec<_>>().join(", or ")
}

/// A tool as it is called in a sentence: `the band saw`.
pub(super) fn the_tool(book: &Guidebook, tool: &str) -> String {
    format!("the {}", inside(&book.tool_name(tool)))
}

/// A name inside a sentence: its first letter small, unless more capitals follow.
pub(super) fn inside(name: &str) -> String {
    let mut letters = name.chars();
    match letters.next() {
        Some(first) if !letters.clone().next().is_some_and(char::is_uppercase) => first.to_lowercase().chain(letters).collect(),
        _ => name.to_owned(),
    }
}

/// What demands something, as the subject of `demands`.
pub(super) fn because(book: &Guidebook, because: &Because<'_>) -> String {
    match because {
        Because::Tool(tool) => the_tool(book, tool),
        Because::DrawnToBody => "a blade that is drawn toward the body".to_owned(),
        Because::Part(part) => format!("a step that names, frees or cuts `{part}`"),
        Because::RawFish => "fish that is eaten raw".to_owned(),
        Because::Histamine(species) => format!("`{species}`, which forms histamine as it warms,"),
        Because::GloveOnRaw => "a cut glove on food that is eaten raw".to_owned(),
        Because::Condition => "this step".to_owned(),
    }
}

/// The signal words that a harm asks for.
pub(super) const fn signals_for(harm: Harm) -> &'static [Signal] {
    match harm {
        Harm::Death => &[Signal::Danger, Signal::Warning],
        Harm::Lasting => &[Signal::Warning],
        Harm::Healing => &[Signal::Caution],
        Harm::Property => &[Signal::Notice],
    }
}

/// The form of a word that goes with so many things.
pub(super) const fn of_number<'t>(count: usize, one: &'t str, several: &'t str) -> &'t str {
    if count == 1 { one } else { several }
}

/// ` (here and in 2 more steps)`, or nothing.
pub(super) fn here_and_in(more: usize) -> String {
    match more {
        0 => String::new(),
        1 => " (here and in 1 more step)".to_owned(),
        many => format!(" (here and in {many} more steps)"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_and_sets_read_as_sentences_do() {
        assert_eq!(and(["a"]), "`a`");
        assert_eq!(and(["a", "b", "c"]), "`a`, `b` and `c`");
        assert_eq!(or(["a", "b"]), "`a` or `b`");
        let demand = WearDemand { any_of: vec![vec!["mesh-gauntlet".to_owned()], vec!["cut-glove".to_owned(), "arm-guard".to_owned()]] };
        assert_eq!(sets(&demand), "`mesh-gauntlet`, or `cut-glove` with `arm-guard`");
        assert_eq!((inside("Band saw"), inside("CNC saw")), ("band saw".to_owned(), "CNC saw".to_owned()));
    }
}
