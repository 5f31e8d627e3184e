//! A step that gives a piece under the name of what it takes.

use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "step-gives-what-it-takes",
        group: Group::Order,
        level: Level::Fault,
        what: "A step gives, beside other pieces, one with the same id as a piece that it takes.",
        why: "One id is one piece everywhere in the guidebook. The whole and what is left of it are two, with two weights and two yields.",
        example: "- take: pork-loin\n  give:\n    pork-ribs: 10–12 %\n    pork-loin: rest   # no longer the loin that was taken",
        mend: "Give what is left a name of its own.",
        source: "Guidebook format, \"Ids\": a piece's id is the same piece everywhere.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::GivesWhatItTakes { output, .. } = fault else { continue };
            let Some(given) = procedure.steps.get(output.step).and_then(|step| step.give.get(output.output)) else { continue };
            let id = &given.piece.value;
            let message = format!("`{id}` is what the step takes; what is left of it is another piece");
            report.add(CHECK.info.at(given.piece.place, message).help(format!("Write a name of its own, such as `{id}-trimmed`.")));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// Taken again by the next step under the doubled name: that is the same mistake.
    #[test]
    fn what_is_left_under_the_old_name() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-whole: rest
#     ^^^^^^^^^^^^^ fault[step-gives-what-it-takes] `chicken-whole` is what the step takes
    loss: 0
  - name: Take off the wings
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    #[test]
    fn silent_where_it_gives_nothing_else() {
        steps(
            "steps:
  - name: Dry the bird
#   ^^^^ fault[step-does-nothing]
    take: chicken-whole
    do: Dry it.
    minutes: 1–2
    give:
      chicken-whole: { share: rest }
    loss: 0–1 %
",
        );
    }
}
