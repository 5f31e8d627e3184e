//! A document with nothing in it.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "empty-file",
        group: Group::Form,
        level: Level::Fault,
        what: "A document that must say something is empty, or holds comments alone.",
        why: "A procedure that was emptied by mistake would vanish from the site without a word.",
        example: "# pork/loin.yaml, and nothing else",
        mend: "Write the document, or delete the file.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn an_empty_procedure() {
        files(&[(
            "chicken/half.yaml",
            "# to be written
#^1:1 fault[empty-file] nothing is written in this file
",
        )]);
    }

    #[test]
    fn a_list_may_be_empty_for_now() {
        files(&[(
            "tools.yaml",
            "# none yet
#^1:1 advice[empty-list]
",
        )]);
    }
}
