//! A list document with nothing in it yet.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "empty-list",
        group: Group::Form,
        level: Level::Advice,
        what: "A document that lists things, such as `tools.yaml`, lists nothing.",
        why: "It does no harm. But someone may believe that what stood here still holds.",
        example: "# tools.yaml, and nothing else",
        mend: "Delete the file, or list something.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn an_empty_list() {
        files(&[(
            "cautions.yaml",
            "# none yet
#^1:1 advice[empty-list] nothing is listed
",
        )]);
    }

    #[test]
    fn one_entry() {
        files(&[(
            "tools.yaml",
            "rib-puller: { name: Rib puller }
",
        )]);
    }
}
