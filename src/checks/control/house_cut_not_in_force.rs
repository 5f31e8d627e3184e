//! A house cut that is a draft, or withdrawn.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::State;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "house-cut-not-in-force",
        group: Group::Control,
        level: Level::Advice,
        what: "A guide says that it is the usual way to break its piece here, and is a draft or withdrawn.",
        why: "Yields of whole animals follow the house cuts, so orders and prices would rest on a guide that nobody may work by.",
        example: "house-cut: true           # told\nrevision: { state: draft }",
        mend: "Approve the guide, or take `house-cut` out until it is approved. A withdrawn guide hands it to the one that replaces it.",
        source: "ISO 9001:2015, 7.5.3.2 (obsolete documents are kept from being used by mistake; read as a copy); guidebook format, version 1, `house-cut`.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(house_cut) = procedure.house_cut.given().filter(|house_cut| house_cut.value) else { continue };
        let Some(state) = procedure.revision.state.given() else { continue };
        let is = match state.value {
            State::InForce => continue,
            State::Draft => "a draft",
            State::Withdrawn => "withdrawn",
        };
        let finding = CHECK.info.at(house_cut.place, format!("the usual way to break this piece is {is}"));
        report.add(finding.also(state.place, "the state of the guide").help("Approve the guide, or take `house-cut` out."));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;
    use crate::checks::testing::{HEAD, STEPS, procedure};

    fn in_state(state: &str, house_cut: &str) -> String {
        format!("{HEAD}{house_cut}{STEPS}").replace("review-by: 2027-03-02 }", &format!("review-by: 2027-03-02, state: {state} }}"))
    }

    #[test]
    fn a_draft() {
        procedure(&in_state(
            "draft",
            "house-cut: true
#          ^^^^ advice[house-cut-not-in-force] the usual way to break this piece is a draft
",
        ));
    }

    #[test]
    fn withdrawn() {
        procedure(&in_state(
            "withdrawn",
            "house-cut: true
#          ^^^^ advice[house-cut-not-in-force] is withdrawn
",
        ));
    }

    #[test]
    fn in_force_or_no_house_cut() {
        beside("house-cut: true\n");
        procedure(&in_state("draft", "house-cut: false\n"));
    }
}
