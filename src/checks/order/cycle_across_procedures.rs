//! House cuts that lead back to where they began.

use crate::analysis::facts::output_at;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "cycle-across-procedures",
        group: Group::Order,
        level: Level::Fault,
        what: "A procedure gives a piece, the house cut of that piece gives another, and so on, until one gives the piece from which the first starts.",
        why: "The chain never ends, so no yield of it can be computed; and on the bench no piece can become itself again.",
        example: "# pork/a: start pork-loin, gives pork-middle\n# pork/b: start pork-middle, gives pork-loin; both are house cuts",
        mend: "Correct the piece that one of them gives or starts from, or take `house-cut` out of one.",
        source: "Guidebook format, \"What a share means\", chains: a cycle is a fault.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for cycle in subject.analysis.house_cuts.cycles() {
        let Some(first) = cycle.first().and_then(|at| subject.book.procedures.get(*at)) else { continue };
        let Some(place) = first.house_cut.given() else { continue };
        let mut finding = CHECK.info.at(place.place, format!("house cuts lead back to `{}`", first.id));
        for (giver, taker) in cycle.iter().zip(cycle.iter().skip(1).chain(cycle.first())) {
            let link = subject.analysis.house_cuts.from(*giver).iter().find(|link| link.taker == *taker);
            let piece = link.and_then(|link| subject.analysis.procedures.get(*giver)?.network.pieces.get(link.piece));
            let giving = piece.and_then(|piece| piece.given_by.first());
            let output = giving.and_then(|giving| output_at(subject.book.procedures.get(*giver)?, *giving));
            if let (Some(output), Some(next)) = (output, subject.book.procedures.get(*taker)) {
                finding = finding.also(output.piece.place, format!("`{}` starts from `{}`, given here", next.id, output.piece.value));
            }
        }
        report.add(finding.help("Give the piece that leads back another id."));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files};

    #[test]
    fn two_house_cuts_that_lead_to_each_other() {
        let first = HEAD.replace(
            "species: chicken",
            "species: chicken\nhouse-cut: true\n#          ^^^^ fault[cycle-across-procedures] house cuts lead back to `chicken/a`",
        );
        let second =
            HEAD.replace("species: chicken", "species: chicken\nhouse-cut: true").replace("piece: chicken-whole", "piece: chicken-body");
        files(&[
            ("chicken/a.yaml", &format!("{first}yields: {{ chicken-body: 98–100 %, loss: 0–2 % }}\n")),
            ("chicken/b.yaml", &format!("{second}yields: {{ chicken-whole: 98–100 %, loss: 0–2 % }}\n")),
        ]);
    }

    /// A chain that ends, and a way back over a procedure that is no house cut.
    #[test]
    fn silent_for_a_chain_that_ends() {
        let first = HEAD.replace("species: chicken", "species: chicken\nhouse-cut: true");
        let second = HEAD.replace("piece: chicken-whole", "piece: chicken-body");
        files(&[
            ("chicken/a.yaml", &format!("{first}yields: {{ chicken-body: 98–100 %, loss: 0–2 % }}\n")),
            ("chicken/b.yaml", &format!("{second}yields: {{ chicken-whole: 98–100 %, loss: 0–2 % }}\n")),
        ]);
    }
}
