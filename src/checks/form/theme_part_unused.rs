//! A part of a theme that does nothing.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "theme-part-unused",
        group: Group::Form,
        level: Level::Advice,
        what: "The guidebook's own theme holds a file under a name that no page asks for, or a word that no template asks for.",
        why: "Its author believes that it changes the pages; most likely a name is misspelt.",
        example: "ours/styles/bse.css      # meant is styles/base.css",
        mend: "Rename it to the file of `paper` that it is to stand for, name it in a template, or delete it.",
        source: "Guidebook format, version 1, \"Files\": a theme is a folder of the guidebook.",
    },
    run: Run::WithTheme,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries, files};

    const BOOK: &str = "title: Our shop\nlimits: eu-853\ntheme: ours\n";

    #[test]
    fn names_that_nothing_asks_for() {
        entries(
            vec![
                ("guidebook.yaml", Entry::File(BOOK.into())),
                ("ours/styles/bse.css", Entry::File(b"a{}".to_vec())),
                ("ours/template/home.html", Entry::File(b"x".to_vec())),
                ("ours/templates/hom.html", Entry::File(b"x".to_vec())),
                ("ours/words/de.ftl", Entry::File(b"home = Start\n".to_vec())),
                ("ours/assets/logo.png", Entry::File(vec![0])),
                ("ours/words/en.ftl", Entry::File(b"home = Start\nguids = Guides\n".to_vec())),
            ],
            &[
                "ours/styles/bse.css:1:1 advice[theme-part-unused] no page uses this style",
                "ours/template/home.html:1:1 advice[theme-part-unused] nothing uses this file of the theme",
                "ours/templates/hom.html:1:1 advice[theme-part-unused] no page uses this template",
                "ours/words/de.ftl:1:1 advice[theme-part-unused] this guidebook has no page in `de`",
                "ours/assets/logo.png:1:1 advice[theme-part-unused] no template names this asset",
                "ours/words/en.ftl:2:1 advice[theme-part-unused] no template asks for the word `guids`",
            ],
        );
    }

    #[test]
    fn parts_that_are_used() {
        files(&[
            ("guidebook.yaml", "title: Our shop\nlimits: eu-853\nlanguage: en-GB\ntheme: ours\n"),
            ("ours/README.md", "Ours.\n"),
            ("ours/words/en-GB.ftl", "home = Start\nhello = Hello\n"),
            ("ours/templates/hello.html", "{% component hello() %}{{ \"hello\" | word }}{% endcomponent hello %}"),
            (
                "ours/templates/free-page.html",
                "{% extends \"base.html\" %}{% block main %}{{ <hello /> }}{{ text_html | safe }}{% endblock %}",
            ),
        ]);
    }
}
