//! Two documents in one file.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "several-documents",
        group: Group::Form,
        level: Level::Fault,
        what: "A line `---` begins a second document in the same file.",
        why: "A file holds one procedure, named by its path. A second one would have no id and would not be read.",
        example: "title: Pork loin\n…\n---\ntitle: Pork belly",
        mend: "Move what follows to a file of its own, or delete the line `---`.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 9.2; Guidebook format, version 1, \"Files\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::procedure;

    #[test]
    fn a_second_document() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
---
title: Another
#^8:1 fault[several-documents]
",
        );
    }

    #[test]
    fn a_line_at_the_top() {
        procedure(
            "---
title: Half
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
