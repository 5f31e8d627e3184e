//! A tag of YAML, which a guidebook does not use.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "yaml-tag",
        group: Group::Form,
        level: Level::Fault,
        what: "A value begins with `!`, which in YAML gives it a type.",
        why: "Every value here is the text that stands there. A type could only change what was written.",
        example: "do: !note Keep it cold       # refused\ndo: \"!note Keep it cold\"",
        mend: "Take the tag away. Put a text that begins with `!` in quotes.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.9.1; Guidebook format, version 1, \"How values are read\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_tag() {
        beside(
            "level: !!str month one
#      ^^^^^ fault[yaml-tag] `!!str`
",
        );
    }

    #[test]
    fn an_exclamation_in_the_text() {
        beside(
            "level: Stop! Then ask.
",
        );
    }
}
