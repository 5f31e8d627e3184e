//! A step that comes before one that it is to come after.

use std::collections::BTreeMap;

use crate::analysis::network::Network;
use crate::analysis::order::OrderFault;
use crate::analysis::upstream::needs;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "order-against-anatomy",
        group: Group::Order,
        level: Level::Advice,
        what: "A step names in `after` a step that comes later in the guide.",
        why: "The author gave the reason: done in this order, the cut spoils a piece or hides the line of the next one.",
        example: "- name: Take off the sirloin end\n  after: [{ step: tenderloin-out, why: The line would cut the head of the tenderloin in two. }]\n- name: Take out the tenderloin\n  id: tenderloin-out",
        mend: "Move the step behind the one that it names.",
        source: "The author's own reason, stated beside the step. Guidebook format, \"On a step\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        let mut places: BTreeMap<&str, usize> = BTreeMap::new();
        for (at, step) in procedure.steps.iter().enumerate() {
            places.entry(step.id.as_str()).or_insert(at);
        }
        for (at, step) in procedure.steps.iter().enumerate() {
            for after in &step.after {
                let Some(later) = places.get(after.step.value.as_str()).copied().filter(|later| *later > at) else { continue };
                if told_already(&analysis.network, at, later) {
                    continue;
                }
                let Some(named) = procedure.steps.get(later) else { continue };
                let (name, earlier) = (weight::step_name(step), weight::step_name(named));
                let why = after.why.trim().trim_end_matches('.');
                let why = if why.is_empty() { String::new() } else { format!(". {why}") };
                let message = format!("`{name}` comes before `{earlier}`{why}");
                let help = format!("Move step {} in front of step {}.", later + 1, at + 1);
                report.add(CHECK.info.at(after.step.place, message).help(help));
            }
        }
    }
}

/// True when the step takes something that does not exist yet, or cannot do without the later step: then a
/// fault about the piece tells the same mistake.
fn told_already(network: &Network, step: usize, later: usize) -> bool {
    let too_early = |fault: &OrderFault| matches!(fault, OrderFault::TakenBeforeMade { at, .. } | OrderFault::TakenBeforeComplete { at, .. } if at.step == step);
    network.faults.iter().any(too_early) || needs(&network.pieces, &network.steps, step, later)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// Legs and wings could come off in any order; the author has a reason for one.
    #[test]
    fn with_the_reason_of_the_author() {
        steps(
            "steps:
  - name: Take off the wings
    take: chicken-whole
    after: [{ step: legs-off, why: The legs are in the way. }]
#                   ^^^^^^^^ advice[order-against-anatomy] `Take off the wings` comes before `Take off the legs`. The legs are in the way
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 10–12 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the legs
    id: legs-off
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// Where the step takes what the later one makes, the fault about the piece is the one finding.
    #[test]
    fn silent_where_the_piece_is_not_made_yet() {
        steps(
            "steps:
  - name: Take off the wings
    after: [{ step: take-off-the-legs, why: The legs are in the way. }]
    take: chicken-body
#         ^^^^^^^^^^^^ fault[piece-used-before-made]
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
}
