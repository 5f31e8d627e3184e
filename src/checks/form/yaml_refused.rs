//! Text that YAML refuses for a reason without a name here.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "yaml-refused",
        group: Group::Form,
        level: Level::Fault,
        what: "YAML cannot be read at this place, for a reason that has no check of its own.",
        why: "The file cannot be read past this place.",
        example: "tools: [boning-knife] and steel       # refused",
        mend: "Quote the text that stands here, or put long text under `|`.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021).",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn text_behind_a_list() {
        beside(
            "needs: [chicken/whole] too
#                      ^^^ fault[yaml-refused]
",
        );
    }

    #[test]
    fn a_comment_behind_a_list() {
        beside(
            "sources: [a handbook]  # this one
",
        );
    }
}
