//! A file in another encoding than UTF-8.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "not-utf-8",
        group: Group::Form,
        level: Level::Fault,
        what: "The bytes of a file are not UTF-8. The finding names the first that is not, and what it would be in another encoding.",
        why: "An old editor wrote `°` or `é` in another code. Guessing wrong would print another letter or another number on the wall card.",
        example: "title: Caf<E9> cut     # é in Latin-1",
        mend: "Save the file again with the encoding UTF-8.",
        source: "YAML 1.2.2, section 5.2; RFC 3629, UTF-8, 2003.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, beside, entries};

    #[test]
    fn latin_1() {
        entries(
            vec![("chicken/a.yaml", Entry::File(b"title: Caf\xe9 cut of veal\n".to_vec()))],
            &["chicken/a.yaml:1:11 fault[not-utf-8] `é`"],
        );
    }

    #[test]
    fn utf_8() {
        beside(
            "purpose: Café cut, 4 °C, 5–7 %.
",
        );
    }
}
