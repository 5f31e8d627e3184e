//! A comma where a decimal point belongs.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "decimal-comma",
        group: Group::Form,
        level: Level::Fault,
        what: "A number has a decimal comma.",
        why: "In one country `1,5 kg` is a kilo and a half and in another it is fifteen hundred, so the format knows the point alone.",
        example: "weight: 6,5–8,0 kg    # refused\nweight: 6.5–8.0 kg",
        mend: "Write a decimal point.",
        source: "Guidebook format, version 1, \"Quantities\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{procedure, steps};

    #[test]
    fn a_comma_in_a_weight() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start:
  piece: chicken-whole
  weight: 1,6–2,0 kg
#         ^^^^^^^^^^ fault[decimal-comma] a decimal comma in `1,6–2,0 kg`
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn a_share_and_nothing_that_depends_on_it() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel, from neck to tail.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2,5 %
#         ^^^^^^^ fault[decimal-comma] `0–2,5 %`
",
        );
    }
}
