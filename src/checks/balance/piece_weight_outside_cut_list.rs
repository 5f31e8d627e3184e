//! A piece that can never weigh what the cut list says.

use crate::analysis::facts::output_at;
use crate::analysis::piece_weight::one_piece;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::checks::weight;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::finding::Place;
use crate::model::guidebook::Cut;
use crate::model::quantity::{Mass, Range};
use crate::model::{Procedure, Spanned};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "piece-weight-outside-cut-list",
        group: Group::Balance,
        level: Level::Advice,
        what: "Over all start weights and shares of a guide, one piece never weighs what its cut list gives as its usual weight.",
        why: "One of the two is wrong, most often by a factor of two: the weight of one piece against the share of a pair.",
        example: "# cuts/chicken.yaml says 70–130 g for one wing\ngive:\n  chicken-wings: 15–18.5 %   # 240–370 g: `pieces: 2` is missing",
        mend: "Add `pieces`, correct the share, or correct the weight in the cut list.",
        source: "Guidebook format, \"Other documents\": `weight` is that of one piece. That weights of pieces and pairs get mixed is common practice.",
    },
    run: Run::Check(run),
};

/// Rounding of derived weights: below a billionth of a weight nothing is said.
const TOLERANCE: f64 = 1e-9;

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for (at, piece) in analysis.network.pieces.iter().enumerate() {
            let Some(cut) = subject.book.cuts.get(&piece.id) else { continue };
            let (Some(usual), Some(found)) = (cut.weight.given(), one_piece(procedure, analysis, at)) else { continue };
            let usual_kilograms = usual.value.map(Mass::kilograms);
            let slack = TOLERANCE * usual_kilograms.high;
            if found.low <= usual_kilograms.high + slack && usual_kilograms.low <= found.high + slack {
                continue;
            }
            let Some(place) = place(procedure, analysis, at) else { continue };
            let (weighs, weight) = (weight::range(subject.book, found), weight::stated(usual.value));
            let (by, side) = miss(found, usual_kilograms);
            let by = weight::figure(subject.book, by);
            let message = format!("one `{}` weighs {weighs} here, and {weight} in the cut list: {by} too {side}", piece.id);
            let finding = CHECK.info.at(place, message).also(usual.place, "the usual weight of one");
            report.add(finding.help(help(analysis, at, cut, found, usual)));
        }
    }
}

/// The share of the first output that gives the piece, or the weight of the start.
fn place(procedure: &Procedure, analysis: &ProcedureAnalysis, piece: usize) -> Option<Place> {
    let node = analysis.network.pieces.get(piece)?;
    if node.is_start {
        return procedure.start.weight.given().map(|weight| weight.place);
    }
    Some(output_at(procedure, *node.given_by.first()?)?.share.given()?.place)
}

/// By how many kilograms a range misses another, and on which side.
fn miss(found: Range<f64>, usual: Range<f64>) -> (f64, &'static str) {
    if found.low > usual.high { (found.low - usual.high, "much") } else { (usual.low - found.high, "little") }
}

/// Offers the number of pieces where that explains it.
fn help(analysis: &ProcedureAnalysis, piece: usize, cut: &Cut, found: Range<f64>, usual: &Spanned<Range<Mass>>) -> String {
    let silent = analysis.facts.get(piece).is_some_and(|facts| facts.pieces.is_silent());
    let start = analysis.network.pieces.get(piece).is_some_and(|node| node.is_start);
    if let Some(number) = cut.per_animal.value().filter(|number| **number > 1 && silent && !start) {
        let one = found.map(|kilograms| kilograms / f64::from(*number));
        if one.meets(&usual.value.map(Mass::kilograms)) {
            return format!("Add `pieces: {number}`: the share is that of all together.");
        }
    }
    if start {
        "Correct the start weight, or the weight in the cut list.".to_owned()
    } else {
        "Correct the share, or the weight in the cut list.".to_owned()
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files};

    const CUTS: &str = "chicken-whole: { name: Chicken, weight: 1.2–1.8 kg }
chicken-wings: { name: Wing, weight: 70–130 g, per-animal: 2 }
";

    #[test]
    fn the_weight_of_a_pair_against_that_of_one() {
        files(&[
            ("cuts/chicken.yaml", CUTS),
            (
                "chicken/whole.yaml",
                &format!(
                    "{HEAD}steps:
  - name: Take off the wings
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: {{ share: 9–12 %, use: retail }}
#                             ^^^^^^ advice[piece-weight-outside-cut-list] one `chicken-wings` weighs 0.144–0.24 kg here, and 70–130 g in the cut list: 0.014 kg too much
      chicken-body: {{ share: rest, use: retail }}
    loss: 0
"
                ),
            ),
        ]);
    }

    #[test]
    fn a_start_that_the_cut_list_contradicts() {
        files(&[
            ("cuts/chicken.yaml", "chicken-whole: { name: Chicken, weight: 2.2–2.8 kg }\n"),
            (
                "chicken/whole.yaml",
                "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }
#                                      ^^^^^^^^^^ advice[piece-weight-outside-cut-list] one `chicken-whole` weighs 1.6–2 kg here, and 2.2–2.8 kg in the cut list: 0.2 kg too little
yields: { chicken-half: 98–100 %, loss: 0–2 % }
",
            ),
        ]);
    }

    /// Ranges that meet are no contradiction, and `pieces` makes one of a pair.
    #[test]
    fn silent_where_the_weights_meet() {
        files(&[
            ("cuts/chicken.yaml", CUTS),
            (
                "chicken/whole.yaml",
                &format!(
                    "{HEAD}steps:
  - name: Take off the wings
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: {{ share: 9–12 %, pieces: 2, use: retail }}
      chicken-body: {{ share: rest, use: retail }}
    loss: 0
"
                ),
            ),
        ]);
    }
}
