//! A guide in force whose review day has passed, as of the newest date in the guidebook.

use jiff::civil::Date;

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};
use crate::model::Guidebook;
use crate::model::words::State;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "review-overdue",
        group: Group::Control,
        level: Level::Advice,
        what: "The review day of a guide in force lies before the newest date in the guidebook: of a revision, a cutting test or a price \
               list. The newest date serves as today, so that the same guidebook always gives the same answer.",
        why: "Animals, suppliers, tools and law change. A guide that nobody has looked at since may teach a yield, or a safety line, that no longer holds.",
        example: "revision: { number: 1, date: 2025-03-02, review-by: 2026-03-02 }    # told when another guide is dated 2026-10-12",
        mend: "Look the guide over against the work. Raise `number` where something changed, and set `review-by` anew.",
        source: "9 CFR 416.14 (procedures are evaluated routinely and revised to stay current; read as a copy); Handbook of Hygiene Control in \
                 the Food Industry, chapter 22 (a review every year; read in excerpt). The day itself is the guidebook's own.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some(newest) = subject.book.newest_date() else { return };
    for procedure in &subject.book.procedures {
        let revision = &procedure.revision;
        let Some(review) = revision.review_by.given() else { continue };
        // A state that could not be read may be any; a review before its own revision is told already.
        let in_force = !revision.state.is_broken() && revision.state() == State::InForce;
        let told = revision.date.value().is_none_or(|date| review.value < *date);
        if !in_force || told || review.value >= newest {
            continue;
        }
        let days = (newest - review.value).get_days();
        let days = if days == 1 { "1 day".to_owned() } else { format!("{days} days") };
        let message = format!("the review was due on {}, {days} before {newest}, the newest date in the guidebook", review.value);
        let finding = CHECK.info.at(review.place, message).help("Look the guide over, then set `review-by` anew.");
        report.add(match place_of(subject.book, newest) {
            Some(place) => finding.also(place, "the newest date"),
            None => finding,
        });
    }
}

/// Where a date stands first.
fn place_of(book: &Guidebook, date: Date) -> Option<Place> {
    let revisions = book.procedures.iter().filter_map(|procedure| procedure.revision.date.given());
    let prices = book.prices.iter().filter_map(|prices| prices.date.given());
    let runs = book.cutting_tests.iter().flat_map(|test| &test.runs).filter_map(|run| run.date.given());
    revisions.chain(prices).chain(runs).find(|given| given.value == date).map(|given| given.place)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, STEPS, files};

    /// A turkey guide of one step, with this revision.
    fn turkey(revision: &str) -> String {
        let text = format!("{HEAD}{STEPS}").replace("chicken", "turkey");
        let kept: Vec<&str> = text.lines().filter(|line| !line.starts_with("revision:")).collect();
        format!("{revision}{}\n", kept.join("\n"))
    }

    #[test]
    fn a_year_and_a_day() {
        let old = turkey(
            "revision:
  number: 1
  date: 2025-03-01
  author: course lead
  approved-by: head butcher
  review-by: 2026-03-01
#            ^^^^^^^^^^ advice[review-overdue] the review was due on 2026-03-01, 1 day before 2026-03-02, the newest date
",
        );
        files(&[("turkey/whole.yaml", &old), ("chicken/whole.yaml", &format!("{HEAD}{STEPS}"))]);
    }

    #[test]
    fn a_cutting_test_is_newer() {
        let runs = "date,cutter,lot,unit,start,turkey-half\n2026-04-11,a,1,kg,1.8,1.79\n";
        let old = turkey(
            "revision: { number: 1, date: 2025-03-01, author: course lead, approved-by: head butcher, review-by: 2026-04-01 }
#                                                                                                   ^^^^^^^^^^ advice[review-overdue] 10 days before 2026-04-11
",
        );
        files(&[("turkey/whole.yaml", &old), ("cutting-tests/turkey/whole.csv", runs)]);
    }

    #[test]
    fn due_on_the_day_itself_or_withdrawn() {
        let due = turkey("revision: { number: 1, date: 2025-03-02, author: a, approved-by: b, review-by: 2026-03-02 }\n");
        files(&[("turkey/whole.yaml", &due), ("chicken/whole.yaml", &format!("{HEAD}{STEPS}"))]);
        let withdrawn = turkey("revision: { number: 1, date: 2020-03-02, author: a, review-by: 2021-03-02, state: withdrawn }\n");
        files(&[("turkey/whole.yaml", &withdrawn), ("chicken/whole.yaml", &format!("{HEAD}{STEPS}"))]);
    }
}
