//! Lists and mappings that stand too deep in one another.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "too-deep",
        group: Group::Form,
        level: Level::Fault,
        what: "Lists and mappings are nested more than 64 deep.",
        why: "No guidebook needs that. A file that does was made to make programs fail.",
        example: "purpose: [[[[[[[[ … ]]]]]]]]",
        mend: "Take the nesting apart.",
        source: "CWE-674, uncontrolled recursion (MITRE); the bound is own judgement.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, HEAD, STEPS, entries};

    #[test]
    fn seventy_deep() {
        let deep = format!("title: {}{}\n", "[".repeat(70), "]".repeat(70));
        entries(vec![("chicken/a.yaml", Entry::File(deep.into_bytes()))], &["chicken/a.yaml:1:72 fault[too-deep]"]);
    }

    #[test]
    fn ten_deep_is_another_matter() {
        let deep = format!("title: {}{}\n{}", "[".repeat(10), "]".repeat(10), HEAD.split_once('\n').map_or("", |head| head.1));
        let text = format!("{deep}{STEPS}");
        entries(vec![("chicken/a.yaml", Entry::File(text.into_bytes()))], &["chicken/a.yaml:1:8 fault[wrong-kind]"]);
    }
}
