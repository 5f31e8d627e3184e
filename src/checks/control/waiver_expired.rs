//! A waiver whose last day has passed, as of the newest date in the guidebook.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, waived};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "waiver-expired",
        group: Group::Control,
        level: Level::Advice,
        what: "The day `until` of a waiver lies before the newest date in the guidebook. The waiver holds through that day; after it, the \
               advice that it accepted is given again. What is said of a waiver can be turned off, not waived.",
        why: "Somebody accepted a weak spot for a time, and that time is over. It is mended now, or accepted again by name.",
        example: "waivers:\n  - { check: picture-without-alt, where: halve, reason: Drawings come in May., by: head butcher, until: 2026-05-31 }    # told in June",
        mend: "Mend what the advice says and take the waiver out, or set a new day with a reason that still holds.",
        source: "Guidebook format, version 1, `waivers`. That an exception ends on a day is common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some(newest) = subject.book.newest_date() else { return };
    for waiver in subject.book.procedures.iter().flat_map(|procedure| &procedure.waivers) {
        let (Some(check), Some(until)) = (waiver.check.value(), waiver.until.given()) else { continue };
        // A waiver of what can't be waived is a fault that is told already.
        if waived::is_waivable(check) && waived::expired(waiver, subject.book) {
            let message = format!("`{check}` was accepted until {}, and the newest date in the guidebook is {newest}", until.value);
            report.add(CHECK.info.at(until.place, message).help("Mend it and take the waiver out, or set a new day."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{HEAD, steps};

    /// The newest date in the guidebook is 2026-03-02.
    fn carefully(until: &str, told: &str, again: &str) {
        assert!(HEAD.contains("date: 2026-03-02"), "the newest date of these tests");
        steps(&format!(
            "waivers:
  - check: vague-words
    where: halve
    reason: The class practises it first.
    by: head butcher
    until: {until}
{told}steps:
  - name: Halve
    take: chicken-whole
    do: Cut carefully along the keel.
{again}    minutes: 1–2
    give:
      chicken-half: {{ share: 98–100 %, pieces: 2, use: retail }}
    loss: 0–2 %
"
        ));
    }

    #[test]
    fn the_day_after_it_is_told_and_the_advice_is_back() {
        carefully(
            "2026-03-01",
            "#          ^^^^^^^^^^ advice[waiver-expired] `vague-words` was accepted until 2026-03-01, and the newest date in the guidebook is 2026-03-02\n",
            "#           ^^^^^^^^^ advice[vague-words] `carefully`\n",
        );
    }

    #[test]
    fn the_last_day_still_counts() {
        carefully("2026-03-02", "", "");
    }
}
