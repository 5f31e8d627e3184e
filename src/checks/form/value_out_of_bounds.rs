//! A value that cannot be.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "value-out-of-bounds",
        group: Group::Form,
        level: Level::Fault,
        what: "A share is below 0 or above 100 %, a weight or minutes are below 0, a number of pieces is 0, or a point lies outside of its picture.",
        why: "No step gives more than it takes, and no piece weighs less than nothing: a digit or a point is wrong.",
        example: "share: 310–350 %     # refused\nshare: 31–35 %",
        mend: "Write a value inside the bounds.",
        source: "Guidebook format, version 1, \"Where a finding points\": a share below 0 or above 100 %.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_share_above_the_whole() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–120 %, pieces: 2, use: retail }
#                            ^^^^^^^^ fault[value-out-of-bounds]
    loss: 0–2 %
",
        );
    }

    #[test]
    fn no_piece_at_all() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 0, use: retail }
#                                              ^ fault[value-out-of-bounds] expected 1 or more
    loss: 0–2 %
",
        );
    }

    #[test]
    fn the_bounds_themselves() {
        steps(
            "steps:
  - name: Weigh
    take: chicken-whole
    do: Weigh the bird.
    minutes: 0–1
    give:
      chicken-weighed: { share: 100 %, pieces: 1, use: retail }
    loss: 0
",
        );
    }
}
