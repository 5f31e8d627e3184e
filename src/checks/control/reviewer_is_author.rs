//! A guide approved by the one who wrote it.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::State;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "reviewer-is-author",
        group: Group::Control,
        level: Level::Advice,
        what: "`approved-by` names the same person as `author`. Capitals and blanks make no difference.",
        why: "A slip is hard to see in one's own text. A second pair of eyes catches the wrong joint before an apprentice cuts there.",
        example: "revision: { author: head butcher, approved-by: Head butcher }    # told",
        mend: "Let somebody else read it and approve it. Where there is nobody else, waive this with the reason.",
        source: "ISO 9001:2015, 7.5.2 c asks for review and approval (read as a copy); that the approver is another than the author is common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let revision = &procedure.revision;
        let (Some(author), Some(approver)) = (revision.author.given(), revision.approved_by.given()) else { continue };
        if revision.state() != State::Withdrawn && plain(&author.value) == plain(&approver.value) && !plain(&author.value).is_empty() {
            let message = format!("`{}` approves what `{}` wrote", approver.value, author.value);
            let finding = CHECK.info.at(approver.place, message).also(author.place, "the author");
            report.add(finding.help("Let somebody else read and approve it."));
        }
    }
}

fn plain(name: &str) -> String {
    name.split_whitespace().map(str::to_lowercase).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{STEPS, procedure};

    fn with(author: &str, rest: &str) -> String {
        format!(
            "title: Whole chicken
species: chicken
start: {{ piece: chicken-whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
revision:
  number: 1
  date: 2026-03-02
  author: {author}
  review-by: 2027-03-02
  approved-by: head butcher
{rest}{STEPS}"
        )
    }

    #[test]
    fn the_same_in_other_capitals() {
        let told = "#              ^^^^^^^^^^^^ advice[reviewer-is-author] `head butcher` approves what `Head Butcher` wrote\n";
        procedure(&with("Head Butcher", told));
    }

    #[test]
    fn another() {
        procedure(&with("second butcher", ""));
    }

    #[test]
    fn withdrawn() {
        procedure(&with("head butcher", "  state: withdrawn\n"));
    }
}
