//! A review that is due before the revision counts.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "review-before-date",
        group: Group::Control,
        level: Level::Advice,
        what: "The day of the next review lies before the day from which the revision counts.",
        why: "The review was left at its old day when the revision was raised, so nobody knows when to look at it again.",
        example: "revision: { number: 2, date: 2026-10-12, review-by: 2026-09-01 }    # told",
        mend: "Write the day of the next review, often a year after the date.",
        source: "Common practice. US DOE directive headers carry the days of approval and of review side by side (order template, read as a copy).",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let revision = &procedure.revision;
        let (Some(review), Some(date)) = (revision.review_by.given(), revision.date.given()) else { continue };
        if review.value < date.value {
            let message = format!("the review is due on {}, and the revision counts from {}", review.value, date.value);
            let finding = CHECK.info.at(review.place, message).also(date.place, "the revision counts from here");
            report.add(finding.help("Write the day of the next review."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{STEPS, procedure};

    fn with(revision: &str) -> String {
        format!(
            "title: Whole chicken
species: chicken
start: {{ piece: chicken-whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
revision:
{revision}{STEPS}"
        )
    }

    #[test]
    fn a_review_left_at_its_old_day() {
        procedure(&with(
            "  number: 2
  date: 2026-10-12
  author: course lead
  approved-by: head butcher
  review-by: 2026-09-01
#            ^^^^^^^^^^ advice[review-before-date] the review is due on 2026-09-01, and the revision counts from 2026-10-12
  change: The keel is cut first.
",
        ));
    }

    #[test]
    fn a_review_later() {
        procedure(&with(
            "  number: 1
  date: 2026-10-12
  author: course lead
  approved-by: head butcher
  review-by: 2027-10-12
",
        ));
    }
}
