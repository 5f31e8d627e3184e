//! A comment close behind a text.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "hash-after-text",
        group: Group::Form,
        level: Level::Advice,
        what: "A comment stands one space behind a free text. It may be the rest of that text.",
        why: "In YAML a space and `#` begin a comment, so whatever follows is not shown to anyone.",
        example: "landmark: The third gap # behind the neck",
        mend: "Put two spaces before a comment, or the whole text in quotes.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.6.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn one_space_before_a_comment() {
        beside(
            "purpose: To learn # to follow the joint
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ advice[hash-after-text]
",
        );
    }

    #[test]
    fn two_spaces_before_a_comment() {
        beside(
            "purpose: To learn  # the joint
set-up-minutes: 10 # no free text
",
        );
    }
}
