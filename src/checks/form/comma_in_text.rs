//! A comma inside a text between braces.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "comma-in-text",
        group: Group::Form,
        level: Level::Fault,
        what: "A text between braces holds a comma, which in YAML begins the next key there.",
        why: "Only the part before the comma would be shown, and the rest would be lost without a word.",
        example: "- { file: pictures/leg.svg, alt: Leg folded back, joint open }     # refused\n- { file: pictures/leg.svg, alt: \"Leg folded back, joint open\" }",
        mend: "Put the whole text in quotes.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 7.4.2 and 7.3.3.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_comma_between_braces() {
        files(&[(
            "cuts/chicken.yaml",
            "chicken-half: { name: Half, lies: Left, or right side }
#                                       ^^^^^^^^^^^^^ fault[comma-in-text] a comma between braces
",
        )]);
    }

    #[test]
    fn a_comma_in_quotes() {
        files(&[(
            "cuts/chicken.yaml",
            "chicken-half: { name: Half, lies: \"Left, or right side\" }
",
        )]);
    }
}
