//! A document whose ending is not `.yaml`.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "file-ending",
        group: Group::Form,
        level: Level::Fault,
        what: "A file that would be a document ends in `.yml` or in capitals.",
        why: "Its author believes that it is read, and it is not: the guide is missing from the site.",
        example: "pork/loin.yml     # rename it to pork/loin.yaml",
        mend: "Rename the file so that it ends in `.yaml`.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn the_short_ending() {
        files(&[(
            "chicken/half.yml",
            "title: x
#^1:1 fault[file-ending] ends in `.yml`
",
        )]);
    }

    #[test]
    fn what_needs_the_guide_stays_silent() {
        files(&[
            (
                "chicken/half.yml",
                "title: x
#^1:1 fault[file-ending]
",
            ),
            (
                "courses/one.yaml",
                "title: One
lessons: [{ name: Halves, procedures: [chicken/half] }]
",
            ),
        ]);
    }
}
