//! Two steps with one id.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "doubled-step-id",
        group: Group::Form,
        level: Level::Fault,
        what: "Two steps of a procedure have the same id. A step without `id` has its name, with hyphens, as its id.",
        why: "Links, translations, waivers and `after` find a step by its id, and would find the wrong one.",
        example: "- name: Trim\n  take: loin-rough\n- name: Trim            # the second `trim`\n  take: tenderloin-rough",
        mend: "Give one step another name, or an `id` of its own.",
        source: "Guidebook format, version 1, \"Ids\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn two_names_alike() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2 }
    loss: 0–2 %
  - name: halve
#         ^^^^^ fault[doubled-step-id] two steps have the id `halve`
    take: chicken-half
    do: Trim the edges.
    minutes: 1–2
    give:
      chicken-half-trimmed: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn an_id_of_its_own_parts_two_names_alike() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2 }
    loss: 0–2 %
  - name: Halve
    id: trim
    take: chicken-half
    do: Trim the edges.
    minutes: 1–2
    give:
      chicken-half-trimmed: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
