//! Dates that are no dates, or in another order.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "date-malformed",
        group: Group::Form,
        level: Level::Fault,
        what: "A date is not written as year, month and day with hyphens, or the calendar has no such day.",
        why: "`03/04/2026` is March in one country and April in another, so a guide could count as in force a month too early.",
        example: "date: 12.10.2026     # refused\ndate: 2026-10-12",
        mend: "Write four digits for the year, two for the month and two for the day: `2026-10-12`.",
        source: "ISO 8601-1:2019, calendar date in extended format; Guidebook format, version 1, \"Quantities\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, HEAD, procedure};

    #[test]
    fn a_date_in_another_order() {
        procedure(
            "title: Half
species: chicken
revision:
  number: 1
  date: 13.10.2026
#       ^^^^^^^^^^ fault[date-malformed] expected a date as year-month-day
  author: course lead
  approved-by: head butcher
  review-by: 2027-02-30
#            ^^^^^^^^^^ fault[date-malformed] there is no day `2027-02-30`
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn the_mended_date_is_offered_where_only_one_reading_is_possible() {
        let help = |text: &str| {
            let head = HEAD.replace("2026-03-02", text);
            let files = [
                ("guidebook.yaml".to_owned(), Entry::File(b"title: G\n".to_vec())),
                ("chicken/a.yaml".to_owned(), Entry::File(head.into_bytes())),
            ];
            let inspection = crate::inspect(files.into_iter().collect());
            inspection
                .findings
                .iter()
                .filter(|finding| finding.check == "date-malformed")
                .map(|finding| finding.help.clone())
                .collect::<Vec<_>>()
        };
        assert_eq!(help("13.10.2026"), ["Write `2026-10-13`."]);
        assert_eq!(help("10/12/2026"), ["Write year-month-day, as in `2026-10-12`."]);
        assert_eq!(help("2026-10-12"), [""; 0]);
    }
}
