//! Outputs of a step whose highest shares do not reach the whole.

use crate::analysis::step_balance::{Slot, StepBalance, Whole};
use crate::checks::left_out::left_out;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::Step;
use crate::model::quantity::{Range, Share};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "shares-fall-short",
        group: Group::Balance,
        level: Level::Fault,
        what: "The highest shares of a step's outputs, the loss included, add up to less than what the step takes.",
        why: "Even on the best day some of the meat is nowhere: a piece, a tub or a loss is missing from the step, and nobody can say what becomes of it.",
        example: "give:\n  chicken-legs: 31–35 %\n  chicken-body: 60–64 %   # 35 + 64 is less than 100",
        mend: "Raise a high end, name the piece or the loss that is missing, or write `rest` for the piece that is whatever remains.",
        source: "Conservation of mass; guidebook format, \"What a share means\".",
    },
    run: Run::Check(run),
};

/// Up to so much a step may well lose; more that is missing is likely a piece (own judgement).
const LIKELY_LOSS: Share = Share::from_billionths(20_000_000);
/// By so much an end may well be misjudged; more is likely a piece left out, or a slip of the pen (own judgement).
const LIKELY_SLIP: Share = Share::from_billionths(100_000_000);

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (at, procedure, analysis) in subject.procedures() {
        let left_out = left_out(procedure, analysis);
        for (step_at, (step, balance)) in procedure.steps.iter().zip(&analysis.balances).enumerate() {
            let Some(balance) = balance else { continue };
            let Whole::FallsShort(by) = balance.whole else { continue };
            let name = weight::step_name(step);
            let amount = weight::points(by);
            let weight = weight::of(subject, at, step_at, by);
            let sum = balance.sum_high;
            let message = format!("the high ends of `{name}` add up to {sum} %, {amount} short of what the step takes{weight}");
            let mut finding = CHECK.info.at(step.give_key, message);
            let missing =
                left_out.iter().find(|(short, _)| *short == step_at).and_then(|(_, at)| procedure.steps.get(at.step)?.take.get(at.take));
            finding = match missing {
                Some(piece) => {
                    let range = Range { low: by, high: Share::WHOLE - balance.sum_low };
                    let help = format!("Add `{}: {range} %`, which a later step takes.", piece.value);
                    finding.help(help)
                }
                None => finding.help(help(step, balance, by)),
            };
            report.add(finding);
        }
    }
}

/// Offers the loss where none was stated and little is missing, or the largest output with its high end raised.
fn help(step: &Step, balance: &StepBalance, by: Share) -> String {
    if step.loss.is_absent() && by <= LIKELY_LOSS {
        let room = Share::WHOLE - balance.sum_low;
        let range = Range { low: by, high: room.min(by + LIKELY_LOSS) };
        return format!("Add `loss: {range} %`, or name the piece that is missing.");
    }
    let given = balance.outputs.iter().filter_map(|output| match output.slot {
        Slot::Give(position) => Some((output.stated, position)),
        Slot::Loss => None,
    });
    let largest = given.reduce(|most, output| if output.0.high > most.0.high { output } else { most });
    let named = largest.filter(|_| by <= LIKELY_SLIP).and_then(|(stated, position)| {
        let high = stated.high + by;
        let range = if stated.is_single() { Range::single(high) } else { Range { low: stated.low, high } };
        Some(format!("Raise a high end: `{}: {range} %` would fit.", step.give.get(position)?.piece.value))
    });
    named.unwrap_or_else(|| "Name the piece that is missing, with its share and use.".to_owned())
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn high_ends_under_the_whole() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-fall-short] 97 %, 3 points short of what the step takes (0.054 kg of a 1.8 kg start)
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: 60–61 %, use: retail }
    loss: 0–1 %
",
        );
    }

    /// Where the loss alone is missing, the fault stands for it: no advice to state one besides.
    #[test]
    fn one_finding_for_a_loss_left_out() {
        steps(
            "steps:
  - name: Trim the bird
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-fall-short] 0.3 points short
      chicken-ready: { share: 98.5–99.7 %, use: retail }
",
        );
    }

    /// An output that was taken out is missing twice: from the sum, and for the step that takes it.
    #[test]
    fn one_finding_for_an_output_left_out() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-fall-short] 31 points short of what the step takes (0.558 kg of a 1.8 kg start)
      chicken-body: { share: 65–69 %, use: retail }
    loss: 0
  - name: Part the legs
    take: both-legs
    do: Cut.
    minutes: 1–2
    give:
      chicken-thighs: { share: 55 %, use: retail }
      chicken-drumsticks: { share: rest, use: retail }
    loss: 0
",
        );
    }

    #[test]
    fn silent_where_the_loss_fills_the_whole() {
        steps(
            "steps:
  - name: Trim the bird
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-ready: { share: 98.5–99.7 %, use: retail }
    loss: 0.3–1.5 %
",
        );
    }
}
