//! Outputs of a step whose lowest shares already pass the whole.

use crate::analysis::step_balance::{StepBalance, Whole};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "shares-exceed-whole",
        group: Group::Balance,
        level: Level::Fault,
        what: "The lowest shares of a step's outputs, the loss included, add up to more than what the step takes.",
        why: "Even on the leanest day the pieces would weigh more than the meat they were cut from, so the step can never happen as written, and every yield after it is wrong.",
        example: "give:\n  chicken-legs: 31–35 %\n  chicken-body: 70–72 %   # 31 + 70 is more than 100",
        mend: "Lower the low end of one range, or write `rest` for the piece that is whatever remains.",
        source: "Conservation of mass; guidebook format, \"What a share means\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        for step in &procedure.steps {
            let Some(balance) = StepBalance::of(step) else { continue };
            let Whole::Exceeds(by) = balance.whole else { continue };
            let finding = CHECK.info.at(step.give_key, format!("the low ends add up to {} %, {by} points over what the step takes", balance.sum_low));
            report.add(finding.help(format!("Lower the low ends by {by} points in all, or write `rest` for one piece.")));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn low_ends_over_the_whole() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-exceed-whole] 103 %, 3 points over
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: 72–74 %, use: retail }
    loss: 0
",
        );
    }

    /// A range that is only wider than can occur is advice of another check.
    #[test]
    fn silent_where_the_step_is_possible() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: rest, use: retail }
    loss: 0
",
        );
    }
}
