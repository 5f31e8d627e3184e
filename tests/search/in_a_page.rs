//! The search box as a page of the theme carries it.

use std::collections::BTreeMap;

use seamwise::site::{Site, Theme};

use crate::common::inspect;

const HOME: &str = r#"{% extends "base.html" %}{% block main %}<h1>Home</h1>
{% set search = {"index": "assets/search-index.js", "root": "", "list": "names.html", "species": [{"id": "wild boar", "name": "Wild <boar>"}], "kinds": ["piece", "anatomy", "guide", "step", "course", "page"]} %}
{{ <search_box search /> }}{% endblock %}"#;

#[test]
fn the_box_has_all_its_words() {
    let inspection = inspect("procedures");
    let checked = inspection.verdict.checked().expect("the demo is sound");
    let theme = Theme::over_paper("with-search", BTreeMap::from([("templates/home.html".to_owned(), HOME.as_bytes().to_vec())]));
    let site = Site::new(checked, &theme).unwrap();
    let page = String::from_utf8(site.render("index.html").unwrap()).unwrap();
    for part in [
        r#"data-index="assets/search-index.js" data-root="""#,
        r#"data-many="[n] places found.""#,
        r#"data-none="Nothing found for “[query]”."#,
        r#"data-instead="No “[typed]” here, so this is “[found]”.""#,
        r#"type="search" autocomplete="off" autocapitalize="none" autocorrect="off" spellcheck="false" enterkeyhint="search""#,
        r#"<button type="button" value="wild boar">Wild &lt;boar&gt;</button>"#,
        r#"<button type="button" value="course">Courses</button>"#,
        r#"<p role="status"></p>"#,
        r#"<noscript><p>Search needs script. <a href="names.html">"#,
    ] {
        assert!(page.contains(part), "{part}\n{page}");
    }
}
