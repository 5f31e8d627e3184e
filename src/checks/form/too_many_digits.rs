//! More digits than can be weighed.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "too-many-digits",
        group: Group::Form,
        level: Level::Fault,
        what: "A number has more digits than are kept exactly.",
        why: "No scale shows them, so they come from a calculator and say nothing. Sums must be exact, so digits are not dropped in silence.",
        example: "share: 33.33333333333 %     # refused\nshare: 33.3 %",
        mend: "Round the number to what a scale can show.",
        source: "Guidebook format, version 1, \"What a share means\": all sums in exact decimals.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_share_from_a_calculator() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0.33333333333 %
#         ^^^^^^^^^^^^^^^ fault[too-many-digits] more decimals than can be weighed
",
        );
    }

    #[test]
    fn seven_decimals_of_a_percent_are_kept() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98.0000001–100 %, pieces: 2, use: retail }
    loss: 0–1.9999999 %
",
        );
    }
}
