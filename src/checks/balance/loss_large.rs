//! A loss larger than such a step is likely to have.

use crate::analysis::step_balance::Slot;
use crate::checks::losses::{self, Cause};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::procedure::ShareSpec;
use crate::model::quantity::Share;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "loss-large",
        group: Group::Balance,
        level: Level::Advice,
        what: "The loss of a step can be over 3 % of what it takes, or over 2 % where it saws.",
        why: "More than that seldom drips or falls as dust. Most often a tray was not weighed, a tare was wrong, or trim went into the loss.",
        example: "- name: Saw the ribs off the chine\n  tools: [band-saw]\n  loss: 2–5 %",
        mend: "Name the trim or bone that is in the loss as a piece of its own, or correct the range.",
        source: "Own judgement: 3 % for a knife step, 2 % for a saw step. Steps that drain are left out.",
    },
    run: Run::Check(run),
};

/// The most that a knife step is likely to lose (own judgement).
const KNIFE: Share = Share::from_billionths(30_000_000);
/// The most that a saw step is likely to lose (own judgement).
const SAW: Share = Share::from_billionths(20_000_000);

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (at, procedure, analysis) in subject.procedures() {
        if procedure.steps_from_yields {
            continue;
        }
        for (step_at, (step, balance)) in procedure.steps.iter().zip(&analysis.balances).enumerate() {
            let Some(share) = step.loss.value().and_then(|loss| loss.share.given()) else { continue };
            let Some(balance) = balance.as_ref().and_then(|balance| balance.outputs.iter().find(|output| output.slot == Slot::Loss)) else {
                continue;
            };
            let saws = losses::saws(subject.book, procedure, step);
            if losses::cause(subject.book, procedure, step) == Some(Cause::Drains) {
                continue;
            }
            // A loss that is the rest is as wide as the others leave it; only its low end says something.
            let most = if share.value == ShareSpec::Rest { balance.tight.low } else { balance.stated.high };
            let (limit, kind) = if saws { (SAW, "a saw step") } else { (KNIFE, "a knife step") };
            if most <= limit {
                continue;
            }
            let over = weight::points(most - limit);
            let weight = weight::of(subject, at, step_at, most - limit);
            let message = format!("a loss of {most} % is {over} over the {limit} % that {kind} is likely to lose{weight}");
            report.add(CHECK.info.at(share.place, message).help("Name what is in it as a piece, with its share and use."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn over_three_points_with_a_knife_and_over_two_with_a_saw() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 2–5 %
#         ^^^^^ advice[loss-large] 2 points over the 3 % that a knife step is likely to lose (0.036 kg of a 1.8 kg start)
  - name: Halve the body
    take: chicken-body
    do: Saw.
    tools: [hand-saw]
    cautions: [bone-splinters]
    minutes: 1–2
    give:
      chicken-half: { share: rest, pieces: 2, use: retail }
    loss: { share: 0–2.5 % }
#                  ^^^^^^^ advice[loss-large] 0.5 points over the 2 % that a saw step
",
        );
    }

    #[test]
    fn silent_at_the_limit_and_for_drip() {
        steps(
            "steps:
  - name: Drain the bird
    take: chicken-whole
    do: Hang it.
    minutes: 1–2
    give:
      chicken-drained: rest
    loss: 2–6 %
  - name: Halve the bird
    take: chicken-drained
    do: Saw.
    tools: [hand-saw]
    cautions: [bone-splinters]
    minutes: 1–2
    give:
      chicken-half: { share: rest, pieces: 2, use: retail }
    loss: 0.5–2 %
",
        );
    }
}
