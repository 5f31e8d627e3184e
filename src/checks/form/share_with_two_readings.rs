//! A bare number that is no decimal below 1.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "share-with-two-readings",
        group: Group::Form,
        level: Level::Fault,
        what: "A share has no percent sign and is no decimal below 1, such as `1` or `28`.",
        why: "`28` may be 28 % or a slip for 0.28, and `1` may be one part in a hundred or all of it. Guessed wrong, the step is a hundred times off.",
        example: "share: 28        # refused\nshare: 28 %\nshare: 0.28",
        mend: "Write the percent sign, or a decimal below 1.",
        source: "Guidebook format, version 1, \"Outputs\": 1 and 28 are faults that offer both readings.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_bare_number() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100, pieces: 2, use: retail }
#                            ^^^^^^ fault[share-with-two-readings] `98–100` could be
    loss: 0–2 %
",
        );
    }

    #[test]
    fn one() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 1
#         ^ fault[share-with-two-readings] `1` could be percent
",
        );
    }

    #[test]
    fn a_decimal_and_zero() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 0.999, pieces: 2, use: retail }
      chicken-neck: { share: 0.001, use: bone }
    loss: 0
",
        );
    }
}
