//! Outputs of a step whose lowest shares already pass the whole.

use crate::analysis::step_balance::{Slot, StepBalance, Whole};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::Step;
use crate::model::quantity::{Range, Share};

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
    for (at, procedure, analysis) in subject.procedures() {
        for (step_at, (step, balance)) in procedure.steps.iter().zip(&analysis.balances).enumerate() {
            let Some(balance) = balance else { continue };
            let Whole::Exceeds(by) = balance.whole else { continue };
            let name = weight::step_name(step);
            let amount = weight::points(by);
            let weight = weight::of(subject, at, step_at, by);
            let sum = balance.sum_low;
            let message = format!("the low ends of `{name}` add up to {sum} %, {amount} over what the step takes{weight}");
            report.add(CHECK.info.at(step.give_key, message).help(help(step, balance, by)));
        }
    }
}

/// Offers the largest output with its low end lowered, or with its single value lowered, until the step fits.
fn help(step: &Step, balance: &StepBalance, by: Share) -> String {
    let given = balance.outputs.iter().filter(|output| matches!(output.slot, Slot::Give(_)) && !output.is_rest && output.stated.low >= by);
    let largest = given.reduce(|most, output| if output.stated.low > most.stated.low { output } else { most });
    let named = largest.and_then(|output| {
        let Slot::Give(position) = output.slot else { return None };
        let low = output.stated.low - by;
        let range = if output.stated.is_single() { Range::single(low) } else { Range { low, high: output.stated.high } };
        Some(format!("Lower a low end: `{}: {range} %` would fit.", step.give.get(position)?.piece.value))
    });
    named.unwrap_or_else(|| format!("Lower the low ends by {} in all.", weight::points(by)))
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
#   ^^^^ fault[shares-exceed-whole] 103 %, 3 points over what the step takes (0.054 kg of a 1.8 kg start)
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: 72–74 %, use: retail }
    loss: 0
",
        );
    }

    /// The second step takes 67 % of the start; one point of that is 12 g of 1.8 kg.
    #[test]
    fn weight_of_a_later_step_is_that_of_what_it_takes() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 33 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-exceed-whole] 101 %, 1 point over what the step takes (0.012 kg of a 1.8 kg start)
      chicken-wings: { share: 16 %, use: retail }
      chicken-crown: { share: 85 %, use: retail }
    loss: 0
",
        );
    }

    /// A range that is only wider than can occur is advice of another check, and so is what follows downstream.
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
