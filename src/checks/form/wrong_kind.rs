//! A list, a mapping or a text where another kind belongs.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "wrong-kind",
        group: Group::Form,
        level: Level::Fault,
        what: "A key takes a text and holds a list, or takes a list and holds a text, and so on. A key that is missing before its colon is told here too.",
        why: "The value cannot be understood, and guessing what was meant could put the wrong tool or piece into the guide.",
        example: "tools: boning-knife       # refused\ntools: [boning-knife]",
        mend: "Write the kind that the help names.",
        source: "Guidebook format, version 1, \"A procedure\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, steps};

    #[test]
    fn a_text_where_a_list_belongs() {
        beside(
            "sources: a handbook
#        ^^^^^^^^^^ fault[wrong-kind] `sources` takes a list
",
        );
    }

    #[test]
    fn a_list_where_a_text_belongs() {
        beside(
            "level: [one, two]
#      ^ fault[wrong-kind] `level` takes a text
",
        );
    }

    #[test]
    fn either_where_either_will_do() {
        steps(
            "steps:
  - name: Halve
    take: [chicken-whole]
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
