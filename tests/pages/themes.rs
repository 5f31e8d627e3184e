//! Themes: what is wrong with one is told with file, line and column; a theme of one's own needs only what it changes.

use std::collections::BTreeMap;

use seamwise::site::{Site, Theme, ThemeError};

use super::made::inspected;

fn with(file: &str, text: &str) -> Result<String, ThemeError> {
    let inspection = inspected("procedures");
    let theme = Theme::over_paper("own", BTreeMap::from([(file.to_owned(), text.as_bytes().to_vec())]));
    let site = Site::new(inspection.verdict.checked().unwrap(), &theme)?;
    site.render("index.html").map(|bytes| String::from_utf8(bytes).unwrap())
}

#[test]
fn a_template_of_ones_own_stands_in_place_of_the_other() {
    assert_eq!(
        with("templates/home.html", "{{ page.site }}: {{ \"guides\" | word }}").unwrap(),
        "Cutting guides of the Fennick Yard: Guides"
    );
}

#[test]
fn a_mistake_in_a_template_is_told_with_its_place() {
    for (text, place, message) in [
        ("\n  {{ page.tittle }}", (2, 6), "tittle"),
        ("{% if %}", (1, 7), ""),
        ("a\nb {{ <nothing /> }}", (2, 5), "nothing"),
        ("{{ 1 | shout }}", (1, 7), "shout"),
    ] {
        let error = with("templates/home.html", text).unwrap_err();
        let (file, line, _) = error.place.clone().unwrap_or_else(|| panic!("{error}"));
        assert_eq!((file.as_str(), line), ("templates/home.html", place.0), "{error}");
        assert!(error.to_string().contains(message), "{error}");
    }
}

#[test]
fn a_missing_word_is_told_when_the_theme_is_read() {
    let error = with("templates/home.html", "\n{{ \"greetings\" | word }}").unwrap_err();
    assert_eq!(error.to_string(), "templates/home.html:2:4: the word `greetings` is missing in words/en.ftl; add a line `greetings = …`");
}

/// A file of words needs only those that it changes; the others are those of `paper`.
#[test]
fn words_of_ones_own_stand_over_the_others() {
    let home = with("words/en.ftl", "guides = Cutting sheets\n").unwrap();
    assert!(home.contains(">Cutting sheets</h2>") && home.contains(">What changed</h2>"));
}

#[test]
fn a_style_that_would_leave_its_element_is_refused() {
    let error = with("styles/base.css", "a::before{content:\"</style>\"}").unwrap_err();
    assert!(error.to_string().contains("`</`"), "{error}");
}

/// Only what `markdown` made safe, and the style of the theme, goes into a page unescaped.
#[test]
fn templates_pass_only_safe_fields_unescaped() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("themes/paper/templates");
    let mut seen = 0;
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let text = std::fs::read_to_string(entry.path()).unwrap();
        for (at, _) in text.match_indices("| safe") {
            let field = text[..at].trim_end().rsplit([' ', '{']).next().unwrap();
            let safe = field.ends_with("_html") || field == "page.style";
            assert!(safe, "{}: `{field} | safe`", entry.path().display());
            seen += 1;
        }
    }
    assert!(seen > 8);
}
