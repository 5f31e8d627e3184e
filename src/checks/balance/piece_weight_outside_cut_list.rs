//! A piece that can never weigh what the cut list says.

use crate::analysis::facts::{PieceFacts, output_at};
use crate::analysis::network::NetworkPiece;
use crate::analysis::piece_weight::one_piece;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::checks::doubtful::{Doubtful, miss};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::{Finding, Level, Place};
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

fn run(subject: &Subject<'_>, report: &mut Report) {
    let doubtful = Doubtful::of(subject);
    for (at, procedure, analysis) in subject.procedures() {
        if doubtful.by_giver(at) {
            continue;
        }
        let start_only = doubtful.by_cut_list(at);
        let held: Vec<Held<'_>> = held(subject, procedure, analysis).filter(|held| held.piece.is_start || !start_only).collect();
        let wrong = held.iter().filter_map(|held| Some((held, miss(held.cut, held.found)?)));
        let wrong: Vec<(&Held<'_>, (f64, &str))> = wrong.collect();
        // Where all come out too heavy, or all too light, and nothing else explains it, it is the start weight.
        let same_side = wrong.iter().all(|(_, (_, side))| wrong.first().is_some_and(|(_, (_, first))| first == side));
        let explained = wrong.iter().any(|(held, _)| missing_pieces(analysis, held).is_some());
        let vouched_for = held.iter().any(|held| held.piece.is_start);
        if wrong.len() > 1 && wrong.len() == held.len() && same_side && !explained && !vouched_for {
            report.add(start(subject, procedure, &wrong));
            continue;
        }
        for (held, miss) in wrong {
            if let Some(finding) = tell(subject, procedure, analysis, held, miss) {
                report.add(finding);
            }
        }
    }
}

/// A piece with a usual weight in the cut list, and what one weighs by the guide, in kilograms.
struct Held<'a> {
    at: usize,
    piece: &'a NetworkPiece,
    cut: &'a Cut,
    usual: &'a Spanned<Range<Mass>>,
    found: Range<f64>,
}

fn held<'a>(subject: &Subject<'a>, procedure: &'a Procedure, analysis: &'a ProcedureAnalysis) -> impl Iterator<Item = Held<'a>> {
    let book = subject.book;
    analysis.network.pieces.iter().enumerate().filter_map(move |(at, piece)| {
        let cut = book.cuts.get(&piece.id)?;
        // More pieces than the animal has is a fault of its own.
        let together = analysis.facts.get(at).and_then(PieceFacts::pieces_together);
        let too_many = together.zip(cut.per_animal.value()).is_some_and(|(together, most)| together > *most);
        if too_many {
            return None;
        }
        Some(Held { at, piece, cut, usual: cut.weight.given()?, found: one_piece(procedure, analysis, at)? })
    })
}

fn tell(
    subject: &Subject<'_>,
    procedure: &Procedure,
    analysis: &ProcedureAnalysis,
    held: &Held<'_>,
    (by, side): (f64, &str),
) -> Option<Finding> {
    let place = place(procedure, held.piece)?;
    let (weighs, usual, by) = (weight::range(subject.book, held.found), weight::stated(held.usual.value), weight::figure(subject.book, by));
    let message = format!("one `{}` weighs {weighs} here, and {usual} in the cut list: {by} too {side}", held.piece.id);
    let finding = CHECK.info.at(place, message).also(held.usual.place, "the usual weight of one");
    Some(finding.help(help(analysis, held)))
}

/// One finding about the start weight, for all pieces that it makes too heavy or too light.
fn start(subject: &Subject<'_>, procedure: &Procedure, wrong: &[(&Held<'_>, (f64, &str))]) -> Finding {
    let place = procedure.start.weight.given().map_or(procedure.start.place, |weight| weight.place);
    let first = wrong.first().map_or_else(String::new, |(held, (by, side))| {
        format!(", `{}` by {} too {side}", held.piece.id, weight::figure(subject.book, *by))
    });
    let message = format!("at this start weight {} pieces miss the cut list{first}", wrong.len());
    CHECK.info.at(place, message).help("Correct the start weight.")
}

/// The share of the first output that gives the piece, or the weight of the start.
fn place(procedure: &Procedure, piece: &NetworkPiece) -> Option<Place> {
    if piece.is_start {
        return procedure.start.weight.given().map(|weight| weight.place);
    }
    Some(output_at(procedure, *piece.given_by.first()?)?.share.given()?.place)
}

/// Offers the number of pieces where that explains it.
fn help(analysis: &ProcedureAnalysis, held: &Held<'_>) -> String {
    if held.piece.is_start {
        return "Correct the start weight, or the weight in the cut list.".to_owned();
    }
    match missing_pieces(analysis, held) {
        Some(number) => format!("Add `pieces: {number}`: the share is that of all together."),
        None => "Correct the share, or the weight in the cut list.".to_owned(),
    }
}

/// How many pieces an animal has, where the guide says nothing of it and so many make the weights meet.
fn missing_pieces(analysis: &ProcedureAnalysis, held: &Held<'_>) -> Option<u32> {
    let number = *held.cut.per_animal.value().filter(|number| **number > 1)?;
    let silent = analysis.facts.get(held.at)?.pieces.is_silent() && !held.piece.is_start;
    let one = held.found.map(|kilograms| kilograms / f64::from(number));
    (silent && miss(held.cut, one).is_none()).then_some(number)
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

    /// A comma too far right makes every piece ten times too heavy: one mistake.
    #[test]
    fn a_start_weight_that_makes_all_pieces_too_heavy() {
        files(&[
            ("cuts/chicken.yaml", "chicken-wings: { name: Wing, weight: 70–130 g }
chicken-body: { name: Body, weight: 1.3–1.9 kg }
"),
            (
                "chicken/whole.yaml",
                "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 16–20 kg, temperature: 0–4 °C }
#                                      ^^^^^^^^ advice[piece-weight-outside-cut-list] at this start weight 2 pieces miss the cut list, `chicken-wings` by 0.59 kg too much
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Take off the wings
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-wings: { share: 9–12 %, pieces: 2, use: retail, portions: { weight: 70–130 g } }
      chicken-body: { share: rest, use: retail }
    loss: 0
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
