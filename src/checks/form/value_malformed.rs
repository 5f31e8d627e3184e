//! A value that is not of the form that is asked for.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "value-malformed",
        group: Group::Form,
        level: Level::Fault,
        what: "A value is no number, no date, no age, no price or no point where one is asked for.",
        why: "What cannot be read cannot be checked, and everything that depends on it stays unknown.",
        example: "pieces: two        # refused\npieces: 2",
        mend: "Write the value in the form that the help shows.",
        source: "Guidebook format, version 1, \"Quantities\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files, steps};

    #[test]
    fn a_number_in_words() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: two, use: retail }
#                                              ^^^ fault[value-malformed] expected a whole number, found `two`
    loss: 0–2 %
",
        );
    }

    #[test]
    fn an_age() {
        beside(
            "age: young
#    ^^^^^ fault[value-malformed] `young` is not an age
",
        );
    }

    #[test]
    fn a_price_and_a_currency() {
        files(&[(
            "prices.yaml",
            "currency: Euro
#         ^^^^ fault[value-malformed] the code of a currency
date: 2026-03-02
buy:
  chicken-whole: cheap
#                ^^^^^ fault[value-malformed] expected an amount
",
        )]);
    }

    #[test]
    fn rest_beside_steps() {
        beside(
            "yields:
  chicken-half: rest
#               ^^^^ fault[value-malformed] `rest` says nothing
",
        );
    }

    #[test]
    fn ages_and_counts_of_the_format() {
        beside(
            "age: under 12 months
",
        );
    }
}
