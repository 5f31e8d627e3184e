//! A step that saws, trims or drains and states no loss.

use crate::analysis::step_balance::Whole;
use crate::checks::losses::{self, Cause};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "loss-unstated",
        group: Group::Balance,
        level: Level::Advice,
        what: "A step saws, trims or drains, and no loss is stated. A loss left out counts as zero.",
        why: "Saw dust, wet scraps and drip lie on no scale. Left out, they are missing from some piece's yield, and the weighed sum never reaches the start.",
        example: "- name: Saw the ribs off the chine\n  take: pork-bone-frame\n  tools: [band-saw]\n  give:\n    pork-back-ribs: 40–48 %\n    pork-bone: rest          # no loss",
        mend: "Add a range for the loss to the step, or `loss: 0` if it was weighed and found to be none.",
        source: "Guidebook format, \"Outputs\"; that sawing, trimming and dripping lose weight is common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for (step, balance) in procedure.steps.iter().zip(&analysis.balances) {
            // Where the step falls short of the whole, that fault stands for the loss that is missing.
            let short = balance.as_ref().is_some_and(|balance| matches!(balance.whole, Whole::FallsShort(_)));
            if !step.loss.is_absent() || short {
                continue;
            }
            let (does, what) = match losses::cause(subject.book, procedure, step) {
                Some(Cause::Saws) => ("saws", "saw dust"),
                Some(Cause::Trims) => ("trims", "wet scraps"),
                Some(Cause::Drains) => ("drains", "drip"),
                None => continue,
            };
            let message = format!("`{}` {does} and states no loss, so it counts as none", weight::step_name(step));
            let help = format!("Add the {what}, as in `loss: 0.1–0.4 %`, or write `loss: 0`.");
            report.add(CHECK.info.at(step.place, message).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// The ends of the others move when the loss is left out; that is no second finding.
    #[test]
    fn a_saw_without_loss() {
        steps(
            "steps:
  - name: Take the ribs off
#   ^^^^ advice[loss-unstated] saws and states no loss
    take: chicken-whole
    do: Cut.
    tools: [hand-saw]
    cautions: [bone-splinters]
    minutes: 1–2
    give:
      chicken-ribs: { share: 40–48 %, use: retail }
      chicken-chine: { share: 50.5–59 %, use: bone }
",
        );
    }

    #[test]
    fn trimming_and_draining_by_name() {
        steps(
            "steps:
  - name: Drain, then weigh
#   ^^^^ advice[loss-unstated] drains
    take: chicken-whole
    do: Weigh.
    minutes: 1–2
    give:
      chicken-drained: rest
  - name: Skin and trim the bird
#   ^^^^ advice[loss-unstated] trims
    take: chicken-drained
    do: Cut.
    minutes: 1–2
    give:
      chicken-ready: { share: rest, use: retail }
      chicken-scraps: { share: 1–3 %, use: fat-trim }
",
        );
    }

    /// A knife that parts at a joint loses nothing to speak of, and a stated zero is a statement.
    #[test]
    fn silent_for_a_stated_zero_and_for_a_plain_cut() {
        steps(
            "steps:
  - name: Trim the bird
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-ready: rest
    loss: 0
  - name: Halve the bird and weigh the trim
    take: chicken-ready
    do: Cut.
    minutes: 1–2
    give:
      chicken-half: { share: rest, pieces: 2, use: retail }
",
        );
    }
}
