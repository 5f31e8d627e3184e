//! A step with more than one output that is whatever the others leave.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::procedure::ShareSpec;
use crate::model::{Output, Stated};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "more-than-one-rest",
        group: Group::Balance,
        level: Level::Fault,
        what: "More than one output of a step has the share `rest`.",
        why: "One `rest` is a number: whatever the other pieces leave. Two of them can be anything, so nobody knows what to expect of either.",
        example: "give:\n  chicken-legs: rest\n  chicken-body: rest",
        mend: "Keep one `rest` and write the share of the other, as in `31–35 %`.",
        source: "Guidebook format, \"Outputs\": one `rest` a step.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        for step in &procedure.steps {
            let loss = match &step.loss {
                Stated::Given(loss) => Some(&loss.value),
                Stated::Absent | Stated::Broken => None,
            };
            let is_rest = |output: &&Output| output.share.value() == Some(&ShareSpec::Rest);
            let rests: Vec<&Output> = step.give.iter().chain(loss).filter(is_rest).collect();
            let [first, second, ..] = rests.as_slice() else { continue };
            let Some(wrong) = second.share.given() else { continue };
            let message = format!("`{}` is `rest` already, and a step has one rest", first.piece.value);
            report.add(CHECK.info.at(wrong.place, message).help("Write this share as a range, such as `5–7 %`."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn two_rests_and_nothing_else_of_the_step() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: rest, use: retail }
      chicken-body: rest
#                   ^^^^ fault[more-than-one-rest] `chicken-legs` is `rest` already
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
",
        );
    }

    #[test]
    fn silent_for_one_rest_that_is_the_loss() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: 64–68 %, use: retail }
    loss: rest
",
        );
    }
}
