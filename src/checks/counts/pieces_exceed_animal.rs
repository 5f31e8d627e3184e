//! More pieces together than an animal has.

use crate::analysis::facts::{Agreed, output_at};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "pieces-exceed-animal",
        group: Group::Counts,
        level: Level::Fault,
        what: "An output says that more lie there together than the cut list gives to one animal.",
        why: "Weight and share are of all of them, so a number too high makes one piece too light on every label.",
        example: "# cuts/chicken.yaml says per-animal: 2\ngive:\n  chicken-wings: { share: 15–18.5 %, pieces: 4 }",
        mend: "Correct `pieces`, or `per-animal` in the cut list.",
        source: "Guidebook format, \"Outputs\": `per-animal` bounds `pieces`.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for (piece, facts) in analysis.network.pieces.iter().zip(&analysis.facts) {
            let Agreed::Stated { value, at } = &facts.pieces else { continue };
            let Some(per_animal) = subject.book.cuts.get(&piece.id).and_then(|cut| cut.per_animal.given()) else { continue };
            let Some(pieces) = output_at(procedure, *at).and_then(|output| output.pieces.given()) else { continue };
            if *value <= per_animal.value {
                continue;
            }
            let message = format!("{value} `{}` lie together, and an animal has {}", piece.id, per_animal.value);
            let finding = CHECK.info.at(pieces.place, message).also(per_animal.place, "how many an animal has");
            report.add(finding.help(format!("Write `pieces: {}`.", per_animal.value)));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files};

    #[test]
    fn four_wings_of_one_bird() {
        files(&[
            ("cuts/chicken.yaml", "chicken-wings: { name: Wing, per-animal: 2 }\n"),
            (
                "chicken/whole.yaml",
                &format!(
                    "{HEAD}steps:
  - name: Take off the wings
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: {{ share: 9–12 %, pieces: 4, use: retail }}
#                                             ^ fault[pieces-exceed-animal] 4 `chicken-wings` lie together, and an animal has 2
      chicken-body: {{ share: rest, use: retail }}
    loss: 0
"
                ),
            ),
        ]);
    }

    #[test]
    fn silent_up_to_the_number_and_without_one() {
        files(&[
            ("cuts/chicken.yaml", "chicken-wings: { name: Wing, per-animal: 2 }\nchicken-bits: { name: Bits }\n"),
            (
                "chicken/whole.yaml",
                &format!(
                    "{HEAD}steps:
  - name: Take off the wings
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: {{ share: 9–12 %, pieces: 2, use: retail }}
      chicken-bits: {{ share: 9–12 %, pieces: 9, use: lean-trim }}
      chicken-body: {{ share: rest, use: retail }}
    loss: 0
"
                ),
            ),
        ]);
    }
}
