//! A zero byte in a text.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "nul-byte",
        group: Group::Form,
        level: Level::Fault,
        what: "The file holds a byte that is zero.",
        why: "It is no text, or a disk or a network has damaged it: the rest may be damaged too.",
        example: "title: Whole chicken<00>",
        mend: "Take the file from the last good copy, or delete the byte.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 5.1.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, beside, entries};

    #[test]
    fn a_zero_byte() {
        entries(vec![("chicken/a.yaml", Entry::File(b"title: a whole chicken\0\n".to_vec()))], &["chicken/a.yaml:1:23 fault[nul-byte]"]);
    }

    #[test]
    fn zeros_as_digits() {
        beside(
            "set-up-minutes: 0
",
        );
    }
}
