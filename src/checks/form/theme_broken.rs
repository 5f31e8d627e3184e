//! A theme with which no page can be made.

use crate::checks::{Check, CheckInfo, Group, Run};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "theme-broken",
        group: Group::Form,
        level: Level::Fault,
        what: "A template, a style or a file of words of the guidebook's own theme is not written as it should be, or asks for something that is not there.",
        why: "A page would be missing, or half of it.",
        example: "{{ guide.titel }}      # refused: a guide has a title\n{{ guide.title }}",
        mend: "Correct the line. What each template gets, which components and words there are, and how styles and assets are used stands in `themes/README.md` of the project.",
        source: "Guidebook format, version 1, \"Files\": a theme is a folder of the guidebook.",
    },
    run: Run::WithTheme,
};

#[cfg(test)]
mod tests {
    use crate::checks::testing::{Entry, entries, theme};

    #[test]
    fn blocks_that_have_no_end() {
        let open = "{% extends \"base.html\" %}{% block main %}\n{% if page.state %}x\n{% endblock %}";
        theme(&[("templates/home.html", open)], &["templates/home.html:2:1 fault[theme-broken] this `{% if … %}` has no end"]);
        let open = "{% extends \"base.html\" %}\n{% block main %}x";
        theme(&[("templates/home.html", open)], &["templates/home.html:2:1 fault[theme-broken] this `{% block … %}` has no end"]);
    }

    #[test]
    fn an_unknown_field() {
        let text = "{% extends \"base.html\" %}{% block main %}\n{{ nme }}{% endblock %}";
        theme(
            &[("templates/species.html", text)],
            &["templates/species.html:2:4 fault[theme-broken] `nme` is nothing that this template gets"],
        );
        let word = "{{ \"pieces\" | word(m=1) }}";
        theme(
            &[("templates/home.html", word)],
            &["templates/home.html:1:15 fault[theme-broken] the word `pieces` cannot be formed: it asks for `$n`"],
        );
    }

    /// What only templates of `paper` miss is told at the file that no longer has it.
    #[test]
    fn components_that_are_gone() {
        let parts = "{% component guide_row(row: map) %}{% endcomponent guide_row %}";
        theme(
            &[("templates/parts.html", parts)],
            &["templates/parts.html:1:1 fault[theme-broken] other templates call `cautions`, `control`, "],
        );
    }

    #[test]
    fn an_unknown_component_filter_and_word() {
        let text = "{{ <guide_rov row /> }}\n{{ name | uper }}";
        theme(
            &[("templates/species.html", text)],
            &[
                "templates/species.html:1:4 fault[theme-broken] no component is called `guide_rov`",
                "templates/species.html:2:11 fault[theme-broken] no filter is called `uper`",
            ],
        );
        let text = "{{ \"guidess\" | word }}";
        theme(
            &[("templates/species.html", text)],
            &["templates/species.html:1:4 fault[theme-broken] the word `guidess` is missing in words/en.ftl"],
        );
    }

    #[test]
    fn a_style_and_words() {
        let style = "a { b: c }\nh1::before { content: \"</\" }";
        theme(&[("styles/own.css", style)], &["styles/own.css:2:24 fault[theme-broken] `</`"]);
        theme(&[("words/en.ftl", "home = { $n } homes")], &["words/en.ftl:1:1 fault[theme-broken] the word `home` asks for `$n`"]);
    }

    #[test]
    fn text_that_is_none() {
        let book = "title: Our shop\nlimits: eu-853\ntheme: ours\n";
        entries(
            vec![("guidebook.yaml", Entry::File(book.into())), ("ours/words/en.ftl", Entry::File(b"home = Caf\xe9 cuts\n".to_vec()))],
            &["ours/words/en.ftl:1:11 fault[not-utf-8] 0xE9"],
        );
    }

    #[test]
    fn a_sound_theme_with_a_binary_asset() {
        let home = "{% extends \"base.html\" %}{% block main %}<img src=\"{{ page.assets[\"logo.png\"] }}\" alt=\"\">{% endblock %}";
        theme(&[("assets/logo.png", "\u{0}\u{1}"), ("templates/home.html", home)], &[]);
    }
}
