//! Two guides that nobody can tell apart.

use std::collections::BTreeMap;

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "guides-alike",
        group: Group::Reference,
        level: Level::Advice,
        what: "Two guides have the same title, species and starting piece.",
        why: "In a list, on a wall card and in a search they look the same, so a learner may work by the wrong one.",
        example: "# pork/loin-a.yaml and pork/loin-b.yaml\ntitle: Pork loin, boneless\nstart: { piece: pork-loin-bone-in, … }",
        mend: "Say in one of the titles what sets it apart.",
        source: "Common practice: two ways to break one piece have two names.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let mut seen: BTreeMap<(String, &str, &str), (&str, Place)> = BTreeMap::new();
    for procedure in &subject.book.procedures {
        let (Some(title), Some(species), Some(start)) = (procedure.title.given(), procedure.species.value(), procedure.start.piece.value())
        else {
            continue;
        };
        let key = (title.value.to_lowercase(), species.as_str(), start.as_str());
        if let Some((other, place)) = seen.get(&key) {
            let message = format!("`{other}` has the same title, species and starting piece");
            let finding = CHECK.info.at(title.place, message).also(*place, "the other title");
            report.add(finding.help("Say in one of the titles what sets the guide apart."));
            continue;
        }
        seen.insert(key, (&procedure.id, title.place));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn the_same_title() {
        files(&[
            ("chicken/a.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
            ("chicken/b.yaml", "title: half
#      ^^^^ advice[guides-alike] `chicken/a` has the same title
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }

    #[test]
    fn another_starting_piece() {
        files(&[
            ("chicken/a.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
            ("chicken/b.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-crown, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-crown, do: Cut along the keel., minutes: 1–2, give: { chicken-breast: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }
}
