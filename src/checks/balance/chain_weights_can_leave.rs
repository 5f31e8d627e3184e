//! A house cut written for weights that its piece can leave.

use crate::analysis::facts::output_at;
use crate::analysis::hand_over::Fit;
use crate::checks::doubtful::Doubtful;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "chain-weights-can-leave",
        group: Group::Balance,
        level: Level::Advice,
        what: "One procedure gives a piece, the house cut of that piece starts from it, and at the giver's typical start weight the piece can be lighter or heavier than the house cut is written for.",
        why: "Some days the guide that carries on is used on a piece for which nobody has thought it through.",
        example: "# pork/side gives 6.3–8.4 kg of pork-loin at 42 kg\nstart: { piece: pork-loin, weight: 7–9 kg }",
        mend: "Widen the start weight, or narrow the share in the procedure that gives the piece.",
        source: "Guidebook format, \"What a share means\", chains.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let doubtful = Doubtful::of(subject);
    for hand_over in subject.analysis.hand_overs.iter().filter(|hand_over| hand_over.fit == Fit::CanLeave) {
        // Of a start weight that something contradicts already, nothing follows.
        if doubtful.by_cut_list(hand_over.giver) || doubtful.by_cut_list(hand_over.taker) || typical_is_wrong(subject, hand_over.giver) {
            continue;
        }
        let procedures = &subject.book.procedures;
        let (Some(giver), Some(taker)) = (procedures.get(hand_over.giver), procedures.get(hand_over.taker)) else { continue };
        let Some(network) = subject.analysis.procedures.get(hand_over.giver).map(|analysis| &analysis.network) else { continue };
        let Some(piece) = network.pieces.get(hand_over.piece) else { continue };
        let Some(weight) = taker.start.weight.given() else { continue };
        let gives = weight::range(subject.book, hand_over.at_typical);
        let wanted = weight::stated(hand_over.wanted);
        let message = format!("`{}` typically gives `{}` at {gives}, which can leave {wanted}", giver.id, piece.id);
        let mut finding = CHECK.info.at(weight.place, message);
        let output = piece.given_by.first().and_then(|giving| output_at(giver, *giving));
        if let Some(output) = output {
            finding = finding.also(output.piece.place, "given here");
        }
        report.add(finding.help(format!("Write a weight that holds {gives}.")));
    }
}

/// True when the giver's typical start weight lies outside its own range, which is a fault of its own.
fn typical_is_wrong(subject: &Subject<'_>, giver: usize) -> bool {
    let start = subject.book.procedures.get(giver).map(|procedure| &procedure.start);
    start.and_then(|start| start.weight.value().zip(start.typical.value())).is_some_and(|(range, typical)| !range.contains(*typical))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    const SIDE: &str = "title: Pork side
species: pork
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-side, weight: 36–46 kg, typical: 42 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Part it
    take: pork-side
    do: Cut.
    minutes: 1–2
    give:
      pork-loin: 15–20 %
      pork-rest: { share: rest, use: retail }
    loss: 0
";

    /// At 42 kg the loin weighs 6.3–8.4 kg.
    #[test]
    fn a_light_piece_leaves_the_range() {
        files(&[
            ("pork/side.yaml", SIDE),
            (
                "pork/loin.yaml",
                "title: Pork loin
species: pork
house-cut: true
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-loin, weight: 7–9 kg, temperature: 0–4 °C }
#                                  ^^^^^^ advice[chain-weights-can-leave] `pork/side` typically gives `pork-loin` at 6.3–8.4 kg, which can leave 7–9 kg
yields: { pork-eye: 50–60 %, pork-bone: 40–50 % }
",
            ),
        ]);
    }

    /// What never meets is a fault of another check.
    #[test]
    fn silent_where_they_never_meet_or_always_fit() {
        files(&[
            ("pork/side.yaml", SIDE),
            (
                "pork/loin.yaml",
                "title: Pork loin
species: pork
house-cut: true
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-loin, weight: 12–14 kg, temperature: 0–4 °C }
#                                  ^^^^^^^^ fault[chain-weights-never-meet]
yields: { pork-eye: 50–60 %, pork-bone: 40–50 % }
",
            ),
        ]);
    }
}
