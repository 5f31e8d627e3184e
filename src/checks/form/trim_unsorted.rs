//! Trim that is neither lean nor fat.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "trim-unsorted",
        group: Group::Form,
        level: Level::Fault,
        what: "The `use` of a piece is `trim` without a word of which.",
        why: "Lean goes to mince and fat to sausage or out, at different prices. In one tub they are worth what the cheaper one is.",
        example: "use: trim          # refused\nuse: lean-trim",
        mend: "Write `lean-trim` or `fat-trim`, and give two pieces where both come off.",
        source: "Guidebook format, version 1, \"Outputs\"; common practice: trim is kept by lean and fat.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn bare_trim() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: trim }
#                                                      ^^^^ fault[trim-unsorted] lean or fat
    loss: 0–2 %
",
        );
    }

    #[test]
    fn sorted_trim() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 90–95 %, pieces: 2, use: retail }
      chicken-fat: { share: rest, use: fat-trim }
    loss: 0–2 %
",
        );
    }
}
