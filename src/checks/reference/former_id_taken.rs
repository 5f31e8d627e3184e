//! An earlier id that something still has.

use std::collections::BTreeMap;

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};
use crate::model::guidebook::Cut;
use crate::model::stated::Spanned;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "former-id-taken",
        group: Group::Reference,
        level: Level::Fault,
        what: "An id under `was` is still the id of a piece or of a guide, or two entries claim it.",
        why: "`was` leads old links and old results to the new id. Where the old id still lives, they would lead to two things.",
        example: "# cuts/pork.yaml\npork-tenderloin: { name: Tenderloin, was: [pork-filet] }\n# and pork/loin.yaml still gives `pork-filet`",
        mend: "Write the new id where the old one is still used, or take the old one out of `was`.",
        source: "Guidebook format, version 1, \"Other documents\": `was`.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let mut pieces: BTreeMap<&str, Place> = BTreeMap::new();
    for procedure in &book.procedures {
        let start = procedure.start.piece.given().map(|start| (start.value.as_str(), start.place));
        let given = procedure.steps.iter().flat_map(|step| &step.give).map(|output| (output.piece.value.as_str(), output.piece.place));
        for (piece, place) in start.into_iter().chain(given) {
            pieces.entry(piece).or_insert(place);
        }
    }
    for cut in book.cuts.values() {
        pieces.entry(&cut.piece.value).or_insert(cut.piece.place);
    }
    let guides: BTreeMap<&str, Place> = book.procedures.iter().map(|procedure| (procedure.id.as_str(), procedure.place)).collect();
    // In the order of the files, so that the second claim is the one that is told.
    let mut cuts: Vec<&Cut> = book.cuts.values().collect();
    cuts.sort_by_key(|cut| cut.piece.place);
    tell(cuts.iter().flat_map(|cut| &cut.was), &pieces, "a piece", report);
    tell(book.procedures.iter().flat_map(|procedure| &procedure.was), &guides, "a guide", report);
}

fn tell<'b>(former: impl Iterator<Item = &'b Spanned<String>>, living: &BTreeMap<&str, Place>, what: &str, report: &mut Report) {
    let mut claimed: BTreeMap<&str, Place> = BTreeMap::new();
    for was in former {
        let id = was.value.as_str();
        if let Some(place) = living.get(id) {
            let finding = CHECK.info.at(was.place, format!("`{id}` is still the id of {what}")).also(*place, "it is used here");
            report.add(finding.help("Write the new id there, or take the old one out of `was`."));
        } else if let Some(first) = claimed.get(id) {
            let finding =
                CHECK.info.at(was.place, format!("two entries claim `{id}` as their earlier id")).also(*first, "the first of them");
            report.add(finding.help("Take it out of one of them."));
        }
        claimed.entry(id).or_insert(was.place);
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files};

    #[test]
    fn a_piece_that_a_step_still_gives() {
        files(&[(
            "cuts/chicken.yaml",
            "chicken-side: { name: Side, was: [chicken-half] }
#                                 ^^^^^^^^^^^^ fault[former-id-taken] `chicken-half` is still the id of a piece
",
        )]);
    }

    #[test]
    fn two_claims() {
        files(&[(
            "cuts/chicken.yaml",
            "chicken-half: { name: Half, was: [side] }
chicken-quarter: { name: Quarter, was: [side] }
#                                       ^^^^ fault[former-id-taken] claim `side`
",
        )]);
    }

    #[test]
    fn a_guide() {
        beside(
            "was: [chicken/whole]
#     ^^^^^^^^^^^^^ fault[former-id-taken] still the id of a guide
",
        );
    }

    #[test]
    fn ids_that_are_gone() {
        files(&[(
            "cuts/chicken.yaml",
            "chicken-half: { name: Half, was: [chicken-side, demi] }
",
        )]);
    }
}
