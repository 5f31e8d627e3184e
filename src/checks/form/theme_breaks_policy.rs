//! A theme whose pages lose their policy, or hold what it keeps out.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "theme-breaks-policy",
        group: Group::Form,
        level: Level::Fault,
        what: "A page of the guidebook's own theme has no content security policy, or holds a script, a style or an address that the policy keeps out, or passes plain text on as markup.",
        why: "Without the policy a text of the guidebook could run as a script; what the policy keeps out, browsers leave away without a word, on the phone at the bench too.",
        example: "<p style=\"color: red\">      # left out by browsers\n<p class=\"due\">             # with a rule in styles/own.css",
        mend: "Keep the head of `templates/base.html`; put rules into `styles/own.css`, scripts and pictures into `assets`.",
        source: "Content Security Policy Level 3 (W3C, working draft 2024), sections 3.3 and 6.7.",
    },
    run: Run::WithTheme,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::theme;

    fn home(main: &str) -> String {
        format!("{{% extends \"base.html\" %}}{{% block main %}}{main}{{% endblock %}}")
    }

    #[test]
    fn a_page_without_policy() {
        theme(
            &[("templates/home.html", "<!doctype html><title>{{ page.title }}</title>")],
            &[
                "templates/home.html:1:1 fault[theme-breaks-policy] the page has no content security policy before its style and scripts (on index.html)",
            ],
        );
        let late = "<!doctype html><style>{{ page.style | safe }}</style><meta http-equiv=\"Content-Security-Policy\" content=\"{{ page.policy }}\">";
        theme(&[("templates/home.html", late)], &["templates/home.html:1:1 fault[theme-breaks-policy] before its style and scripts"]);
    }

    #[test]
    fn what_browsers_would_leave_out() {
        for (part, column, message) in [
            ("<p style=\"color:red\">", 45, "`style` of this <p>"),
            ("<p onclick=\"x()\">", 45, "`onclick` of this <p>"),
            ("<script>x()</script>", 42, "this script"),
            ("<style>a{}</style>", 42, "this style"),
            ("<img src=\"https://example.org/a.png\" alt=\"\">", 42, "`https://example.org/a.png` lies elsewhere"),
            ("<iframe src=\"a.html\"></iframe>", 42, "this <iframe>"),
            ("<link rel=\"stylesheet\" href=\"a.css\">", 42, "the style sheet `a.css`"),
        ] {
            let expected = format!("templates/home.html:1:{column} fault[theme-breaks-policy] {message}");
            theme(&[("templates/home.html", &home(part))], &[&expected]);
        }
        theme(
            &[("styles/own.css", "a { background: url(a.png) }")],
            &["styles/own.css:1:17 fault[theme-breaks-policy] in the folder of each page"],
        );
    }

    #[test]
    fn plain_text_as_markup() {
        theme(
            &[("templates/home.html", &home("{{ page.site | safe }}"))],
            &["templates/home.html:1:45 fault[theme-breaks-policy] `page.site` is plain text"],
        );
    }

    #[test]
    fn links_and_own_assets() {
        let main = "<script src=\"{{ page.assets[\"hello.js\"] }}\" defer></script><a href=\"https://example.org/\">x</a>";
        theme(&[("assets/hello.js", "document.title\n"), ("templates/home.html", &home(main))], &[]);
    }
}
