//! A key or a column that must be there and is not.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "missing-key",
        group: Group::Form,
        level: Level::Fault,
        what: "A mapping lacks a key that it must have, or a table a column. Some keys are demanded by others: a revision in force names `approved-by` and `review-by`, from number 2 on it says what changed; portions have a `weight` or a `thickness`.",
        why: "Without it the guide cannot be computed or must not be worked by: a step without `give` has no yield, a revision without a name has nobody who answers for it.",
        example: "- name: Take off the legs\n  take: chicken-whole\n  do: Cut through the open joint.\n  # `give` is missing",
        mend: "Add the key where the finding points.",
        source: "Guidebook format, version 1, \"A procedure\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries, files, procedure};

    #[test]
    fn keys_of_a_step_and_of_the_revision() {
        procedure(
            "title: Half
species: chicken
revision:
  number: 2
# ^^^^^^ fault[missing-key] `change` is missing: from revision 2 on
#^4:3 fault[missing-key] `approved-by` is missing: a revision in force
#^4:3 fault[missing-key] `review-by` is missing: a revision in force
  date: 2026-03-02
  author: course lead
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - name: Halve
#   ^^^^ fault[missing-key] `do` is missing from a step
    take: chicken-whole
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_draft_needs_no_approval() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, state: draft }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn neither_steps_nor_yields() {
        procedure(
            "title: Half
#^1:1 fault[missing-key] neither `steps` nor `yields`
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
",
        );
    }

    #[test]
    fn no_step_and_no_size_of_portions() {
        files(&[
            ("chicken/a.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps: []
#^6:1 fault[missing-key] `steps` holds no step
"),
            ("chicken/b.yaml", "title: Half, portioned
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail, portions: { count: 4 } } }, loss: 0–2 % }
#^7:155 fault[missing-key] `weight` or `thickness` is missing
"),
        ]);
    }

    #[test]
    fn a_column_of_a_cutting_test() {
        let table = Entry::File(b"date,cutter,unit,start,chicken-half\n2026-03-02,A,kg,1.8,1.79\n".to_vec());
        let expected = ["cutting-tests/chicken/sound.csv:1:1 fault[missing-key] the column `lot` is missing"];
        entries(vec![("cutting-tests/chicken/sound.csv", table)], &expected);
    }

    #[test]
    fn an_optional_key_may_be_left_out() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }
}
