//! Anchors and aliases of YAML, which a guidebook does not use.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "anchor-or-alias",
        group: Group::Form,
        level: Level::Fault,
        what: "A value begins with `&` (an anchor) or `*` (an alias), by which YAML names a value and repeats it elsewhere.",
        why: "A repeated value changes in two places when one is edited, and a finding could not point at the line that is wrong. Nested aliases can also blow a small file up until nothing reads it.",
        example: "good: *see-above        # refused\ngood: \"*No* bone is cut\"  # a text in quotes",
        mend: "Write the value out where it is needed. Put a text that begins with `&` or `*` in quotes.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.9.2 and 7.1; Guidebook format, version 1, \"How values are read\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn an_anchor_and_its_alias() {
        beside(
            "purpose: &why To learn.
#        ^^^^ fault[anchor-or-alias] `&why` reads as an anchor
level: *why
#      ^^^^ fault[anchor-or-alias] `*why` reads as an alias
",
        );
    }

    #[test]
    fn a_text_with_a_star_in_quotes() {
        beside(
            "purpose: \"*Learn* to follow the joint & not the bone.\"
",
        );
    }
}
