//! A bracket or a brace that is not closed.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "unclosed-bracket",
        group: Group::Form,
        level: Level::Fault,
        what: "A `[` or `{` has no partner.",
        why: "YAML reads on to the end of the file for it, so the file cannot be read.",
        example: "tools: [boning-knife, steel      # refused\ntools: [boning-knife, steel]",
        mend: "Write the closing sign where the values end. Put a text that holds brackets in quotes.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 7.4.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_list() {
        beside(
            "needs: [chicken/whole
#      ^ fault[unclosed-bracket] this `[` is not closed
level: x
",
        );
    }

    #[test]
    fn brackets_in_quotes() {
        beside(
            "purpose: \"To learn [first\"
",
        );
    }
}
