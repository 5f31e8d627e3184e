//! Typical shares that do not make up the whole.

use crate::analysis::step_balance::{Slot, StepBalance};
use crate::analysis::typicals::{Miss, Typicals};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::Step;
use crate::model::quantity::Share;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "typicals-cannot-add-up",
        group: Group::Balance,
        level: Level::Fault,
        what: "The typical shares that are given leave the other outputs too little or too much, or all are given and miss the whole.",
        why: "The typical column is the one the cutter reads. When it does not add up, the scale will never show what it promises.",
        example: "give:\n  chicken-legs: { share: 31–35 %, typical: 32 % }\n  chicken-body: { share: 64–69 %, typical: 65 % }   # 97 %",
        mend: "Change one typical share so that all add up to 100 %, or take one out: the tool works it out from the ranges.",
        source: "Conservation of mass; guidebook format, \"What a share means\": all given may miss the whole by 0.0015, which is rounding.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (at, procedure, analysis) in subject.procedures() {
        for (step_at, (step, balance)) in procedure.steps.iter().zip(&analysis.balances).enumerate() {
            let Some(balance) = balance else { continue };
            let (miss, all) = match &balance.typicals {
                Typicals::CannotAddUp(miss) => (*miss, false),
                Typicals::AllGivenMiss(miss) => (*miss, true),
                Typicals::Found(_) | Typicals::OutsideRange(_) | Typicals::Unknown => continue,
            };
            let (sum, side) = match miss {
                Miss::Over(by) => (Share::WHOLE + by, "over"),
                Miss::Under(by) => (Share::WHOLE - by, "short of"),
            };
            let amount = weight::points(miss.amount());
            let weight = weight::of(subject, at, step_at, miss.amount());
            let what = match (all, miss) {
                (true, _) => "the typical shares add up to",
                (false, Miss::Over(_)) => "with these typicals the step gives at least",
                (false, Miss::Under(_)) => "with these typicals the step gives at most",
            };
            let message = format!("{what} {sum} %, {amount} {side} what it takes{weight}");
            report.add(CHECK.info.at(step.give_key, message).help(help(step, balance, miss)));
        }
    }
}

/// Offers one typical share, moved by the whole miss, that still lies in its range.
fn help(step: &Step, balance: &StepBalance, miss: Miss) -> String {
    let moved = balance.outputs.iter().find_map(|output| {
        let typical = match miss {
            Miss::Over(by) => output.given_typical? - by,
            Miss::Under(by) => output.given_typical? + by,
        };
        let Slot::Give(position) = output.slot else { return None };
        let piece = &step.give.get(position)?.piece.value;
        output.stated.contains(typical).then(|| format!("Write `typical: {typical} %` for `{piece}`."))
    });
    moved.unwrap_or_else(|| "Take out one typical share: it is worked out from the ranges.".to_owned())
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn all_given_and_short_of_the_whole() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[typicals-cannot-add-up] the typical shares add up to 97 %, 3 points short of what it takes (0.054 kg of a 1.8 kg start)
      chicken-legs: { share: 31–35 %, typical: 32 %, use: retail }
      chicken-body: { share: rest, typical: 65 %, use: retail }
",
        );
    }

    #[test]
    fn the_others_cannot_make_up_the_whole() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[typicals-cannot-add-up] at least 101 %, 1 point over what it takes
      chicken-legs: { share: 31–35 %, typical: 35 %, use: retail }
      chicken-body: { share: 65–68.5 %, typical: 66 %, use: retail }
    loss: 0–0.5 %
",
        );
    }

    /// A miss of 0.1 points is rounding when all are given; a typical outside its range has its own finding.
    #[test]
    fn silent_for_rounding_and_for_a_typical_that_is_wrong_by_itself() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, typical: 33.4 %, use: retail }
      chicken-body: { share: rest, typical: 66.7 % }
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, typical: 20 %, use: retail }
#                                               ^^^^ fault[typical-outside-range]
      chicken-crown: { share: rest, typical: 84 %, use: retail }
",
        );
    }
}
