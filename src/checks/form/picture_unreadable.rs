//! A picture without a picture in it.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "picture-unreadable",
        group: Group::Form,
        level: Level::Fault,
        what: "A file in `pictures/` has the ending of a picture, and its bytes are none.",
        why: "A copy may have broken off. On the page there would be an empty frame where the cut should be seen.",
        example: "pictures/leg.png, which is empty",
        mend: "Save the picture again from the program that made it.",
        source: "WHATWG, MIME Sniffing Standard (living standard), section on image types.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, HEAD, STEPS, entries};

    #[test]
    fn an_empty_picture_named_by_a_step() {
        let named = format!("{HEAD}{STEPS}    pictures: [{{ file: pictures/leg.png, alt: A leg folded back }}]\n");
        let files = vec![
            ("chicken/a.yaml", Entry::File(named.replace("title: Whole chicken", "title: Half").into_bytes())),
            ("pictures/leg.png", Entry::File(Vec::new())),
        ];
        entries(files, &["pictures/leg.png:1:1 fault[picture-unreadable] this picture is empty"]);
    }

    #[test]
    fn a_drawing() {
        entries(vec![("pictures/leg.svg", Entry::File(b"<svg xmlns='http://www.w3.org/2000/svg'/>".to_vec()))], &[]);
    }
}
