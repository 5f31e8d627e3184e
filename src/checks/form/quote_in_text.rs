//! A quote that ends in the middle of a text.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "quote-in-text",
        group: Group::Form,
        level: Level::Fault,
        what: "A text begins with a quote, the quote ends, and more text follows.",
        why: "YAML ends the text at the quote, and the file cannot be read past it.",
        example: "good: 'the bird's back is whole'      # refused\ngood: the bird's back is whole",
        mend: "Write an apostrophe inside single quotes twice, or use double quotes, or none where none are needed.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 7.3.1 and 7.3.2.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn an_apostrophe_in_single_quotes() {
        beside(
            "purpose: 'The bird's back comes out.'
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[quote-in-text]
",
        );
    }

    #[test]
    fn an_apostrophe_without_quotes() {
        beside(
            "purpose: The bird's back comes out.
level: \"the bird's\"
",
        );
    }
}
