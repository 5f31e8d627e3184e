//! A key that the format does not have.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "unknown-key",
        group: Group::Form,
        level: Level::Fault,
        what: "A mapping has a key that the format does not know there.",
        why: "A misspelt key is a value that nobody reads: a caution under `caution` would be missing before the cut.",
        example: "caution: [keep-cold]       # refused\ncautions: [keep-cold]",
        mend: "Write the key that is offered, or take it out.",
        source: "Guidebook format, version 1, \"Keys not named here are a fault\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_misspelt_key() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    landmarc: The joint.
#   ^^^^^^^^ fault[unknown-key] a step has no key `landmarc`
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_misspelt_key_is_not_missing_as_well() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    instruction: Cut along the keel.
#   ^^^^^^^^^^^ fault[unknown-key] `instruction`
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn names_of_pieces_are_the_author_s() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      anything-at-all: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
