//! A table that is none.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "table-malformed",
        group: Group::Form,
        level: Level::Fault,
        what: "A table has a row of another length than its header, a column without a name, a quote that is not closed, or another sign than the comma between its cells.",
        why: "A weight under the wrong heading would be counted for the wrong piece.",
        example: "date,cutter,lot,unit,start\n2026-11-02,A,12,kg         # one cell short",
        mend: "Put a comma for each column, and quotes round a cell that holds a comma.",
        source: "RFC 4180, Common Format and MIME Type for CSV Files, 2005, section 2; Guidebook format, version 1, \"Other documents\".",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries};

    #[test]
    fn a_short_row() {
        let table = Entry::File(b"date,cutter,lot,unit,start,chicken-half\n2026-03-02,A,7,kg,1.8\n".to_vec());
        entries(vec![("cutting-tests/chicken/sound.csv", table)], &["cutting-tests/chicken/sound.csv:2:1 fault[table-malformed]"]);
    }

    #[test]
    fn quotes_and_empty_lines() {
        let table =
            Entry::File(b"date,cutter,lot,unit,start,chicken-half,note\n\n2026-03-02,\"A, B\",7,kg,1.8,1.79,\"wet, cold\"\n".to_vec());
        entries(vec![("cutting-tests/chicken/sound.csv", table)], &[]);
    }
}
