//! A number behind a hash, behind a text.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "hash-after-text",
        group: Group::Form,
        level: Level::Advice,
        what: "Two spaces or more, a `#` and a number stand behind a free text. The number may belong to the text.",
        why: "In YAML a space and `#` begin a comment, so whatever follows is not shown to anyone.",
        example: "landmark: Cut in gap  #3 behind the neck",
        mend: "Put the whole text in quotes. Put a space after the `#` of a comment.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.6.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_number_after_two_spaces() {
        beside(
            "purpose: To cut in gap  #3 behind the neck
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ advice[hash-after-text] the number after `#`
",
        );
    }

    #[test]
    fn a_comment_set_apart() {
        beside(
            "purpose: To learn  # the joint
set-up-minutes: 10 # no free text
",
        );
    }
}
