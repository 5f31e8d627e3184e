//! A quote that is not closed.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "unclosed-quote",
        group: Group::Form,
        level: Level::Fault,
        what: "A text begins with a quote and no quote ends it.",
        why: "YAML reads on to the end of the file for it, so the file cannot be read.",
        example: "good: \"No bone is cut      # refused\ngood: \"No bone is cut\"",
        mend: "Close the quote where the text ends. Inside single quotes, write an apostrophe twice.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 7.3.1 and 7.3.2.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_double_quote() {
        beside(
            "purpose: \"To learn.
#        ^^^^^^^^^^ fault[unclosed-quote] this quote is not closed
",
        );
    }

    #[test]
    fn a_quote_inside_a_word() {
        beside(
            "purpose: Cut 2\" off the end.
",
        );
    }
}
