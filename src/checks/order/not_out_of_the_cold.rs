//! A piece that goes back to the cold and does not lie out.

use std::collections::BTreeSet;

use crate::analysis::network::Network;
use crate::checks::nearest::nearest;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::procedure::BackToCold;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "not-out-of-the-cold",
        group: Group::Order,
        level: Level::Fault,
        what: "`back-to-cold` names a piece that does not lie on the bench at the end of the step: it is not made yet, is cut up already, or went back before.",
        why: "The clock of that piece cannot be right, and the learner looks for something to put away that is not there.",
        example: "- take: chicken-whole\n  give: { chicken-legs: 31–35 %, chicken-body: rest }\n  back-to-cold: [chicken-whole]   # it is legs and body by now",
        mend: "Name a piece that lies out, or write `back-to-cold: all`.",
        source: "Guidebook format, \"Time out of the cold\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        let Some(cold) = &analysis.cold else { continue };
        for (at, position) in &cold.idle_returns {
            let back = procedure.steps.get(*at).and_then(|step| step.back_to_cold.value());
            let Some(BackToCold::Pieces(pieces)) = back else { continue };
            let Some(name) = pieces.get(*position) else { continue };
            let id = name.value.as_str();
            let network = &analysis.network;
            let message = match network.pieces.iter().find(|piece| piece.id == id) {
                None => format!("no step gives `{id}`, so it cannot go back to the cold"),
                Some(piece) if piece.taken_by.is_some_and(|taking| taking.step <= *at) => {
                    format!("`{id}` is cut up by the end of this step")
                }
                Some(piece) if piece.given_by.first().is_some_and(|giving| giving.step > *at) => {
                    format!("`{id}` is not made yet at the end of this step")
                }
                Some(_) => format!("`{id}` lies in the cold already"),
            };
            let help = match meant(network, *at, id) {
                Some(near) => format!("Write `{near}`."),
                None => "Name a piece that lies out, or write `all`.".to_owned(),
            };
            report.add(CHECK.info.at(name.place, message).help(help));
        }
    }
}

/// The nearest name among the pieces that are on the bench, in or out of the cold, at the end of a step.
fn meant<'a>(network: &'a Network, at: usize, id: &str) -> Option<&'a str> {
    let made: BTreeSet<usize> = network.steps.iter().take(at + 1).flat_map(|step| step.gives.iter().copied()).collect();
    let open = network
        .pieces
        .iter()
        .enumerate()
        .filter(|(position, piece)| made.contains(position) && piece.taken_by.is_none_or(|taking| taking.step > at));
    nearest(id, open.map(|(_, piece)| piece.id.as_str()))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn cut_up_not_made_unknown_and_in_the_cold() {
        steps(
            "steps:
  - name: Take off the legs
    back-to-cold: [chicken-whole, chicken-wings, chicken-legs, chicken-legz]
#                  ^^^^^^^^^^^^^ fault[not-out-of-the-cold] `chicken-whole` is cut up by the end of this step
#                                 ^^^^^^^^^^^^^ fault[not-out-of-the-cold] `chicken-wings` is not made yet
#                                                              ^^^^^^^^^^^^ fault[not-out-of-the-cold] no step gives `chicken-legz`
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    back-to-cold: [chicken-legs]
#                  ^^^^^^^^^^^^ fault[not-out-of-the-cold] `chicken-legs` lies in the cold already
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    #[test]
    fn silent_for_what_lies_out() {
        steps(
            "steps:
  - name: Take off the legs
    back-to-cold: [chicken-legs, chicken-body]
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    back-to-cold: all
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }
}
