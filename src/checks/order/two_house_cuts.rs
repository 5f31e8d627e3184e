//! A piece with more than one house cut.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "two-house-cuts",
        group: Group::Order,
        level: Level::Fault,
        what: "More than one procedure says `house-cut: true` for the same starting piece.",
        why: "The house cut is what a chain carries on with. With two of them nobody can say what a side comes to in the end.",
        example: "# pork/loin-boneless.yaml and pork/loin-chops.yaml both say\nhouse-cut: true\nstart: { piece: pork-loin-bone-in, … }",
        mend: "Take `house-cut` out of all but one.",
        source: "Guidebook format, \"A procedure\": at most one for each starting piece.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (piece, positions) in subject.analysis.starts.house_cuts() {
        let mut procedures = positions.iter().filter_map(|at| subject.book.procedures.get(*at));
        let Some(first) = procedures.next() else { continue };
        for other in procedures {
            let Some(place) = other.house_cut.given() else { continue };
            let mut finding = CHECK.info.at(place.place, format!("`{piece}` has a house cut already, `{}`", first.id));
            if let Some(earlier) = first.house_cut.given() {
                finding = finding.also(earlier.place, "the first of them");
            }
            report.add(finding.help("Take this line out, or that of the other procedure."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, files};

    #[test]
    fn at_the_second() {
        let head = HEAD.replace("species: chicken", "species: chicken\nhouse-cut: true");
        let second = HEAD.replace("title: Whole chicken", "title: Chicken in parts").replace("species: chicken", "species: chicken\nhouse-cut: true\n#          ^^^^ fault[two-house-cuts] `chicken-whole` has a house cut already, `chicken/halves`");
        files(&[
            ("chicken/halves.yaml", &format!("{head}yields: {{ chicken-half: 98–100 %, loss: 0–2 % }}\n")),
            ("chicken/parts.yaml", &format!("{second}yields: {{ chicken-part: 98–100 %, loss: 0–2 % }}\n")),
        ]);
    }

    /// Another way to break the same piece, and the house cut of another piece.
    #[test]
    fn silent_for_one_house_cut_a_piece() {
        let head = HEAD.replace("species: chicken", "species: chicken\nhouse-cut: true");
        files(&[
            ("chicken/halves.yaml", &format!("{head}yields: {{ chicken-half: 98–100 %, loss: 0–2 % }}\n")),
            (
                "chicken/parts.yaml",
                &format!(
                    "{}yields: {{ chicken-part: 98–100 %, loss: 0–2 % }}\n",
                    HEAD.replace("title: Whole chicken", "title: Chicken in parts")
                ),
            ),
            (
                "chicken/legs.yaml",
                &format!(
                    "{}yields: {{ chicken-thigh: 98–100 %, loss: 0–2 % }}\n",
                    head.replace("piece: chicken-whole", "piece: chicken-legs")
                ),
            ),
        ]);
    }
}
