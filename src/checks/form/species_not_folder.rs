//! A species that is not the folder.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "species-not-folder",
        group: Group::Form,
        level: Level::Fault,
        what: "The `species` of a procedure is not the name of the folder in which it lies.",
        why: "The folder decides the address of the guide and the species decides limits and anatomy. When they differ, one of the two is wrong.",
        example: "# pork/loin.yaml\nspecies: beef      # refused",
        mend: "Write the name of the folder, or move the file.",
        source: "Guidebook format, version 1, \"Files\": `species` inside equals the folder.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::procedure;

    #[test]
    fn another_species() {
        procedure(
            "title: Half
species: duck
#        ^^^^ fault[species-not-folder] the file lies in `chicken/`
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn the_folder() {
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
