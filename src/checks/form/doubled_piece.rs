//! A piece that stands in two cut lists.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "doubled-piece",
        group: Group::Form,
        level: Level::Fault,
        what: "The same id stands in the cut lists of two species.",
        why: "An id is the same piece everywhere in the guidebook. With two entries its name and its weight would depend on the order of reading.",
        example: "# cuts/beef.yaml\ntenderloin: { name: Fillet }\n# cuts/pork.yaml\ntenderloin: { name: Tenderloin }    # the second one",
        mend: "Give one of the two an id of its own, such as `pork-tenderloin`, here and where it is used.",
        source: "Guidebook format, version 1, \"Ids\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn the_second_of_two_lists() {
        files(&[
            (
                "cuts/chicken.yaml",
                "breast: { name: Breast }
",
            ),
            (
                "cuts/duck.yaml",
                "wing: { name: Wing }
breast: { name: Duck breast }
#^2:1 fault[doubled-piece] in the cut list of chicken too
",
            ),
        ]);
    }

    #[test]
    fn one_name_for_two_pieces_is_no_doubled_id() {
        files(&[
            (
                "cuts/chicken.yaml",
                "chicken-breast: { name: Breast }
",
            ),
            (
                "cuts/duck.yaml",
                "duck-breast: { name: Breast }
",
            ),
        ]);
    }
}
