//! A picture whose ending says another kind than its bytes.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "picture-ending",
        group: Group::Form,
        level: Level::Advice,
        what: "A picture ends in one way and holds a picture of another kind.",
        why: "Browsers go by what the server tells them, and servers by the ending, so on some phones it is not shown.",
        example: "pictures/leg.jpg, which holds a PNG",
        mend: "Rename the file to the ending of its kind, here and where it is named.",
        source: "WHATWG, MIME Sniffing Standard (living standard), section on image types.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries};

    #[test]
    fn a_png_that_ends_in_jpg() {
        entries(
            vec![("pictures/leg.jpg", Entry::File(b"\x89PNG\r\n\x1a\n".to_vec()))],
            &["pictures/leg.jpg:1:1 advice[picture-ending] `.png`"],
        );
    }

    #[test]
    fn the_right_ending() {
        entries(vec![("pictures/leg.png", Entry::File(b"\x89PNG\r\n\x1a\n".to_vec()))], &[]);
    }
}
