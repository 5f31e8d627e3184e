//! A text that begins with a sign.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "text-start",
        group: Group::Form,
        level: Level::Fault,
        what: "A text without quotes begins with a sign that means something to YAML, such as `@`, `%`, `>` or `-`.",
        why: "YAML takes the sign for an order of its own, and the file cannot be read past it.",
        example: "good: > 5 mm of fat is left       # refused\ngood: \"> 5 mm of fat is left\"",
        mend: "Put the whole text in quotes.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 5.3.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_percent_sign() {
        beside(
            "purpose: % of the whole
#        ^^^^^^^^^^^^^^ fault[text-start] a text can't begin with `%`
",
        );
    }

    #[test]
    fn the_sign_inside_the_text() {
        beside(
            "purpose: 5 % of the whole @ 4 °C > 0
",
        );
    }
}
