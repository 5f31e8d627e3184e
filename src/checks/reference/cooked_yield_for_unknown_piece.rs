//! Cooked yields of pieces that no guide knows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "cooked-yield-for-unknown-piece",
        group: Group::Reference,
        level: Level::Fault,
        what: "`prices.yaml` has a cooked yield for a piece that no procedure gives or starts from.",
        why: "Cost per cooked portion would be worked without it, and look cheaper than it is.",
        example: "cooked: { boneles-loin: 70–75 % }      # refused\ncooked: { boneless-loin: 70–75 % }",
        mend: "Write the id of a piece that some guide gives or starts from.",
        source: "Guidebook format, version 1, \"Other documents\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let (Some(prices), Some(pieces)) = (&subject.book.prices, known::pieces(subject.book)) else { return };
    for cooked in &prices.cooked {
        let piece = &cooked.piece;
        if !pieces.contains(piece.value.as_str()) {
            let help = nearest(&piece.value, pieces.iter().copied()).map_or_else(
                || "Write the id of a piece of some guide, or take the yield out.".to_owned(),
                |near| format!("Write `{near}`."),
            );
            report.add(CHECK.info.at(piece.place, format!("no guide gives `{}` or starts from it", piece.value)).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_misspelt_piece() {
        files(&[(
            "prices.yaml",
            "currency: EUR
date: 2026-03-02
tax: without
cooked: { chicken-haf: 70–75 % }
#         ^^^^^^^^^^^ fault[cooked-yield-for-unknown-piece] `chicken-haf`
",
        )]);
    }

    #[test]
    fn a_piece_of_a_guide() {
        files(&[(
            "prices.yaml",
            "currency: EUR
date: 2026-03-02
tax: without
cooked: { chicken-half: 70–75 % }
",
        )]);
    }
}
