//! A translation, which this version does not read.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "translation-unread",
        group: Group::Form,
        level: Level::Advice,
        what: "A file beside a document holds its texts in another language, such as `loin.es.yaml`. This version does not read it.",
        why: "Whoever wrote it expects pages in that language. The original is shown instead, so nobody is misled, but the work does not reach the learner.",
        example: "pork/loin.es.yaml",
        mend: "Keep the file for later; nothing in it is lost.",
        source: "Guidebook format, version 1, \"Other documents\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_translation() {
        files(&[(
            "chicken/whole.es.yaml",
            "title: Pollo entero
#^1:1 advice[translation-unread]
",
        )]);
    }

    #[test]
    fn another_document() {
        files(&[(
            "cuts/chicken.yaml",
            "chicken-half: { name: Half }
",
        )]);
    }
}
