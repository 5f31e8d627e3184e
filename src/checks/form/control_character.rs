//! Control characters, which no text holds.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "control-character",
        group: Group::Form,
        level: Level::Fault,
        what: "The file holds a character that controls a device and stands for no letter.",
        why: "Such characters come from a damaged file or a bad copy, and could make a terminal show something else than what is written.",
        example: "title: Leg<U+001B>[2J      # an escape that clears a screen",
        mend: "Delete the character; most editors can show what does not print.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 5.1.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, beside, entries};

    #[test]
    fn an_escape() {
        entries(
            vec![("chicken/a.yaml", Entry::File(b"title: \x1b[2J\n".to_vec()))],
            &["chicken/a.yaml:1:8 fault[control-character] U+001B"],
        );
    }

    #[test]
    fn accents_and_dashes_are_letters() {
        beside(
            "purpose: Café style – à la minute, at 4 °C.
",
        );
    }
}
