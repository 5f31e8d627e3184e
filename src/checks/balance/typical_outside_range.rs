//! A typical value that its own range does not hold.

use crate::analysis::step_balance::{Slot, StepBalance, Whole};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::Stated;
use crate::model::procedure::{Output, ShareSpec, Start};
use crate::model::quantity::{Mass, Range, Share};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "typical-outside-range",
        group: Group::Balance,
        level: Level::Fault,
        what: "A typical share lies outside the range of its output, or a typical start weight outside the start weight.",
        why: "The typical value is what the cutter aims at and what every example is worked at. Outside its range it calls good work bad.",
        example: "give:\n  chicken-legs: { share: 31–35 %, typical: 38 % }",
        mend: "Write a typical value that lies in the range, or widen the range.",
        source: "Guidebook format, \"What a share means\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (at, procedure, analysis) in subject.procedures() {
        start(subject, &procedure.start, report);
        for (step_at, (step, balance)) in procedure.steps.iter().zip(&analysis.balances).enumerate() {
            let given = step.give.iter().enumerate().map(|(position, output)| (Slot::Give(position), output));
            let loss = step.loss.given().map(|loss| (Slot::Loss, &loss.value));
            for (slot, output) in given.chain(loss) {
                let Some((range, typical)) = range(output, slot, balance.as_ref()).zip(output.typical.given()) else { continue };
                let Some(miss) = miss(typical.value, range) else { continue };
                let weight = weight::of(subject, at, step_at, miss);
                let piece = &output.piece.value;
                let amount = weight::points(miss);
                let message = format!("the typical share of `{piece}` is {} %, outside {range} % by {amount}{weight}", typical.value);
                report.add(CHECK.info.at(typical.place, message).help(format!("Write a share from {} to {} %.", range.low, range.high)));
            }
        }
    }
}

/// The range that must hold the typical share; that of `rest` is known where the step is possible.
fn range(output: &Output, slot: Slot, balance: Option<&StepBalance>) -> Option<Range<Share>> {
    match output.share.value()? {
        ShareSpec::Between(range) => Some(*range),
        ShareSpec::Rest => {
            let balance = balance.filter(|balance| balance.whole == Whole::Possible)?;
            Some(balance.outputs.iter().find(|entry| entry.slot == slot)?.stated)
        }
    }
}

/// By how much a share misses the nearer end of a range that does not hold it.
fn miss(share: Share, range: Range<Share>) -> Option<Share> {
    if range.contains(share) {
        return None;
    }
    Some(if share < range.low { range.low - share } else { share - range.high })
}

fn start(subject: &Subject<'_>, start: &Start, report: &mut Report) {
    let (Stated::Given(weight), Stated::Given(typical)) = (&start.weight, &start.typical) else { return };
    let (range, value) = (weight.value, typical.value);
    if range.contains(value) {
        return;
    }
    let miss = if value < range.low { range.low.picograms() - value.picograms() } else { value.picograms() - range.high.picograms() };
    let miss = weight::figure(subject.book, Mass::from_picograms(miss, value.unit()).kilograms());
    let message = format!("the typical start weight is {value}, outside {} by {miss}", weight::stated(range));
    report.add(CHECK.info.at(typical.place, message).help(format!("Write a weight from {} to {}.", range.low, range.high)));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{procedure, steps};

    #[test]
    fn a_typical_share_above_its_range() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, typical: 38 %, use: retail }
#                                              ^^^^ fault[typical-outside-range] 38 %, outside 31–35 % by 3 points (0.054 kg of a 1.8 kg start)
      chicken-body: { share: rest, typical: 60 %, use: retail }
#                                           ^^^^ fault[typical-outside-range] 60 %, outside 64.7–69 % by 4.7 points
    loss: 0–0.3 %
",
        );
    }

    #[test]
    fn a_typical_start_outside_the_start_weight() {
        procedure(
            "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1200 g, temperature: 0–4 °C }
#                                                           ^^^^^^ fault[typical-outside-range] 1200 g, outside 1.6–2 kg by 0.4 kg
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
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

    /// The ends belong to the range.
    #[test]
    fn silent_at_the_ends() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, typical: 35 %, use: retail }
      chicken-body: { share: rest, typical: 65 %, use: retail }
    loss: 0
",
        );
    }
}
