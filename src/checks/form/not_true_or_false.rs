//! A key that takes `true` or `false` and got another word.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "not-true-or-false",
        group: Group::Form,
        level: Level::Fault,
        what: "A key that says yes or no holds another word than `true` or `false`.",
        why: "Programs differ in whether `yes` and `on` are words or answers. Here every value is the text that stands there, so only two words count.",
        example: "house-cut: yes      # refused\nhouse-cut: true",
        mend: "Write `true` or `false`.",
        source: "YAML 1.2.2, section 10.2.1.2 (boolean); Guidebook format, version 1, \"How values are read\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn yes() {
        beside(
            "house-cut: yes
#          ^^^ fault[not-true-or-false] and here stands `yes`
",
        );
    }

    #[test]
    fn no_is_a_word_elsewhere() {
        beside(
            "house-cut: true
level: no
",
        );
    }
}
