//! A quantity without a unit.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "unit-missing",
        group: Group::Form,
        level: Level::Fault,
        what: "A weight, a temperature or a length has no unit, or a run of a cutting test has none.",
        why: "`7.5` may be kilograms or pounds, and a chiller at `38` may be right in one scale and a disaster in the other.",
        example: "weight: 6.5–8.0       # refused\nweight: 6.5–8.0 kg",
        mend: "Add the unit: kg, g, lb, oz; °C, °F; mm, cm, in. Minutes have none.",
        source: "Guidebook format, version 1, \"Quantities\" and \"Where a finding points\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, beside, entries, procedure};

    #[test]
    fn a_weight() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0, typical: 1.8 kg, temperature: 0–4 °C }
#                                      ^^^^^^^ fault[unit-missing] a weight without a unit: `1.6–2.0`
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn a_temperature() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 }
#                                                                                ^^^ fault[unit-missing] a temperature without a unit
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn a_run_is_told_once() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-half\n2026-03-02,A,7,,1.8,1.79\n".to_vec());
        entries(
            vec![("cutting-tests/chicken/sound.csv", table)],
            &["cutting-tests/chicken/sound.csv:2:16 fault[unit-missing] this run has no unit"],
        );
    }

    #[test]
    fn minutes_have_none() {
        beside(
            "set-up-minutes: 5–10
",
        );
    }
}
