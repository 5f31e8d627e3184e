//! A step that gives only what it takes.

use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "step-does-nothing",
        group: Group::Order,
        level: Level::Fault,
        what: "Every output of a step is a piece that the same step takes.",
        why: "A step without a result is a step that nobody can check. Most often the name of the result was copied from the line above.",
        example: "- name: Trim the loin\n  take: pork-loin\n  give:\n    pork-loin: rest",
        mend: "Name what comes off, or give the piece another id once it is changed; else take the step out.",
        source: "Guidebook format, \"A procedure\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::DoesNothing { step } = fault else { continue };
            let Some(step) = procedure.steps.get(*step) else { continue };
            let message = format!("`{}` gives nothing but what it takes", weight::step_name(step));
            let name = step.take.first().map_or("", |name| name.value.as_str());
            report.add(CHECK.info.at(step.place, message).help(format!("Give the result a name of its own, such as `{name}-trimmed`.")));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn the_same_piece_in_and_out() {
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
  - name: Dry the body
#   ^^^^ fault[step-does-nothing] `Dry the body` gives nothing but what it takes
    take: chicken-body
    do: Dry it.
    minutes: 1–2
    give:
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// A step that changes one piece into one other does something.
    #[test]
    fn silent_for_one_piece_under_a_new_name() {
        steps(
            "steps:
  - name: Dry the bird
    take: chicken-whole
    do: Dry it.
    minutes: 1–2
    give:
      chicken-dry: { share: rest, use: retail }
    loss: 0–1 %
",
        );
    }
}
