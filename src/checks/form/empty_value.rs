//! A key or an item without a value.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "empty-value",
        group: Group::Form,
        level: Level::Fault,
        what: "A key stands there and nothing behind it, or a list has an empty item.",
        why: "Someone meant to come back and did not. An empty text would be printed as if it were meant so.",
        example: "landmark:          # refused\ntools:\n  - boning-knife\n  -                # refused",
        mend: "Write the value, or take the key or the dash away.",
        source: "Guidebook format, version 1, \"A procedure\": leaving out an optional key is never a fault.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, steps};

    #[test]
    fn a_key_an_item_and_a_choice() {
        beside(
            "purpose:
#^8:1 fault[empty-value] nothing stands after `purpose`
sources:
  - a handbook
  -
# ^ fault[empty-value] an item of `sources` is empty
level: \"\"
#      ^^ fault[empty-value]
",
        );
    }

    #[test]
    fn a_choice_of_no_tool() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    tools: [boning-knife, { any-of: [] }]
#                           ^^^^^^ fault[empty-value] `any-of` names no tool
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn an_empty_list_of_wear_says_none() {
        steps(
            "steps:
  - name: Hang it up
    take: chicken-whole
    do: Hang the bird up.
    minutes: 1–2
    tools: []
    wear: []
    give:
      chicken-hung: { share: 98–100 %, pieces: 1, use: retail }
    loss: 0–2 %
",
        );
    }
}
