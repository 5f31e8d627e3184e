//! Links that no page may hold.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "link-unsafe",
        group: Group::Form,
        level: Level::Fault,
        what: "A link in a text begins with something else than `https:`, `http:`, `mailto:` or `tel:`, or hides what it begins with. A picture in a text lies on another computer.",
        why: "A link such as `javascript:` runs what it holds on the phone of whoever taps it. It is a fault, because a page must never carry it and leaving it out in silence would break the text. A picture from elsewhere would tell another computer who reads the guide, and is missing without a signal.",
        example: "See [the film](file:///home/leg.mp4).           # refused\nSee [the film](https://example.org/leg.mp4).",
        mend: "Begin the address with `https://`, or write a path inside the guidebook.",
        source: "CommonMark specification 0.31.2, 2024, section 6.3 (links); OWASP, Cross Site Scripting Prevention Cheat Sheet, on addresses in links.",
    },
    run: Run::WhileReading,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files};

    #[test]
    fn a_link_that_runs() {
        beside(
            "purpose: See [the film](javascript:play).
#            ^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[link-unsafe] a link may not begin with `javascript:`
",
        );
    }

    #[test]
    fn the_exact_line_of_a_long_text() {
        files(&[(
            "pages/films.md",
            "Learn it.

Then see [the film](data:text/html,x).
#        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[link-unsafe] `data:`
",
        )]);
    }

    #[test]
    fn a_picture_from_elsewhere() {
        beside(
            "purpose: Look ![leg](https://example.org/leg.png).
#             ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ fault[link-unsafe] lies elsewhere
",
        );
    }

    #[test]
    fn addresses_that_are_fine() {
        beside(
            "purpose: See <https://example.org> or [write](mailto:lead@example.org).
",
        );
    }
}
