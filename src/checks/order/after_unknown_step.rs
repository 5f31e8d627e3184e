//! An order that names a step which is not there.

use crate::analysis::order::OrderFault;
use crate::checks::nearest::nearest;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "after-unknown-step",
        group: Group::Order,
        level: Level::Fault,
        what: "`after` names a step that the procedure does not have, or the step itself.",
        why: "The order that anatomy asks for is not checked, and the guide links to nothing.",
        example: "- name: Take off the wings\n  after: [{ step: legs-of, why: The legs are in the way. }]   # legs-off is meant",
        mend: "Write the id of an earlier step: its `id`, or its name with hyphens.",
        source: "Guidebook format, \"On a step\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        // Where a step could not be read, it may be the one that is meant.
        if !procedure.complete {
            continue;
        }
        // Where a step takes what nothing gives, the step that is missing was to give it, and may be the one that is meant.
        if analysis.network.faults.iter().any(|fault| matches!(fault, OrderFault::UnknownTake { .. })) {
            continue;
        }
        for step in &procedure.steps {
            for after in &step.after {
                let id = after.step.value.as_str();
                let itself = id == step.id;
                if !itself && procedure.steps.iter().any(|other| other.id == id || other.id.is_empty()) {
                    continue;
                }
                let message = if itself { format!("`{id}` is this very step") } else { format!("no step has the id `{id}`") };
                let others = procedure.steps.iter().filter(|other| other.id != step.id).map(|other| other.id.as_str());
                let help = match nearest(id, others).filter(|_| !itself) {
                    Some(near) => format!("Write `{near}`."),
                    None => "Write the id of an earlier step.".to_owned(),
                };
                report.add(CHECK.info.at(after.step.place, message).help(help));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_misspelt_step_and_the_step_itself() {
        steps(
            "steps:
  - name: Take off the legs
    id: legs-off
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    id: wings-off
    after:
      - { step: legs-of, why: The joint lies open then. }
#               ^^^^^^^ fault[after-unknown-step] no step has the id `legs-of`
      - { step: wings-off, why: The joint lies open then. }
#               ^^^^^^^^^ fault[after-unknown-step] `wings-off` is this very step
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

    #[test]
    fn silent_for_a_step_that_is_there() {
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
    after: [{ step: take-off-the-legs, why: The joint lies open then. }]
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
}
