//! A step that takes no piece.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "step-takes-nothing",
        group: Group::Form,
        level: Level::Fault,
        what: "The list at `take` is empty.",
        why: "A share is a part of what the step takes. Where nothing is taken, no share means anything.",
        example: "take: []           # refused",
        mend: "Name the piece that is cut, or a list where a step joins pieces.",
        source: "Guidebook format, version 1, \"A procedure\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn an_empty_list() {
        steps(
            "steps:
  - name: Halve
    take: []
#   ^^^^ fault[step-takes-nothing] the step takes no piece
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_list_of_one() {
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
