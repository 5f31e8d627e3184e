//! A step that takes a piece which an earlier step has taken.

use crate::analysis::facts::output_at;
use crate::analysis::network::Giving;
use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Procedure;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "piece-used-twice",
        group: Group::Order,
        level: Level::Fault,
        what: "Two steps take the same piece. A step takes all of a piece, so nothing is left for the second.",
        why: "The second cutter finds an empty tray. Counted twice, the piece makes the yields of both steps wrong.",
        example: "- take: chicken-whole\n  give: { chicken-legs: 31–35 %, chicken-body: rest }\n- take: chicken-whole   # it is legs and body by now",
        mend: "Take one of the pieces that the first step gives.",
        source: "Guidebook format, \"Tubs\": a piece is taken by at most one step, all of it.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::TakenTwice { at, first } = fault else { continue };
            let Some(name) = procedure.steps.get(at.step).and_then(|step| step.take.get(at.take)) else { continue };
            let message = if at.step == first.step {
                format!("`{}` stands twice in this `take`", name.value)
            } else {
                format!("`{}` is used up: step {} took all of it", name.value, first.step + 1)
            };
            let finding = CHECK.info.at(name.place, message);
            // A piece that lies there by now, that nothing takes and that has no use, is what is likely meant.
            let mut left = analysis.network.given().map(|(_, piece)| piece).filter(|piece| piece.taken_by.is_none());
            let unused = left.find(|piece| piece.given_by.iter().all(|giving| giving.step < at.step && !has_use(procedure, *giving)));
            report.add(finding.help(match unused {
                Some(piece) if at.step != first.step => format!("Write `{}`, which nothing takes.", piece.id),
                _ if at.step == first.step => "Take out one of the two.".to_owned(),
                _ => "Take a piece that the first step gives.".to_owned(),
            }));
        }
    }
}

fn has_use(procedure: &Procedure, giving: Giving) -> bool {
    output_at(procedure, giving).is_some_and(|output| !output.purpose.is_absent())
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn at_the_second_take() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-whole
#         ^^^^^^^^^^^^^ fault[piece-used-twice] `chicken-whole` is used up: step 1 took all of it
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
    fn silent_where_each_piece_is_taken_once() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
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
