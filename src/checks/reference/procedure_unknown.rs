//! Guides that are named and not there.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "procedure-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "A guide under `needs`, or in a lesson of a course, is not in the guidebook.",
        why: "A learner who follows the link reaches nothing, and a lesson without its guide cannot be held.",
        example: "needs: [pork/side-primal]       # refused\nneeds: [pork/side-primals]",
        mend: "Write the id of the guide: its path without the ending.",
        source: "Guidebook format, version 1, \"Files\" and \"Other documents\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let needs = book.procedures.iter().flat_map(|procedure| &procedure.needs);
    let lessons = book.courses.iter().flat_map(|course| &course.lessons).flat_map(|lesson| &lesson.procedures);
    for named in needs.chain(lessons) {
        let id = named.value.as_str();
        if book.procedure(id).is_some() || book.broken_procedures.contains(id) {
            continue;
        }
        let renamed =
            book.procedures.iter().find(|procedure| procedure.was.iter().any(|was| was.value == id)).map(|procedure| procedure.id.as_str());
        let bare = id.trim_end_matches(".yaml");
        let ids = || book.procedures.iter().map(|procedure| procedure.id.as_str());
        let same_name = || ids().find(|known| known.rsplit('/').next() == bare.rsplit('/').next());
        let help = renamed.or_else(|| nearest(bare, ids())).or_else(same_name).map_or_else(
            || "Write the path of a guide without its ending, as in `pork/loin-boneless`.".to_owned(),
            |near| format!("Write `{near}`."),
        );
        report.add(CHECK.info.at(named.place, format!("there is no guide `{id}`")).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files};

    #[test]
    fn a_guide_to_know_first() {
        beside(
            "needs: [chicken/joints]
#       ^^^^^^^^^^^^^^ fault[procedure-unknown] no guide `chicken/joints`
",
        );
    }

    #[test]
    fn a_lesson() {
        files(&[(
            "courses/one.yaml",
            "title: One
lessons:
  - { name: Halves, procedures: [chicken/whole, chicken/wole] }
#                                               ^^^^^^^^^^^^ fault[procedure-unknown]
",
        )]);
    }

    #[test]
    fn a_guide_that_can_not_be_read_is_there() {
        files(&[
            (
                "chicken/half.yaml",
                "title: \"Half
#      ^ fault[unclosed-quote]
",
            ),
            (
                "courses/one.yaml",
                "title: One
lessons:
  - { name: Halves, procedures: [chicken/half] }
",
            ),
        ]);
    }
}
