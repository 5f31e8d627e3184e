//! A colon and a space inside a text without quotes.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "colon-in-text",
        group: Group::Form,
        level: Level::Fault,
        what: "A text without quotes holds a colon followed by a space, which in YAML ends a key.",
        why: "The file cannot be read past this line, although every word of it is right.",
        example: "mistakes: Cutting bone: the joint was not opened   # refused\nmistakes: \"Cutting bone: the joint was not opened\"",
        mend: "Put the whole text in quotes, or write it under `|` on the lines below.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 7.3.3; Guidebook format, version 1, \"How values are read\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_text_with_a_colon() {
        beside(
            "purpose: Take it apart: two halves.
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[colon-in-text] a colon followed by a space
",
        );
    }

    #[test]
    fn an_item_of_a_list() {
        beside(
            "sources: 
  - Handbook: chapter 3
#   ^^^^^^^^^^^^^^^^^^^ fault[colon-in-text]
",
        );
    }

    #[test]
    fn a_time_of_day_and_quotes() {
        beside(
            "purpose: \"Take it apart: two halves.\"
level: from 10:30 on
",
        );
    }
}
