//! A range of which some values can never occur beside the other outputs.

use crate::analysis::step_balance::{OutputBalance, Slot};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, losses};
use crate::finding::Level;
use crate::model::Output;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "range-wider-than-can-occur",
        group: Group::Balance,
        level: Level::Advice,
        what: "A part of a share's range can never occur, because the other outputs of the step always take more, or less, than it leaves.",
        why: "Dead ends in a range make bad work look like good work: a piece at the edge of the range is a weighing mistake, not a lucky day.",
        example: "give:\n  lamb-topside: 60–75 %   # 72–75 % can never occur beside 28–34 %\n  lamb-trim: 28–34 %",
        mend: "Write the tight range that the finding offers.",
        source: "Conservation of mass; guidebook format, \"What a share means\": a tight range.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for (step, balance) in procedure.steps.iter().zip(&analysis.balances) {
            // A loss left out that should not be moves the ends of the others; it has its own advice.
            if step.loss.is_absent() && losses::cause(subject.book, procedure, step).is_some() {
                continue;
            }
            for balance in balance.iter().flat_map(|balance| &balance.outputs).filter(|output| output.is_loose()) {
                let output = match balance.slot {
                    Slot::Give(position) => step.give.get(position),
                    Slot::Loss => step.loss.given().map(|loss| &loss.value),
                };
                if let Some(output) = output {
                    tell(output, balance, report);
                }
            }
        }
    }
}

fn tell(output: &Output, balance: &OutputBalance, report: &mut Report) {
    let Some(share) = output.share.given() else { return };
    let below = balance.never_low().map(|range| format!("below {} %", range.high));
    let above = balance.never_high().map(|range| format!("above {} %", range.low));
    let never: Vec<String> = below.into_iter().chain(above).collect();
    let message = format!("`{}` can never be {}: the other outputs leave no such share", output.piece.value, never.join(" or "));
    report.add(CHECK.info.at(share.place, message).help(format!("Write `{} %`.", balance.tight)));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// 60–75, 28–34 and a loss of 0–1: only 65–72 can occur (worked example, own calculation).
    #[test]
    fn dead_ends_on_both_sides() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 60–75 %, use: retail }
#                            ^^^^^^^ advice[range-wider-than-can-occur] `chicken-legs` can never be below 65 % or above 72 %
      chicken-body: { share: 28–34 %, use: retail }
    loss: 0–1 %
",
        );
    }

    #[test]
    fn each_loose_range_by_itself() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: 60–75 %
#                   ^^^^^^^ advice[range-wider-than-can-occur] can never be above 72 %
      chicken-body: { share: 28–50 %, use: retail }
#                            ^^^^^^^ advice[range-wider-than-can-occur] can never be above 40 %
    loss: 0–1 %
  - name: Part the legs
    take: chicken-legs
    do: Cut.
    minutes: 1–2
    give:
      chicken-thighs: { share: 55 %, use: retail }
      chicken-drumsticks: { share: rest, use: retail }
",
        );
    }

    /// `rest` follows the others, and a step that is not possible has no tight range.
    #[test]
    fn silent_beside_a_rest_and_in_a_step_that_is_not_possible() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0–0.3 %
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-exceed-whole]
      chicken-wings: { share: 15–90 %, use: retail }
      chicken-crown: { share: 90–95 %, use: retail }
",
        );
    }
}
