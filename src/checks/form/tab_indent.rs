//! A tab where spaces are due.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "tab-indent",
        group: Group::Form,
        level: Level::Fault,
        what: "A line is indented with a tab.",
        why: "In YAML the column says what belongs to what, and editors draw a tab at different widths. So only spaces count.",
        example: "steps:\n<tab>- name: Take off the legs      # refused",
        mend: "Put spaces in place of the tab; most editors can do so as you type.",
        source: "YAML 1.2.2 (YAML Language Development Team, 2021), section 6.1: tab characters must not be used in indentation.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, steps};

    #[test]
    fn a_tab() {
        steps(
            "steps:
  - name: Halve
\ttake: chicken-whole
#^10:1 fault[tab-indent]
",
        );
    }

    #[test]
    fn a_tab_inside_a_text() {
        beside(
            "purpose: To\tlearn.
",
        );
    }
}
