//! A step that gives the piece from which the whole procedure starts.

use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "start-given-by-step",
        group: Group::Order,
        level: Level::Fault,
        what: "A step gives a piece with the id of the start.",
        why: "The start is what is fetched from the cold. A piece made on the bench is another one, with another weight.",
        example: "start: { piece: pork-loin, … }\nsteps:\n  - take: pork-loin\n    give: { pork-middle: rest }\n  - take: pork-middle\n    give: { pork-loin: 60 %, … }",
        mend: "Give the piece a name of its own, or start from another piece.",
        source: "Guidebook format, \"Ids\": a piece's id is the same piece everywhere.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::GivesTheStart { output } = fault else { continue };
            let given = procedure.steps.get(output.step).and_then(|step| step.give.get(output.output));
            let Some(given) = given else { continue };
            let message = format!("`{}` is the start of the work, and no step can make it", given.piece.value);
            report.add(CHECK.info.at(given.piece.place, message).help("Write a name of its own for this piece."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files, steps};

    #[test]
    fn the_start_made_by_a_step() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-whole: { share: rest }
#     ^^^^^^^^^^^^^ fault[start-given-by-step] `chicken-whole` is the start of the work
    loss: 0
",
        );
    }

    /// Another procedure may give it.
    #[test]
    fn silent_where_another_procedure_gives_it() {
        files(&[
            ("chicken/whole.yaml", &format!("{HEAD}yields: {{ chicken-body: 60 %, chicken-legs: 40 % }}\n")),
            (
                "chicken/body.yaml",
                &format!(
                    "{}yields: {{ chicken-wings: 60 %, chicken-crown: 40 % }}\n",
                    HEAD.replace("piece: chicken-whole", "piece: chicken-body")
                ),
            ),
        ]);
    }
}
