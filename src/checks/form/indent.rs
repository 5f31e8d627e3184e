//! A line that does not line up.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "indent",
        group: Group::Form,
        level: Level::Fault,
        what: "A line begins in a column in which no key, item or text of its surroundings begins.",
        why: "In YAML the column says what belongs to what, so the file cannot be read past this line.",
        example: "- name: Take off the legs\n   take: chicken-whole       # one space too far",
        mend: "Begin the line in the same column as the keys that it belongs with.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.1 and 8.2.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_key_one_space_too_far() {
        steps(
            "steps:
  - name: Halve
     take: chicken-whole
#    ^^^^ fault[indent] `take` does not line up
    do: Cut along the keel.
",
        );
    }

    #[test]
    fn any_depth_will_do_when_it_is_kept() {
        steps(
            "steps:
      - name: Halve
        take: chicken-whole
        do: Cut along the keel.
        minutes: 1–2
        give: 
                chicken-half: { share: 98–100 %, pieces: 2, use: retail }
        loss: 0–2 %
",
        );
    }
}
