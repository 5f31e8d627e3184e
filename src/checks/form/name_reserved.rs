//! Ids that mean something else.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "name-reserved",
        group: Group::Form,
        level: Level::Fault,
        what: "A piece has an id that means something else in a step or in a cutting test: `start`, `loss`, `rest`, `date`, `cutter`, `lot`, `unit`, `shop`, `revision`, `minutes`, `received`, `note`.",
        why: "A tub called `loss` would be counted as what no longer lies on the bench, and a column called `note` would not be read as a weight.",
        example: "give:\n  loss: 0–2 %        # refused: `loss` stands beside `give`\nloss: 0–2 %",
        mend: "Give the piece a name of its own. Write `loss` beside `give`, and `rest` as a share.",
        source: "Guidebook format, version 1, \"Ids\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{procedure, steps};

    #[test]
    fn the_loss_among_the_pieces() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
      loss: 0–2 %
#     ^^^^ fault[name-reserved] `loss` cannot be the id of a piece
",
        );
    }

    #[test]
    fn the_start() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: unit, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
#               ^^^^ fault[name-reserved] `unit`
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn the_word_inside_a_longer_id() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-rest: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
