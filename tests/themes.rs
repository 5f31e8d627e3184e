//! Themes: a folder of the guidebook changes one file at a time, what is wrong with it is told at its line, and the second
//! built-in theme shows the same pages as the first. The reference in `themes/README.md` is held to the templates.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the demo from disk"
)]

#[path = "themes/reference.rs"]
mod reference;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::LazyLock;

use seamwise::finding::text::{self, Style};
use seamwise::site::{Site, Theme, theme_findings};
use seamwise::source::{Entry, Files};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A guidebook of this project.
fn book(folder: &str) -> Files {
    let folder = root().join(folder);
    let entries = walkdir::WalkDir::new(&folder).into_iter().map(|entry| entry.unwrap().into_path()).filter(|path| path.is_file());
    let name = |path: &PathBuf| path.strip_prefix(&folder).unwrap().to_str().unwrap().replace('\\', "/");
    entries.map(|path| (name(&path), Entry::File(fs::read(path).unwrap()))).collect()
}

static DEMO: LazyLock<Files> = LazyLock::new(|| book("procedures"));

/// A guidebook with a theme of its own that holds these files.
fn with(mut files: Files, own: &[(&str, &[u8])]) -> Files {
    let Some(Entry::File(guidebook)) = files.get_mut("guidebook.yaml") else { panic!("no guidebook") };
    guidebook.extend(b"\ntheme: ./our-theme\n");
    files.extend(own.iter().map(|(path, bytes)| (format!("our-theme/{path}"), Entry::File(bytes.to_vec()))));
    files
}

/// What is told of such a theme, as the program prints it.
fn told(own: &[(&str, &[u8])]) -> String {
    let inspection = seamwise::inspect(with(book("tests/guidebooks/tiny-sound"), own));
    let mut findings = inspection.findings.clone();
    findings.extend(inspection.verdict.checked().map_or_else(Vec::new, theme_findings));
    text::render(&findings, 0, &inspection.sources, Style { color: false, width: 100 })
}

/// All pages of the demo with a theme.
fn pages(files: Files, paths: &[&str]) -> BTreeMap<String, String> {
    let inspection = seamwise::inspect(files);
    let checked = inspection.verdict.checked().unwrap_or_else(|| panic!("{:?}", inspection.findings));
    assert_eq!(theme_findings(checked).iter().map(|finding| finding.message.clone()).collect::<Vec<_>>(), [""; 0]);
    let site = Site::new(checked, &Theme::of(checked.value())).unwrap();
    let wanted = |path: &String| paths.is_empty() || paths.iter().any(|wanted| path.starts_with(wanted));
    let made = |path: String| Some((path.clone(), String::from_utf8(site.render(&path).ok()?).ok()?));
    site.pages().into_iter().filter(wanted).filter_map(made).collect()
}

#[test]
fn one_template_one_style_one_word_one_asset() {
    let plain = pages(DEMO.clone(), &["index.html", "species/pork.html", "assets/icon."]);
    let template = "{% extends \"base.html\" %}{% block main %}<h1>{{ name }}</h1><img src=\"{{ page.assets[\"mark.svg\"] }}\" alt=\"\">{% endblock %}";
    let own = pages(
        with(
            DEMO.clone(),
            &[
                ("templates/species.html", template.as_bytes()),
                ("styles/own.css", b"h1 { letter-spacing: .1em }"),
                ("words/en.ftl", b"guides = Cutting sheets\n"),
                ("assets/mark.svg", b"<svg xmlns=\"http://www.w3.org/2000/svg\"/>"),
                ("assets/icon.svg", b"<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"M0 0\"/></svg>"),
                ("README.md", b"Ours."),
            ],
        ),
        &["index.html", "species/pork.html", "assets/"],
    );
    let home = &own["index.html"];
    assert!(home.contains(">Cutting sheets</h2>") && home.contains(">What changed</h2>") && !home.contains(">Guides</h2>"));
    assert!(home.contains("h1{letter-spacing: .1em}</style>") && !plain["index.html"].contains("letter-spacing: .1em}</style>"));
    let species = &own["species/pork.html"];
    let mark = own.keys().find(|path| path.starts_with("assets/mark.")).unwrap();
    assert!(species.contains(&format!("<h1>Pork</h1><img src=\"../{mark}\" alt=\"\">")), "{species}");
    let icon = |pages: &BTreeMap<String, String>| pages.iter().find(|(path, _)| path.starts_with("assets/icon.")).unwrap().1.clone();
    assert!(icon(&own).contains("M0 0") && icon(&own) != icon(&plain));
}

/// Every kind of mistake, as it is printed.
#[test]
fn what_is_wrong_is_told_at_its_line() {
    let home = |main: &str| format!("{{% extends \"base.html\" %}}\n{{% block main %}}\n{main}\n{{% endblock %}}\n");
    let cases: Vec<(&str, Vec<(&str, String)>)> = vec![
        ("an unknown field", vec![("templates/home.html", home("<h1>{{ page.tittle }}</h1>"))]),
        ("an unknown name", vec![("templates/home.html", home("<h1>{{ guide.title }}</h1>"))]),
        ("a block without an end", vec![("templates/home.html", home("{% if page.publisher %}\n<p>{{ page.publisher }}</p>"))]),
        ("a value without an end", vec![("templates/home.html", home("<p>{{ page.publisher </p>"))]),
        ("an unknown component", vec![("templates/home.html", home("{{ <search_bx search /> }}"))]),
        ("an unknown filter", vec![("templates/home.html", home("{{ page.title | uppper }}"))]),
        ("a missing word", vec![("templates/home.html", home("{{ \"guidess\" | word }}"))]),
        ("a word without its value", vec![("templates/home.html", home("{{ \"pieces\" | word }}"))]),
        ("an unknown template below", vec![("templates/home.html", "{% extends \"bas.html\" %}".to_owned())]),
        ("an unknown block", vec![("templates/home.html", "{% extends \"base.html\" %}{% block mian %}x{% endblock %}".to_owned())]),
        ("a component twice", vec![("templates/own.html", "{% component piece(piece: map) %}x{% endcomponent piece %}".to_owned())]),
        (
            "a component that is gone",
            vec![("templates/step.html", "{% component output(output: map) %}x{% endcomponent output %}".to_owned())],
        ),
        ("plain text as markup", vec![("templates/home.html", home("{{ page.site | safe }}"))]),
        ("a style on an element", vec![("templates/home.html", home("<p style=\"color: red\">Due</p>"))]),
        ("a style that ends itself", vec![("styles/own.css", "h1::before { content: \"</style>\" }\n".to_owned())]),
        ("a style that is not closed", vec![("styles/own.css", "h1 { color: red\np { margin: 0 }\n".to_owned())]),
        ("a style that loads", vec![("styles/own.css", "main { background: url(../assets/steel.png) }\n".to_owned())]),
        ("a style that hides cautions", vec![("styles/own.css", "@media print {\n  .caution { display: none }\n}\n".to_owned())]),
        ("words that cannot be read", vec![("words/en.ftl", "guides = Guides\nsteps { Steps }\n".to_owned())]),
        ("a word that asks for too much", vec![("words/en.ftl", "pieces = { $many } pieces\n".to_owned())]),
        ("names that nothing asks for", vec![("styles/gide.css", "a{}".to_owned()), ("words/en.ftl", "speces = Animals\n".to_owned())]),
    ];
    let mut all = String::new();
    for (what, files) in &cases {
        let own: Vec<(&str, &[u8])> = files.iter().map(|(path, text)| (*path, text.as_bytes())).collect();
        all.push_str(&format!("=== {what}\n{}\n", told(&own)));
    }
    all.push_str(&format!("=== a text that is none\n{}\n", told(&[("words/en.ftl", b"home = Caf\xe9 cuts\n")])));
    insta::assert_snapshot!(all);
}

/// The guard finds nothing on pages of `paper`, on none of the demo and none of the odd cases.
#[test]
fn pages_of_paper_keep_what_every_page_must_keep() {
    for folder in ["procedures", "tests/guidebooks/odd"] {
        let mut files = book(folder);
        let Some(Entry::File(guidebook)) = files.get_mut("guidebook.yaml") else { panic!("no guidebook") };
        guidebook.extend(b"\ntheme: as-it-is\n");
        files.insert("as-it-is/words/en.ftl".to_owned(), Entry::File(b"home = All guides\n".to_vec()));
        let inspection = seamwise::inspect(files);
        let findings = theme_findings(inspection.verdict.checked().unwrap_or_else(|| panic!("{:?}", inspection.findings)));
        assert_eq!(findings.iter().map(|finding| &finding.message).collect::<Vec<_>>(), [""; 0], "{folder}");
    }
}

/// `steel` changes looks alone: behind the head, each page is that of `paper`, names of style files left out.
#[test]
fn the_second_theme_shows_the_same_pages() {
    let inspection = seamwise::inspect(DEMO.clone());
    let checked = inspection.verdict.checked().unwrap();
    let (paper, steel) = (Theme::paper(), Theme::built_in("steel").unwrap());
    let (paper, steel) = (Site::new(checked, &paper).unwrap(), Site::new(checked, &steel).unwrap());
    let body = |site: &Site<'_>, path: &str| {
        let page = String::from_utf8(site.render(path).unwrap()).unwrap();
        let (head, body) = page.split_once("</head>").unwrap();
        let parts: Vec<&str> = body.split(".css").collect();
        let (last, linked) = parts.split_last().unwrap();
        // The mark of a style file is ten digits before its ending.
        let unmarked: Vec<&str> = linked.iter().map(|part| part.get(..part.len().saturating_sub(10)).unwrap_or(part)).collect();
        (head.to_owned(), format!("{}{last}", unmarked.concat()))
    };
    let mut seen = 0;
    // The page of what is kept names the size of all files, styles among them.
    for path in paper.pages().iter().filter(|path| path.ends_with(".html") && !path.starts_with("offline/")) {
        let ((one, same), (other, again)) = (body(&paper, path), body(&steel, path));
        assert!(one != other && other.contains("@media screen{:root{color-scheme:dark;"), "{path}");
        assert_eq!(same, again, "{path}");
        seen += 1;
    }
    assert!(seen > 40, "{seen} pages");
    let names = |site: &Site<'_>| site.pages().into_iter().filter(|path| !path.ends_with(".css")).collect::<Vec<_>>();
    assert_eq!(names(&paper), names(&steel));
}

/// A fault of the theme stops publishing and keeps the earlier site; advice does not.
#[test]
fn a_broken_theme_publishes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    for (path, entry) in with(book("tests/guidebooks/tiny-sound"), &[("styles/own.css", b"h1 { color: red }"), ("styles/gude.css", b"a{}")])
    {
        let (path, Entry::File(bytes)) = (folder.path().join("book").join(path), entry) else { panic!("no file") };
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, bytes).unwrap();
    }
    let run = |command: &str| {
        let output = Command::new(env!("CARGO_BIN_EXE_seamwise")).args([command, "book"]).current_dir(folder.path()).output().unwrap();
        (output.status.code().unwrap(), String::from_utf8(output.stdout).unwrap())
    };
    let (status, out) = run("publish");
    assert!(status == 0 && out.starts_with("no faults, 1 piece of advice"), "{out}");
    let site = folder.path().join("site/index.html");
    let before = fs::read_to_string(&site).unwrap();
    assert!(before.contains("h1{color: red}</style>"));
    fs::write(folder.path().join("book/our-theme/styles/own.css"), ".state { display: none }").unwrap();
    for command in ["inspect", "publish"] {
        let (status, out) = run(command);
        assert!(status == 1 && out.contains("fault[theme-hides-safety]") && out.contains("our-theme/styles/own.css"), "{command}: {out}");
    }
    assert_eq!(fs::read_to_string(&site).unwrap(), before);
    let off = "off: [{ check: theme-part-unused, reason: It is for later. }]\n";
    fs::write(folder.path().join("book/our-theme/styles/own.css"), "h1 { color: red }").unwrap();
    let guidebook = fs::read_to_string(folder.path().join("book/guidebook.yaml")).unwrap();
    fs::write(folder.path().join("book/guidebook.yaml"), format!("{guidebook}{off}")).unwrap();
    let (status, out) = run("inspect");
    assert!(status == 0 && out.starts_with("no faults") && !out.contains("gude.css"), "{out}");
}

const README: &str = "themes/README.md";
const MARK: &str = "<!-- From here on written by `cargo test --test themes -- --ignored rewrite`. -->\n";

#[test]
fn the_reference_names_every_template_and_every_field() {
    let text = fs::read_to_string(root().join(README)).unwrap();
    let (_, kept) = text.split_once(MARK).expect("the mark");
    let now = reference::reference();
    let changed = now.lines().filter(|line| !kept.lines().any(|known| known == *line)).take(3).collect::<Vec<_>>().join("\n");
    assert!(kept == now, "{README} lacks:\n{changed}\nto rewrite: cargo test --test themes -- --ignored rewrite");
    for name in ["Guide", "Step", "Frame", "YieldTable", "CautionGroup", "SearchBox"] {
        let known = reference::types().into_iter().find(|one| one.name == name).unwrap_or_else(|| panic!("no {name}"));
        assert!(known.fields.len() + known.with.len() >= 2, "{name}");
    }
}

/// Not a test: writes the reference.
#[test]
#[ignore = "writes a file: run it after a change of templates or of what they get, and look at the difference"]
fn rewrite() {
    let text = fs::read_to_string(root().join(README)).unwrap();
    let (head, _) = text.split_once(MARK).expect("the mark");
    fs::write(root().join(README), format!("{head}{MARK}{}", reference::reference())).unwrap();
}
