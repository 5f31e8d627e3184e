//! A hash that cuts a text short.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "hash-cuts-text",
        group: Group::Form,
        level: Level::Fault,
        what: "A text without quotes holds a space and `#`. What follows is lost, and looks like the rest of the text.",
        why: "In YAML a space and `#` begin a comment, so the rest of the line would be shown to no one.",
        example: "good: Cut in gap #3        # refused\ngood: \"Cut in gap #3\"",
        mend: "Put the whole text in quotes. Put two spaces before a comment, or write it on a line of its own.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.6; Guidebook format, version 1, \"How values are read\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_number_with_a_hash() {
        beside(
            "purpose: To cut in gap #3 behind the neck
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[hash-cuts-text]
",
        );
    }

    #[test]
    fn a_hash_inside_a_word_and_in_quotes() {
        beside(
            "purpose: \"To cut in gap #3.\"
level: month#2
",
        );
    }
}
