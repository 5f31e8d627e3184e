//! Weighed results of a guide that is not there.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "cutting-test-for-unknown-procedure",
        group: Group::Reference,
        level: Level::Fault,
        what: "A table in `cutting-tests/` belongs by its path to a procedure that is not in the guidebook.",
        why: "Runs that someone weighed at the bench would be counted for nothing.",
        example: "cutting-tests/pork/loin-bonless.csv      # there is pork/loin-boneless.yaml",
        mend: "Rename the table to the path of its guide.",
        source: "Guidebook format, version 1, \"Files\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    for test in &book.cutting_tests {
        if book.procedure(&test.procedure).is_some() || book.broken_procedures.contains(&test.procedure) {
            continue;
        }
        let ids = book.procedures.iter().map(|procedure| procedure.id.as_str());
        let help = nearest(&test.procedure, ids).map_or_else(
            || "Rename the table to the path of its guide, as in `cutting-tests/pork/loin-boneless.csv`.".to_owned(),
            |near| format!("Rename the table to `cutting-tests/{near}.csv`."),
        );
        report.add(CHECK.info.at(test.place, format!("these runs belong to a guide `{}`, which is not there", test.procedure)).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries};

    #[test]
    fn a_misspelt_path() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-half\n2026-03-02,A,7,kg,1.8,1.79\n".to_vec());
        let expected = ["cutting-tests/chicken/sond.csv:1:1 fault[cutting-test-for-unknown-procedure] `chicken/sond`"];
        entries(vec![("cutting-tests/chicken/sond.csv", table)], &expected);
    }

    #[test]
    fn silent_where_the_guide_can_not_be_read() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-half\n2026-03-02,A,7,kg,1.8,1.79\n".to_vec());
        let guide = Entry::File(b"title: \"x\n".to_vec());
        let files = vec![("cutting-tests/chicken/a.csv", table), ("chicken/a.yaml", guide)];
        entries(files, &["chicken/a.yaml:1:8 fault[unclosed-quote]"]);
    }
}
