//! A range whose first number is the greater.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "range-inverted",
        group: Group::Form,
        level: Level::Fault,
        what: "A range is upside down: its low end is above its high end.",
        why: "Nothing can be more than the greater and less than the smaller. Two digits may have changed places, and then more than the order is wrong.",
        example: "share: 35–31 %     # refused\nshare: 31–35 %",
        mend: "Let the two numbers change places, or mend the one that is wrong.",
        source: "Guidebook format, version 1, \"Where a finding points\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, procedure, steps};

    #[test]
    fn a_share_a_weight_and_minutes() {
        procedure(
            "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 2.0–1.6 kg, typical: 1.8 kg, temperature: 0–4 °C }
#                                      ^^^^^^^^^^ fault[range-inverted] 2.0 is above 1.6 kg
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
",
        );
    }

    #[test]
    fn nothing_that_depends_on_it_is_told() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 99–98 %, pieces: 2, use: retail }
#                            ^^^^^^^ fault[range-inverted] upside down
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_range_of_one_value() {
        beside(
            "set-up-minutes: 5–5
clean-minutes: 2.5–10
",
        );
    }
}
