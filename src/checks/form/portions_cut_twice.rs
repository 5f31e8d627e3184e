//! Portions by weight and by thickness at once.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "portions-cut-twice",
        group: Group::Form,
        level: Level::Fault,
        what: "Portions have a `weight` and a `thickness`.",
        why: "One cut cannot meet both: a thicker loin gives a heavier steak of the same thickness. The cutter must know which of the two counts.",
        example: "portions: { weight: 155–165 g, thickness: 20–25 mm }     # refused\nportions: { weight: 155–165 g }",
        mend: "Keep the one that the customer is promised.",
        source: "Guidebook format, version 1, \"Outputs\"; common practice: portions are specified by weight or by thickness.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn both() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail, portions: { weight: 150–160 g, thickness: 20–25 mm } }
#                                                                                             ^^^^^^^^^ fault[portions-cut-twice] both stand here
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
      chicken-half: { share: 98–100 %, pieces: 2, use: retail, portions: { weight: 150–400 g } }
    loss: 0–2 %
",
        );
    }
}
