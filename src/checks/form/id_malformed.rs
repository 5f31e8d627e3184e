//! Ids with a dot or another sign in them.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "id-malformed",
        group: Group::Form,
        level: Level::Fault,
        what: "The id of a piece, a step, a part, a tool or a caution holds a sign other than letters, digits and hyphens.",
        why: "Ids become addresses and columns of tables, where a dot or a slash means something else.",
        example: "give:\n  pork.loin: 40 %      # refused\n  pork-loin: 40 %",
        mend: "Write lower-case words joined by hyphens.",
        source: "Guidebook format, version 1, \"Ids\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    #[test]
    fn a_dot_in_a_piece() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken.half: { share: 98–100 %, pieces: 2, use: retail }
#     ^^^^^^^^^^^^ fault[id-malformed] a dot in the id `chicken.half`
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_slash_in_a_step() {
        steps(
            "steps:
  - name: Halve
    id: halve/1
#       ^^^^^^^ fault[id-malformed] `/` in the id
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_list_of_the_shop() {
        files(&[(
            "tools.yaml",
            "rib puller: { name: Rib puller }
#^1:1 fault[id-malformed] ` ` in the id
",
        )]);
    }

    #[test]
    fn a_name_is_no_id() {
        steps(
            "steps:
  - name: Halve it, no. 1 of 2
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half-2: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
