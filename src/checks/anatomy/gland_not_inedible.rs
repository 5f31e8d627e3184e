//! Glands that end where food goes.

use crate::analysis::anatomy::Anatomy;
use crate::analysis::risk_material::{misplaced, use_of};
use crate::checks::hazard_words::{and, of_number};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};
use crate::model::words::{PartKind, Use};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "gland-not-inedible",
        group: Group::Anatomy,
        level: Level::Fault,
        what: "A gland or node that a step or `holds` names ends in a piece with another use than `inedible`.",
        why: "A node filters what the animal fought, tastes bitter and looks like an abscess on the plate. Ground into trim it is in every kilogram.",
        example: "steps:\n  - anatomy: [popliteal-node]\n    give: { lamb-fat-pocket: { share: 15–23 %, holds: [popliteal-node], use: fat-trim } }   # inedible",
        mend: "Give it a piece of its own with `use: inedible`, and name it there under `holds`.",
        source: "Guidebook format, \"Outputs\": a gland that a step or `holds` names must end in `inedible`; common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        let Some(anatomy) = Anatomy::of_procedure(subject.book, procedure) else { continue };
        let all: Vec<&str> = anatomy.of_kind(PartKind::Gland).collect();
        let mut told: Vec<(Place, Vec<&str>, Option<usize>)> = Vec::new();
        for wrong in misplaced(procedure, analysis, &anatomy, &all, &[Use::Inedible, Use::RiskMaterial]) {
            let stated = wrong.piece.and_then(|piece| use_of(procedure, &analysis.network, piece));
            let place = stated.map_or(wrong.trace.named, |stated| stated.place);
            match told.iter_mut().find(|(known, ..)| *known == place) {
                Some((_, parts, _)) => parts.push(wrong.part),
                None => told.push((place, vec![wrong.part], wrong.piece)),
            }
        }
        for (place, parts, piece) in told {
            let ends = of_number(parts.len(), "ends", "end");
            let stated = piece.and_then(|piece| Some((analysis.network.pieces.get(piece)?, use_of(procedure, &analysis.network, piece)?)));
            let (message, help) = match stated {
                Some((piece, purpose)) => (
                    format!("{} {ends} in `{}` with the use `{}`", and(parts), piece.id, purpose.value.word()),
                    "Write `use: inedible`, or give the gland a piece of its own.".to_owned(),
                ),
                None => (
                    format!("{} {ends} in no piece with the use `inedible`", and(parts)),
                    "Give it a piece with `use: inedible`, and name it there under `holds`.".to_owned(),
                ),
            };
            report.add(CHECK.info.at(place, message).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn leg(pocket: &str, last: &str) {
        let guide = format!(
            "title: Lamb leg
species: lamb
age: under 12 months
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: lamb-leg, weight: 2–3 kg, temperature: 2–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Part the block
    take: lamb-leg
    do: Cut.
    minutes: 1–2
{pocket}
    loss: 0
  - name: Take out the node
    take: lamb-pocket
    do: Cut.
    minutes: 1–2
    give:
{last}
    loss: 0
"
        );
        files(&[("lamb/leg.yaml", &guide)]);
    }

    const HELD: &str = "    give: { lamb-meat: { share: 80–82 %, use: retail }, lamb-pocket: { share: rest, holds: [popliteal-node] } }";

    #[test]
    fn a_node_in_the_fat_tub() {
        leg(
            HELD,
            "      lamb-fat: { share: 92–96 %, holds: [popliteal-node], use: fat-trim }
#                                                               ^^^^^^^^ fault[gland-not-inedible] `popliteal-node` ends in `lamb-fat` with the use `fat-trim`
      lamb-lean: { share: rest, use: lean-trim }",
        );
    }

    /// Named by a step, held by nothing, and no piece of the guide is inedible.
    #[test]
    fn a_node_that_goes_nowhere() {
        leg(
            "    anatomy: [topside-muscle, popliteal-node]
#                             ^^^^^^^^^^^^^^ fault[gland-not-inedible] `popliteal-node` ends in no piece with the use `inedible`
    give: { lamb-meat: { share: 80–82 %, use: retail }, lamb-pocket: { share: rest } }",
            "      lamb-fat: { share: 92–96 %, use: fat-trim }\n      lamb-lean: { share: rest, use: lean-trim }",
        );
    }

    /// The piece travels, and where no output names the node it may lie in the inedible one.
    #[test]
    fn silent_where_it_can_end_in_the_bin() {
        leg(HELD, "      lamb-fat: { share: 92–96 %, use: fat-trim }\n      lamb-popliteal-node: { share: rest, use: inedible }");
        leg(HELD, "      lamb-fat: { share: 92–96 %, use: fat-trim }\n      lamb-lump: { share: rest, use: inedible }");
        leg(
            "    anatomy: [popliteal-node]
    give: { lamb-meat: { share: 80–82 %, use: retail }, lamb-pocket: { share: rest } }",
            "      lamb-fat: { share: 92–96 %, use: fat-trim }\n      lamb-lump: { share: rest, use: inedible }",
        );
    }
}
