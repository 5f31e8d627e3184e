//! A key that stands twice in one place.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "doubled-key",
        group: Group::Form,
        level: Level::Fault,
        what: "A key, or a column of a table, stands twice in the same mapping.",
        why: "Two authors may have added one line each. Most programs keep the last without a word, and nobody knows which was meant.",
        example: "minutes: 2–5\ntools: [boning-knife]\nminutes: 3–6      # the second one",
        mend: "Keep one of the two, or give one another name.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 3.2.1.1: the keys of a mapping are unique.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries, steps};

    #[test]
    fn a_key_of_a_step() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    minutes: 3–4
#   ^^^^^^^ fault[doubled-key] `minutes` stands here twice
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_piece_given_twice_in_one_step() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
      chicken-half: 40 %
#     ^^^^^^^^^^^^ fault[doubled-key]
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_column_of_a_table() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-half,chicken-half\n".to_vec());
        entries(vec![("cutting-tests/chicken/sound.csv", table)], &["cutting-tests/chicken/sound.csv:1:41 fault[doubled-key]"]);
    }

    #[test]
    fn the_same_key_in_two_steps() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2 }
    loss: 0–2 %
  - name: Trim
    take: chicken-half
    do: Trim the edges.
    minutes: 1–2
    give:
      chicken-half-trimmed: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
