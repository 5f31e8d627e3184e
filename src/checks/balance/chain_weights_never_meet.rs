//! A house cut written for weights that its piece never has.

use crate::analysis::facts::output_at;
use crate::analysis::hand_over::Fit;
use crate::checks::doubtful::Doubtful;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "chain-weights-never-meet",
        group: Group::Balance,
        level: Level::Fault,
        what: "One procedure gives a piece, the house cut of that piece starts from it, and over both whole ranges their weights never meet.",
        why: "The guide that carries on can never be used on what the other gives: its shares, minutes and portions are about another piece.",
        example: "# pork/side gives 5.4–9.2 kg of pork-loin\nstart: { piece: pork-loin, weight: 10–12 kg }",
        mend: "Correct the start weight, the share in the procedure that gives the piece, or its `pieces`.",
        source: "Guidebook format, \"What a share means\", chains.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let doubtful = Doubtful::of(subject);
    for hand_over in subject.analysis.hand_overs.iter().filter(|hand_over| hand_over.fit == Fit::NeverMeets) {
        // Of a start weight that something contradicts already, nothing follows.
        if doubtful.by_cut_list(hand_over.giver) {
            continue;
        }
        let procedures = &subject.book.procedures;
        let (Some(giver), Some(taker)) = (procedures.get(hand_over.giver), procedures.get(hand_over.taker)) else { continue };
        let Some(network) = subject.analysis.procedures.get(hand_over.giver).map(|analysis| &analysis.network) else { continue };
        let Some(piece) = network.pieces.get(hand_over.piece) else { continue };
        let Some(weight) = taker.start.weight.given() else { continue };
        let gives = weight::range(subject.book, hand_over.at_any);
        let wanted = weight::stated(hand_over.wanted);
        let message = format!("`{}` gives `{}` at {gives}, and this house cut is for {wanted}", giver.id, piece.id);
        let mut finding = CHECK.info.at(weight.place, message);
        let output = piece.given_by.first().and_then(|giving| output_at(giver, *giving));
        if let Some(output) = output {
            finding = finding.also(output.piece.place, "given here");
        }
        report.add(finding.help(format!("Write `weight: {gives}`, or correct the share there.")));
    }
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

    /// 15–20 % of 36–46 kg is 5.4–9.2 kg.
    #[test]
    fn ranges_that_never_meet() {
        files(&[
            ("pork/side.yaml", SIDE),
            (
                "pork/loin.yaml",
                "title: Pork loin
species: pork
house-cut: true
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-loin, weight: 10–12 kg, temperature: 0–4 °C }
#                                  ^^^^^^^^ fault[chain-weights-never-meet] `pork/side` gives `pork-loin` at 5.4–9.2 kg, and this house cut is for 10–12 kg
yields: { pork-eye: 50–60 %, pork-bone: 40–50 % }
",
            ),
        ]);
    }

    /// At 42 kg the loin weighs 6.3–8.4 kg.
    #[test]
    fn silent_where_they_meet_in_part() {
        files(&[
            ("pork/side.yaml", SIDE),
            (
                "pork/loin.yaml",
                "title: Pork loin
species: pork
house-cut: true
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-loin, weight: 6–9 kg, temperature: 0–4 °C }
yields: { pork-eye: 50–60 %, pork-bone: 40–50 % }
",
            ),
        ]);
    }
}
