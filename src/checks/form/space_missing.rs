//! A dash or a colon without its space.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "space-missing",
        group: Group::Form,
        level: Level::Fault,
        what: "A dash at the start of an item, or a colon behind a key, has no space after it.",
        why: "Without the space it is part of the word, so YAML sees one long text and no key.",
        example: "minutes:1–3      # refused\nminutes: 1–3",
        mend: "Put a space after the colon or the dash.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 8.2.1 and 8.2.2.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_colon() {
        beside(
            "set-up-minutes:5
#^8:1 fault[space-missing] after `:`
level: month one
",
        );
    }

    #[test]
    fn an_address_and_a_range() {
        beside(
            "sources: [https://example.org, \"p. 3:4\"]
",
        );
    }
}
