//! A file that the system does not hand out.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "file-unreadable",
        group: Group::Form,
        level: Level::Fault,
        what: "The system refuses to read a file of the guidebook.",
        why: "What stands in it would be missing from the site without a word.",
        example: "pork/loin.yaml: permission denied",
        mend: "Let the one who runs this read the file, or take it out of the folder.",
        source: "Common practice.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries};

    #[test]
    fn a_locked_file() {
        let locked = Entry::Unreadable { reason: "permission denied".to_owned() };
        entries(vec![("chicken/a.yaml", locked)], &["chicken/a.yaml:1:1 fault[file-unreadable] permission denied"]);
    }

    #[test]
    fn what_needs_the_guide_stays_silent() {
        let locked = Entry::Unreadable { reason: "permission denied".to_owned() };
        let course = Entry::File(b"title: One\nlessons: [{ name: L, procedures: [chicken/a] }]\n".to_vec());
        let expected = ["chicken/a.yaml:1:1 fault[file-unreadable] permission denied"];
        entries(vec![("chicken/a.yaml", locked), ("courses/one.yaml", course)], &expected);
    }
}
