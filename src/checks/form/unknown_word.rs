//! A word that is not in its list.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "unknown-word",
        group: Group::Form,
        level: Level::Fault,
        what: "A key takes one word of a fixed list and holds another.",
        why: "A use that nobody knows goes to no tub, and a state that nobody knows is neither a draft nor in force.",
        example: "use: bones         # refused\nuse: bone",
        mend: "Write a word of the list; the nearest is offered.",
        source: "Guidebook format, version 1, \"A procedure\" and \"Outputs\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, steps};

    #[test]
    fn a_use() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retial }
#                                                      ^^^^^^ fault[unknown-word] `retial` is not a use
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_product_and_an_age() {
        beside(
            "product: poultri
#        ^^^^^^^ fault[unknown-word] not a class of product
",
        );
    }

    #[test]
    fn a_word_of_the_list() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: for-cutting }
    loss: 0–2 %
",
        );
    }
}
