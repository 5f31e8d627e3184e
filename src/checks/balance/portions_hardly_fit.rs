//! Portions that the lightest piece does not give.

use crate::analysis::facts::{Agreed, output_at};
use crate::analysis::portions::{PortionFit, PortionVerdict};
use crate::analysis::procedure::ProcedureAnalysis;
use crate::checks::doubtful::Doubtful;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::{Level, Place};
use crate::model::Procedure;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "portions-hardly-fit",
        group: Group::Balance,
        level: Level::Advice,
        what: "The heaviest piece gives the stated portions and the lightest does not.",
        why: "On a light day a portion is missing, and nobody knows before the piece lies on the board.",
        example: "give:\n  chicken-legs: { share: 31–35 %, pieces: 2, portions: { weight: 300–350 g } }   # a light leg weighs 250 g",
        mend: "Write a lighter portion or a smaller `count`, or start from heavier pieces.",
        source: "Guidebook format, \"Outputs\": how many come out is the floor for each piece; portions that hardly fit are advice.",
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
        for fit in analysis.portions.iter().filter(|fit| fit.verdict == PortionVerdict::HardlyFits) {
            let Some((place, piece)) = place(procedure, analysis, fit).zip(analysis.network.pieces.get(fit.piece)) else { continue };
            let portion = weight::stated(fit.portion);
            let lightest = weight::figure(subject.book, fit.one_piece.low);
            let wanted = fit.spec.count.map_or_else(|| "a portion".to_owned(), |wanted| format!("{} portions", wanted.low));
            let message = format!("the lightest `{}` weighs {lightest} and does not give {wanted} of {portion}", piece.id);
            report.add(CHECK.info.at(place, message).help("Write a lighter portion, or a heavier start weight."));
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

    /// The lightest leg weighs 1.6 kg · 31 % / 2 = 248 g.
    #[test]
    fn a_light_piece_gives_none() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, pieces: 2, use: retail, portions: { weight: 300–350 g } }
#                                                                       ^ advice[portions-hardly-fit] the lightest `chicken-legs` weighs 0.248 kg and does not give a portion of 300–350 g
      chicken-body: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// What never fits is a fault of another check.
    #[test]
    fn silent_where_they_fit_or_never_fit() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, pieces: 2, use: retail, portions: { weight: 400 g } }
#                                                                       ^ fault[portions-never-fit]
      chicken-body: { share: rest, use: retail, portions: { weight: 100–110 g, count: 8–10 } }
    loss: 0
",
        );
    }
}
