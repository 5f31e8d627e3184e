//! Steps that each need what the other makes.

use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "cycle-in-steps",
        group: Group::Order,
        level: Level::Fault,
        what: "A step takes a piece that can only be made from what this same step gives, so no order of the steps works.",
        why: "The work can never begin. One of the steps names the wrong piece.",
        example: "- take: pork-loin-rough\n  give: { pork-loin: rest }\n- take: pork-loin\n  give: { pork-loin-rough: rest }",
        mend: "Take a piece that comes from the start of the procedure.",
        source: "Guidebook format, \"Tubs\": a piece is taken after the last step that gives it.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::TakenBeforeMade { at, made_by, circular: true } = fault else { continue };
            let (Some(step), Some(maker)) = (procedure.steps.get(at.step), procedure.steps.get(made_by.step)) else { continue };
            let Some(name) = step.take.get(at.take) else { continue };
            let making = weight::step_name(maker);
            let message = if at.step == made_by.step {
                format!("`{}` is made by this very step, so it is never there to be taken", name.value)
            } else {
                format!("`{}` comes from `{making}`, which needs what this step gives", name.value)
            };
            let finding = CHECK.info.at(name.place, message);
            // The first piece of a network that is complete is the start.
            let start = analysis.network.pieces.first().filter(|piece| piece.is_start && piece.taken_by.is_none());
            report.add(finding.help(match start {
                Some(start) => format!("Write `{}`, from which the work starts.", start.id),
                None => "Take a piece that an earlier step gives.".to_owned(),
            }));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn two_steps_that_need_each_other() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-crown
#         ^^^^^^^^^^^^^ fault[cycle-in-steps] `chicken-crown` comes from `Take off the wings`, which needs what this step gives
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
      chicken-crown: rest
    loss: 0
",
        );
    }

    /// Steps in the wrong order that some order mends have a fault of another check.
    #[test]
    fn silent_where_an_order_mends_it() {
        steps(
            "steps:
  - name: Take off the wings
    take: chicken-body
#         ^^^^^^^^^^^^ fault[piece-used-before-made]
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
",
        );
    }
}
