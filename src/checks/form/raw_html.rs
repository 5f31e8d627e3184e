//! HTML in a free text.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "raw-html",
        group: Group::Form,
        level: Level::Advice,
        what: "A free text holds a tag or a comment of HTML.",
        why: "Free text is Markdown. HTML never reaches a page as HTML, because a tag copied from elsewhere could load or run something; it is shown as the plain text that it is. So nothing is lost, but it looks wrong: that is why this is advice.",
        example: "do: Cut <b>beside</b> the bone.        # shows `<b>`\ndo: Cut **beside** the bone.",
        mend: "Write it in Markdown, or put a backslash before a `<` that is meant as a sign.",
        source: "CommonMark specification 0.31.2, 2024, sections 4.6 and 6.6 (HTML blocks, raw HTML).",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files};

    #[test]
    fn a_tag() {
        beside(
            "purpose: Cut <b>beside</b> the bone.
#            ^^^ advice[raw-html] `<b>`
",
        );
    }

    #[test]
    fn a_page() {
        files(&[(
            "pages/a.md",
            "# Rules

Wash <br> your <br> hands.

#^3:6 advice[raw-html] `<br>`
",
        )]);
    }

    #[test]
    fn a_sign_of_less_than() {
        beside(
            "purpose: Keep it at <4 °C, and see <https://example.org>.
",
        );
    }
}
