//! A step that takes a piece which only a later step gives.

use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "piece-used-before-made",
        group: Group::Order,
        level: Level::Fault,
        what: "A step takes a piece that is made by a later step only.",
        why: "At this point of the work the piece does not exist yet. Two steps are in the wrong order, or the wrong piece is named.",
        example: "- name: Take off the wings\n  take: chicken-body\n- name: Take off the legs\n  take: chicken-whole\n  give: { chicken-body: rest }",
        mend: "Move the step behind the one that makes the piece, or take another piece.",
        source: "Guidebook format, \"Where a finding points\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::TakenBeforeMade { at, made_by, circular: false } = fault else { continue };
            let (Some(step), Some(maker)) = (procedure.steps.get(at.step), procedure.steps.get(made_by.step)) else { continue };
            let Some(name) = step.take.get(at.take) else { continue };
            // The reason that the author gives for the order is the reason here too.
            let reason =
                step.after.iter().find(|after| after.step.value == maker.id).map_or("", |after| after.why.trim().trim_end_matches('.'));
            let why = if reason.is_empty() { String::new() } else { format!(". {reason}") };
            let message = format!("`{}` does not exist yet: step {} makes it{why}", name.value, made_by.step + 1);
            let help = format!("Move this step behind `{}`.", weight::step_name(maker));
            report.add(CHECK.info.at(name.place, message).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// Swapped steps: the order that the later one asks for is broken by the same mistake.
    #[test]
    fn two_steps_swapped() {
        steps(
            "steps:
  - name: Take off the wings
    after: [{ step: take-off-the-legs, why: The legs are in the way. }]
    take: chicken-body
#         ^^^^^^^^^^^^ fault[piece-used-before-made] `chicken-body` does not exist yet: step 2 makes it. The legs are in the way
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

    /// A step that takes the wrong piece leaves another one over, which is no second mistake.
    #[test]
    fn silent_for_the_piece_that_is_left_over() {
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
    take: chicken-scraps
#         ^^^^^^^^^^^^^^ fault[cycle-in-steps]
    do: Cut.
    minutes: 1–2
    give:
      chicken-crown: { share: rest, use: retail }
      chicken-back: 30 %
    loss: 0
  - name: Bone the back
    take: chicken-back
    do: Cut.
    minutes: 1–2
    give:
      chicken-scraps: 50 %
      chicken-bone: { share: rest, use: bone }
    loss: 0
",
        );
    }
}
