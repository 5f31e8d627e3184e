//! A unit that does not measure this.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "unit-wrong",
        group: Group::Form,
        level: Level::Fault,
        what: "A quantity has a unit of another kind, a unit that the format does not know, or a unit where none belongs.",
        why: "Whoever wrote minutes with a temperature, or a share in kilograms, meant another key or another number.",
        example: "minutes: 3 min        # refused\nminutes: 3",
        mend: "Write a unit of the format, or none where none belongs.",
        source: "Guidebook format, version 1, \"Quantities\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, procedure, steps};

    #[test]
    fn several() {
        beside(
            "set-up-minutes: 10 min
#               ^^^^^^ fault[unit-wrong] minutes have no unit
",
        );
    }

    #[test]
    fn a_share_in_kilograms() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 kg
#         ^^^^^^ fault[unit-wrong] written in percent
",
        );
    }

    #[test]
    fn an_unknown_unit() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kilos, typical: 1.8 kg, temperature: 0–4 °C }
#                                      ^^^^^^^^^^^^^ fault[unit-wrong] `kilos` is no unit of weight
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn every_unit_of_the_format() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 3 lb 8 oz – 4.4 lb, typical: 1800 g, temperature: 32–39 F }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }
}
