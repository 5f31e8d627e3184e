//! A file that nothing reads where it lies.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "file-out-of-place",
        group: Group::Form,
        level: Level::Advice,
        what: "A table, a page, a picture or a YAML file lies where the guidebook holds nothing of its kind.",
        why: "Its author may believe that it is read. It may also lie there on purpose, so this is advice.",
        example: "pork/runs.csv      # belongs into cutting-tests/pork/runs.csv",
        mend: "Move it to the folder where it belongs, or out of the guidebook. A name that begins with `_` or `.` is passed over.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_table_beside_procedures() {
        files(&[(
            "chicken/runs.csv",
            "date
#^1:1 advice[file-out-of-place] no one reads this table here
",
        )]);
    }

    #[test]
    fn notes_and_hidden_files() {
        files(&[
            (
                "chicken/notes.txt",
                "x
",
            ),
            (
                "_drafts/half.yaml",
                "x
",
            ),
            (
                "README.md",
                "x
",
            ),
        ]);
    }
}
