//! What leads out of the guidebook.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "link-leaves-guidebook",
        group: Group::Form,
        level: Level::Fault,
        what: "A picture, a link in a text, or a link of the file system leads to something outside of the guidebook.",
        why: "The site is made of the guidebook alone. What lies outside is not published, and on another computer it is not there.",
        example: "pictures:\n  - { file: ../../photos/leg.jpg, alt: A leg }    # refused\n  - { file: pictures/leg.jpg, alt: A leg }",
        mend: "Copy the file into the guidebook and name it from there.",
        source: "Guidebook format, version 1, \"Pictures\"; CWE-22, path traversal (MITRE).",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, beside, entries, steps};

    #[test]
    fn a_link_in_a_text() {
        beside(
            "purpose: See [the photograph](../../photos/leg.jpg).
#            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[link-leaves-guidebook] `../../photos/leg.jpg`
",
        );
    }

    #[test]
    fn a_picture() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    pictures:
      - { file: /home/photos/leg.jpg, alt: A leg folded back }
#               ^^^^^^^^^^^^^^^^^^^^ fault[link-leaves-guidebook]
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_link_of_the_file_system() {
        let link = Entry::LinkOutside { target: "/etc/passwd".to_owned() };
        entries(vec![("chicken/a.yaml", link)], &["chicken/a.yaml:1:1 fault[link-leaves-guidebook] `/etc/passwd`"]);
    }

    #[test]
    fn up_and_down_again_stays_inside() {
        beside(
            "purpose: See [this guide](../chicken/whole.yaml).
",
        );
    }
}
