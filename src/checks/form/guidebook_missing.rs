//! A folder without `guidebook.yaml`.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "guidebook-missing",
        group: Group::Form,
        level: Level::Fault,
        what: "The folder holds no `guidebook.yaml`.",
        why: "Without it nobody knows what the guidebook is called and which limits it is held against.",
        example: "procedures/\n  pork/loin.yaml      # and no guidebook.yaml beside the folder `pork`",
        mend: "Write a `guidebook.yaml` that holds `title` at least, or name the right folder.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, HEAD, STEPS, files};
    use crate::finding::Level;

    #[test]
    fn no_guidebook() {
        let inspection =
            crate::inspect([("chicken/a.yaml".to_owned(), Entry::File(format!("{HEAD}{STEPS}").into_bytes()))].into_iter().collect());
        let faults = inspection.findings.iter().filter(|finding| finding.level == Level::Fault);
        let told: Vec<_> = faults.map(|finding| (finding.check, inspection.sources.path(finding.place.file))).collect();
        assert_eq!(told, [("guidebook-missing", "guidebook.yaml")]);
    }

    #[test]
    fn a_guidebook_that_can_not_be_read_is_told_as_such() {
        files(&[(
            "guidebook.yaml",
            "title: [Our shop
#      ^^^^^^^^^ fault[unclosed-bracket]
",
        )]);
    }
}
