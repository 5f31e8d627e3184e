//! Declared yields of pieces that no step gives.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "yield-for-unknown-piece",
        group: Group::Reference,
        level: Level::Fault,
        what: "A procedure declares under `yields` the share of a piece that none of its steps gives.",
        why: "A declared yield is held against what the steps make of the start. Of a piece that no step gives, they make nothing.",
        example: "yields: { pork-tenderlion: 4–6 % }        # refused\nyields: { pork-tenderloin: 4–6 % }",
        mend: "Write the id of a piece that a step gives.",
        source: "Guidebook format, version 1, \"Outputs\": `yields`.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(given) = known::given_by(procedure) else { continue };
        for declared in &procedure.yields {
            let piece = &declared.piece;
            if piece.value == "loss" || given.contains(piece.value.as_str()) {
                continue;
            }
            let help = nearest(&piece.value, given.iter().copied())
                .map_or_else(|| "Write a piece that a step gives, or take the yield out.".to_owned(), |near| format!("Write `{near}`."));
            report.add(CHECK.info.at(piece.place, format!("no step gives `{}`", piece.value)).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_misspelt_piece() {
        beside(
            "yields: { chicken-haf: 98–100 % }
#         ^^^^^^^^^^^ fault[yield-for-unknown-piece] no step gives `chicken-haf`
",
        );
    }

    #[test]
    fn pieces_of_steps_and_the_loss() {
        beside(
            "yields: { chicken-half: 98–100 %, loss: 0–2 % }
",
        );
    }
}
