//! A file that is larger than is read.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "too-large",
        group: Group::Form,
        level: Level::Fault,
        what: "A text is larger than 2 MiB or holds more than 100,000 values, or another file is larger than the program reads.",
        why: "A procedure has a few kilobytes. A file of that size was put here by mistake, or to make programs fail.",
        example: "pork/loin.yaml of 40 MB",
        mend: "Split it into several files, make it smaller, or take it out of the folder.",
        source: "CWE-400, uncontrolled resource consumption (MITRE); the bounds are own judgement.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, HEAD, STEPS, entries};

    #[test]
    fn a_text_of_three_mebibytes() {
        let large = format!("title: {}\n", "x".repeat(3 << 20));
        entries(vec![("chicken/a.yaml", Entry::File(large.into_bytes()))], &["chicken/a.yaml:1:1 fault[too-large] 3145736 bytes"]);
    }

    #[test]
    fn told_by_the_walk() {
        entries(
            vec![("pictures/film.png", Entry::TooLarge { bytes: 9_000_000_000 })],
            &["pictures/film.png:1:1 fault[too-large] 9000000000 bytes"],
        );
    }

    #[test]
    fn a_long_text_is_fine() {
        let long = format!("{HEAD}purpose: {}\n{STEPS}", "word ".repeat(2000));
        entries(vec![("chicken/sound.yaml", Entry::File(long.into_bytes()))], &[]);
    }
}
