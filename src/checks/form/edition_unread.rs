//! A house edition, which this version does not read.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "edition-unread",
        group: Group::Form,
        level: Level::Fault,
        what: "`guidebook.yaml` says that it is a house edition over another guidebook.",
        why: "An edition changes what its own files mean. Checked without the guidebook below it, it would pass or fail for the wrong reasons.",
        example: "title: Our shop\nover: ../course",
        mend: "Copy the files of the other guidebook here, change them, and take out `over`.",
        source: "Guidebook format, version 1, \"Other documents\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn an_edition() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-853
over: ../course
#     ^^^^^^^^^ fault[edition-unread] `../course`
",
        )]);
    }

    #[test]
    fn a_guidebook_of_its_own() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-853
",
        )]);
    }
}
