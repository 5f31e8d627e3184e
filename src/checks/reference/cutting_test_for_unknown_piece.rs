//! Weighed columns of pieces that the guide does not give.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "cutting-test-for-unknown-piece",
        group: Group::Reference,
        level: Level::Fault,
        what: "A cutting test has a column for a piece that no step of its procedure gives.",
        why: "What was weighed would be counted for no piece, and the piece that was meant would look never weighed.",
        example: "date,cutter,lot,unit,start,pork-tenderlion     # refused",
        mend: "Name the column by the id of the piece.",
        source: "Guidebook format, version 1, \"Other documents\": a column for each final piece by its id.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for test in &subject.book.cutting_tests {
        let Some(given) = subject.book.procedure(&test.procedure).and_then(known::given_by) else { continue };
        for column in test.columns.iter().filter(|column| column.value != "loss" && !given.contains(column.value.as_str())) {
            let help = nearest(&column.value, given.iter().copied()).map_or_else(
                || "Name it by the id of a piece that the guide gives, or take the column out.".to_owned(),
                |near| format!("Write `{near}`."),
            );
            report.add(CHECK.info.at(column.place, format!("`{}` does not give `{}`", test.procedure, column.value)).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries};

    #[test]
    fn a_misspelt_heading() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-haf,loss\n2026-03-02,A,7,kg,1.8,1.79,0.01\n".to_vec());
        entries(
            vec![("cutting-tests/chicken/sound.csv", table)],
            &["cutting-tests/chicken/sound.csv:1:28 fault[cutting-test-for-unknown-piece] `chicken-haf`"],
        );
    }

    #[test]
    fn pieces_the_loss_and_the_fixed_columns() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-half,loss,shop,revision,minutes,received,note\n2026-03-02,A,7,kg,1.8,1.79,0.01,S,1,2,1.81,x\n".to_vec());
        entries(vec![("cutting-tests/chicken/sound.csv", table)], &[]);
    }
}
