//! A step, or `yields`, that names no piece.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "step-gives-nothing",
        group: Group::Form,
        level: Level::Fault,
        what: "A step has an empty `give`, or a procedure has `yields` and no piece in it.",
        why: "What is cut does not vanish. Without its pieces the step has no yield, and later steps have nothing to take.",
        example: "give: {}           # refused",
        mend: "Name each piece that comes off, with its share.",
        source: "Guidebook format, version 1, \"A procedure\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{procedure, steps};

    #[test]
    fn an_empty_give() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give: {}
#   ^^^^ fault[step-gives-nothing] the step gives no piece
",
        );
    }

    #[test]
    fn yields_of_loss_alone() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
yields: { loss: 1 % }
#^6:1 fault[step-gives-nothing] `yields` names no piece
",
        );
    }

    #[test]
    fn one_piece_is_enough() {
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
