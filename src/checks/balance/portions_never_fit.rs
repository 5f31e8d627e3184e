//! Portions that not even the heaviest piece gives.

use crate::analysis::facts::{Agreed, output_at};
use crate::analysis::portions::{PortionFit, PortionVerdict};
use crate::analysis::procedure::ProcedureAnalysis;
use crate::checks::doubtful::Doubtful;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::{Level, Place};
use crate::model::Procedure;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "portions-never-fit",
        group: Group::Balance,
        level: Level::Fault,
        what: "Even the heaviest piece, cut into the lightest portions, does not give the stated number of portions, or not one where none is stated.",
        why: "Whoever orders by the number of portions is short every time, and whoever cuts to the weight finds no piece that is large enough.",
        example: "give:\n  chicken-legs: { share: 31–35 %, pieces: 2, portions: { weight: 500–600 g } }   # a leg weighs 350 g at most",
        mend: "Write a lighter portion or a smaller `count`, or correct the share or `pieces`.",
        source: "Guidebook format, \"Outputs\": how many come out is the floor for each piece; portions that never fit are a fault.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let doubtful = Doubtful::of(subject);
    for (at, procedure, analysis) in subject.procedures() {
        // Of a start weight that something contradicts already, nothing follows.
        if doubtful.holds(at) {
            continue;
        }
        for fit in analysis.portions.iter().filter(|fit| fit.verdict == PortionVerdict::NeverFits) {
            let Some((place, piece)) = place(procedure, analysis, fit).zip(analysis.network.pieces.get(fit.piece)) else { continue };
            let portion = weight::stated(fit.portion);
            let heaviest = weight::figure(subject.book, fit.one_piece.high);
            let count = fit.counts.high;
            let (message, help) = match fit.spec.count {
                Some(wanted) => (
                    format!(
                        "`{}` gives {count} portions of {portion} at most, not {}: the heaviest piece weighs {heaviest}",
                        piece.id, wanted.low
                    ),
                    format!("Write `count: {count}` or less, or a lighter portion."),
                ),
                None => (
                    format!("`{}` gives no portion of {portion}: the heaviest piece weighs {heaviest}", piece.id),
                    format!("Write a portion of {heaviest} or less, or correct `pieces`."),
                ),
            };
            report.add(CHECK.info.at(place, message).help(help));
        }
    }
}

/// Where the portions of a piece are stated first.
fn place(procedure: &Procedure, analysis: &ProcedureAnalysis, fit: &PortionFit) -> Option<Place> {
    let Agreed::Stated { at, .. } = analysis.facts.get(fit.piece)?.portions else { return None };
    Some(output_at(procedure, at)?.portions.given()?.place)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    /// One leg weighs 2.0 kg · 35 % / 2 = 350 g at most.
    #[test]
    fn a_portion_heavier_than_the_piece_and_a_count_too_high() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, pieces: 2, use: retail, portions: { weight: 500–600 g } }
#                                                                       ^ fault[portions-never-fit] `chicken-legs` gives no portion of 500–600 g: the heaviest piece weighs 0.35 kg
      chicken-body: { share: rest, use: retail, portions: { weight: 200–220 g, count: 8 } }
#                                                         ^ fault[portions-never-fit] `chicken-body` gives 6 portions of 200–220 g at most, not 8
    loss: 0
",
        );
    }

    #[test]
    fn silent_where_each_piece_gives_one() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, pieces: 2, use: retail, portions: { weight: 240–350 g } }
      chicken-body: { share: rest, use: retail, portions: { thickness: 20–25 mm } }
    loss: 0
",
        );
    }
}
