//! Lessons in which the species changes on the same boards and nobody is told to clean in between.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Procedure;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "species-change-unmarked",
        group: Group::Caution,
        level: Level::Advice,
        what: "A lesson goes from a guide of one species to a guide of another, and the later guide does not carry `separate-species`.",
        why: "Juice on a board carries germs from poultry to meat that is cooked less, and fish leaves an allergen behind. In a class the boards change hands faster than anyone cleans them.",
        example: "# courses/first-term.yaml\nlessons:\n  - { name: Birds and loins, procedures: [chicken/eight-pieces, pork/loin-boneless] }",
        mend: "Put `separate-species` beside the `steps` of the later guide, or give each species a lesson of its own.",
        source: "FDA Food Code, 3-302.11(A)(2), read in Washington Administrative Code 246-215-03306, 2013; Regulation (EC) 853/2004, Annex III, section I, chapter V, point 2(c), as restated by the Food Safety Authority of Ireland.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    for lesson in book.courses.iter().flat_map(|course| &course.lessons) {
        let guides: Vec<_> = lesson.procedures.iter().filter_map(|id| Some((id, book.procedure(&id.value)?))).collect();
        for ((_, before), (id, after)) in guides.iter().zip(guides.iter().skip(1)) {
            let (Some(from), Some(to)) = (before.species.value(), after.species.value()) else { continue };
            if from == to || is_marked(after) || !after.cautions_known {
                continue;
            }
            let message = format!("the lesson goes from `{from}` to `{to}`, and `{}` does not carry `separate-species`", after.id);
            report.add(CHECK.info.at(id.place, message).help(format!("Add `separate-species` beside the steps of `{}`.", after.id)));
        }
    }
}

/// True when the caution covers the whole guide, or its first step.
fn is_marked(procedure: &Procedure) -> bool {
    let first = procedure.steps.first().into_iter().flat_map(|step| &step.cautions);
    procedure.cautions.iter().chain(first).any(|caution| caution.value == "separate-species")
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    const STEPS: &str = "steps:\n  - { name: Halve, take: whole, do: Cut., minutes: 1–2, give: { half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }\n";

    fn guide(species: &str, cautions: &str) -> String {
        format!(
            "title: Halves of {species}\nspecies: {species}\nrevision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}\nstart: {{ piece: whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }}\ncautions: [{cautions}]\n{}",
            STEPS.replace("whole", &format!("{species}-whole")).replace("half", &format!("{species}-half"))
        )
        .replace("piece: whole", &format!("piece: {species}-whole"))
    }

    fn lesson(text: &str, second: &str) {
        files(&[
            ("courses/term.yaml", text),
            ("chicken/whole.yaml", &guide("chicken", "keep-cold")),
            ("rabbit/whole.yaml", &guide("rabbit", second)),
        ]);
    }

    #[test]
    fn from_poultry_to_rabbit() {
        lesson(
            "title: First term
lessons:
  - { name: Birds and rabbits, procedures: [chicken/whole, rabbit/whole] }
#                                                          ^^^^^^^^^^^^ advice[species-change-unmarked] the lesson goes from `chicken` to `rabbit`
",
            "keep-cold",
        );
    }

    #[test]
    fn silent_where_it_is_marked_or_another_lesson() {
        lesson(
            "title: First term\nlessons:\n  - { name: Both, procedures: [chicken/whole, rabbit/whole] }\n",
            "keep-cold, separate-species",
        );
        lesson(
            "title: First term\nlessons:\n  - { name: One, procedures: [chicken/whole] }\n  - { name: Two, procedures: [rabbit/whole] }\n",
            "keep-cold",
        );
    }
}
