//! What holds on pages beside guides and tables: pieces, files with figures, free pages, checks, source files, guides for
//! machines, addresses.

use std::path::Path;
use std::process::Command;

use serde_json::Value;

use super::html::Page;
use super::made::{DEMO, Pages, demo_with, inspected};

fn page(pages: &Pages, path: &str) -> Page {
    let bytes = pages.get(path).unwrap_or_else(|| panic!("no page {path}"));
    Page::read(std::str::from_utf8(bytes).unwrap()).unwrap_or_else(|wrong| panic!("{path}: {wrong}"))
}

fn json(pages: &Pages, path: &str) -> Value {
    serde_json::from_slice(pages.get(path).unwrap_or_else(|| panic!("no file {path}"))).unwrap()
}

/// Every piece stands on the page of its species, and its name among all names leads there; so do links that were made
/// when all pieces stood on one page.
#[test]
fn every_piece_has_its_place_among_those_of_its_species() {
    let inspection = inspected("procedures");
    let (book, analysis) = (inspection.verdict.book(), inspection.verdict.analysis());
    let all = page(&DEMO, "pieces/index.html");
    let given = analysis.procedures.iter().zip(&book.procedures).flat_map(|(analysis, procedure)| {
        let species = procedure.id.split('/').next().unwrap();
        analysis.network.pieces.iter().map(move |piece| (species.to_owned(), piece.id.clone()))
    });
    let listed = book.cuts.iter().map(|(piece, cut)| (cut.species.clone(), piece.clone()));
    let mut seen = 0;
    for (species, piece) in given.chain(listed) {
        let anchor = format!("piece-{piece}");
        let own = page(&DEMO, &format!("pieces/species/{species}.html"));
        let (at, entry) = own.elements.iter().enumerate().find(|(_, element)| element.get("id") == Some(&anchor)).unwrap();
        let name = book.piece_name(&piece);
        assert!(entry.text.to_lowercase().contains(&name.to_lowercase()), "{piece}: {}", entry.text);
        assert!(own.inside(at, "a").count() > 0, "{piece} leads to no guide");
        let (at, _) = all.elements.iter().enumerate().find(|(_, element)| element.get("id") == Some(&anchor)).unwrap();
        let (_, link) = all.inside(at, "a").next().unwrap();
        assert_eq!(link.get("href"), Some(format!("species/{species}.html#{anchor}").as_str()));
        seen += 1;
    }
    assert!(seen > 60, "only {seen} pieces were looked at");
    assert!(all.elements.iter().any(|element| element.get("id") == Some("species-pork")));
}

/// The cut list of pork names tenderloin `fillet` in the guidebook's own region, and its guide makes it in step 6.
#[test]
fn a_piece_says_its_names_and_which_step_makes_it() {
    let pork = page(&DEMO, "pieces/species/pork.html");
    let (at, entry) = pork.elements.iter().enumerate().find(|(_, element)| element.get("id") == Some("piece-pork-tenderloin")).unwrap();
    for words in ["fillet (UK), psoas", "IMPS\u{a0}415", "0.2–0.6\u{a0}kg, 2 to an animal", "retail"] {
        assert!(entry.text.contains(words), "{words}: {}", entry.text);
    }
    let (_, step) = pork.inside(at, "a").find(|(_, link)| link.text == "step 6").unwrap();
    assert!(step.get("href").unwrap().starts_with("../../guides/pork/loin-boneless.html#step-"));
    let (at, _) = pork.elements.iter().enumerate().find(|(_, element)| element.get("id") == Some("piece-pork-loin-bone-in")).unwrap();
    let leads: Vec<&str> = pork.inside(at, "a").filter_map(|(_, link)| link.get("href")).collect();
    assert!(leads.contains(&"../../guides/pork/loin-boneless.html") && leads.contains(&"../../guides/pork/side-primals.html"), "{leads:?}");
    let all = page(&DEMO, "pieces/index.html");
    let names: Vec<&str> = all.all("li").filter(|(_, item)| item.text.starts_with("Fillet")).map(|(_, item)| item.text.as_str()).collect();
    assert!(names.contains(&"FilletUK, here called Tenderloin, Pork"), "{names:?}");
}

/// A thousand names are too many for a phone: each species lists its own.
#[test]
fn names_beyond_a_page_are_left_to_the_species() {
    let mut cuts = "{before}".to_owned();
    for at in 0..700 {
        cuts.push_str(&format!("lamb-odd-{at}: {{ name: Odd {at} }}\n"));
    }
    let pages = demo_with(&[("cuts/lamb.yaml", &cuts)]);
    let all = page(&pages, "pieces/index.html");
    assert_eq!(all.with_class("names").count(), 0);
    assert!(all.all("a").any(|(_, link)| link.get("href") == Some("species/lamb.html") && link.text.ends_with("718 pieces")));
    assert!(page(&pages, "pieces/species/lamb.html").elements.iter().any(|element| element.get("id") == Some("piece-lamb-odd-699")));
}

fn tally(format: &str) -> Vec<u8> {
    let command = Command::new(env!("CARGO_BIN_EXE_seamwise"))
        .args(["tally", "procedures", "--format", format])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output();
    command.unwrap().stdout
}

/// RFC 4180 (IETF, 2005), section 2: lines end with CRLF, every line has the same number of fields.
#[test]
fn files_beside_tables_hold_what_tally_prints() {
    let whole: Value = serde_json::from_slice(&tally("json")).unwrap();
    let printed = String::from_utf8(tally("csv")).unwrap();
    let mut seen = 0;
    for path in DEMO.keys().filter(|path| path.starts_with("tables/") && path.ends_with(".json")) {
        let file = json(&DEMO, path);
        for kind in ["procedures", "chains"] {
            for entry in file[kind].as_array().unwrap() {
                assert!(whole[kind].as_array().unwrap().contains(entry), "{path}: {kind}");
                seen += 1;
            }
        }
        let table = std::str::from_utf8(&DEMO[&path.replace(".json", ".csv")]).unwrap();
        assert!(table.ends_with("\r\n") && table.matches('\n').count() == table.matches("\r\n").count(), "{path}");
        let mut lines = table.split("\r\n");
        assert_eq!(lines.next(), printed.split("\r\n").next());
        for line in lines {
            assert!(printed.contains(line), "{path}: {line}");
        }
        let page = page(&DEMO, &path.replace(".json", ".html"));
        let links: Vec<&str> =
            page.all("a").filter(|(_, link)| link.get("download").is_some()).map(|(_, link)| link.text.as_str()).collect();
        assert_eq!(links.len(), 2, "{path}");
        assert!(links[0].starts_with("CSV, ") && links[1].starts_with("JSON, "), "{links:?}");
    }
    assert!(seen > 20, "only {seen} entries were compared");
    assert_eq!(json(&DEMO, "tables/species/pork.json")["procedures"].as_array().unwrap().len(), 2);
}

#[test]
fn every_check_is_explained_under_its_anchor() {
    let manual = page(&DEMO, "checks/index.html");
    for check in seamwise::checks::all() {
        let (at, entry) = manual.elements.iter().enumerate().find(|(_, element)| element.get("id") == Some(check.info.id)).unwrap();
        let text = entry.text.replace('\u{a0}', " ");
        for part in [check.info.what, check.info.why, check.info.mend, check.info.source] {
            let plain = part.trim().replace("\n\n", "").replace('`', "");
            assert!(text.replace('`', "").contains(&plain), "{}: {plain}", check.info.id);
        }
        let (_, example) = manual.inside(at, "pre").next().unwrap();
        assert_eq!(example.text, check.info.example.trim_matches('\n'));
    }
}

#[test]
fn the_source_file_is_shown_whole() {
    let shown = page(&DEMO, "source/pork/loin-boneless.html");
    let lines: Vec<String> =
        shown.with_class("code").flat_map(|(code, _)| shown.inside(code, "li").map(|(_, line)| line.text.clone())).collect();
    let written = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures/pork/loin-boneless.yaml")).unwrap();
    assert_eq!(lines, written.lines().collect::<Vec<_>>());
    for class in ["c", "k", "n"] {
        assert!(shown.with_class(class).count() > 5, "{class}");
    }
    let size = DEMO["source/pork/loin-boneless.html"].len();
    assert!(size < 3 * written.len() + 12_000, "{size} bytes for {}", written.len());
    let guide = page(&DEMO, "guides/pork/loin-boneless.html");
    assert!(guide.all("a").any(|(_, link)| link.get("href") == Some("../../source/pork/loin-boneless.html")));
}

/// schema.org HowTo: a step is a HowToStep with position, name, text and url; durations are ISO 8601.
#[test]
fn a_guide_for_machines_says_what_the_guide_says() {
    let guide = page(&DEMO, "guides/pork/loin-boneless.html");
    let (_, link) = guide.all("link").find(|(_, link)| link.get("rel") == Some("alternate")).unwrap();
    assert_eq!((link.get("type"), link.get("href")), (Some("application/ld+json"), Some("loin-boneless.jsonld")));
    for (path, _) in DEMO.iter().filter(|(path, _)| path.ends_with(".jsonld")) {
        let data = json(&DEMO, path);
        assert_eq!((data["@context"].as_str(), data["@type"].as_str()), (Some("https://schema.org"), Some("HowTo")));
        let page = page(&DEMO, &path.replace(".jsonld", ".html"));
        let steps = data["step"].as_array().unwrap();
        assert_eq!(steps.len(), page.with_class("step").count(), "{path}");
        for (step, (_, shown)) in steps.iter().zip(page.with_class("step")) {
            let url = step["url"].as_str().unwrap();
            assert_eq!(url.split_once('#').unwrap().1, shown.get("id").unwrap(), "{path}");
            assert!(!step["text"].as_str().unwrap().is_empty());
        }
    }
    let data = json(&DEMO, "guides/pork/loin-boneless.jsonld");
    assert_eq!(data["totalTime"], "PT1H30M", "set-up 15, work 45, cleaning 30 minutes at the longest");
    assert_eq!((data["version"].as_str(), data["creativeWorkStatus"].as_str()), (Some("5"), Some("Published")));
    let saw = data["step"].as_array().unwrap().iter().find(|step| step["url"].as_str().unwrap().ends_with("#step-ribs-sawn")).unwrap();
    let text = saw["text"].as_str().unwrap();
    let (warning, act) = (text.find("WARNING: A running blade").unwrap(), text.rfind("WARNING").unwrap());
    assert!(warning <= act && text[act..].len() > 100, "warnings stand before the act: {text}");
}

const WITH_ADDRESS: &[(&str, &str)] = &[("guidebook.yaml", "{before}\nsite: https://guides.example.org/cuts/\n")];

/// Sitemaps protocol 0.9 (sitemaps.org, 2008): absolute locations, dates as in ISO 8601.
#[test]
fn addresses_stand_on_pages_only_where_the_guidebook_states_one() {
    assert!(!DEMO.contains_key("sitemap.xml"));
    let pages = demo_with(WITH_ADDRESS);
    let list = std::str::from_utf8(&pages["sitemap.xml"]).unwrap();
    let screens: Vec<&String> = pages.keys().filter(|path| path.ends_with(".html")).collect();
    assert_eq!(list.matches("<loc>").count(), screens.len());
    for path in screens {
        let address = format!("https://guides.example.org/cuts/{path}");
        assert!(list.contains(&format!("<loc>{address}</loc>")), "{address}");
        let read = page(&pages, path);
        let (_, canonical) = read.all("link").find(|(_, link)| link.get("rel") == Some("canonical")).unwrap();
        assert_eq!(canonical.get("href"), Some(address.as_str()));
        if let Some(own) = DEMO.get(path) {
            assert!(!std::str::from_utf8(own).unwrap().contains("canonical"), "{path}");
        }
    }
    assert!(list.contains("loin-boneless.html</loc><lastmod>2026-09-14</lastmod>"));
    let data = json(&pages, "guides/pork/loin-boneless.jsonld");
    assert_eq!(data["url"], "https://guides.example.org/cuts/guides/pork/loin-boneless.html");
    assert_eq!(data["image"][0]["url"], "https://guides.example.org/cuts/pictures/pork-loin-lines.svg");
}

const PAGE: &str = "# Rules *of* the room\n\nSee [the loin](../pork/loin-boneless.yaml#ribs-sawn), [again](pork/loin-boneless), \
[the shop](about-the-shop.md), [the pork pieces](../cuts/pork.yaml), [one](../cuts/pork.yaml#pork-tenderloin), \
[a drawing](../pictures/pork-loin-lines.svg), [up](#anything) and [a course](../courses/first.yaml).\n\n\
![the loin](../pictures/pork-loin-lines.svg)\n\n### Deep\n\ntext\n\n#### Deeper\n\n### Deep again\n";

#[test]
fn links_of_free_pages_lead_where_inspection_says() {
    let course = "title: First\nlessons:\n  - { name: Loins, procedures: [pork/loin-boneless] }\n";
    let pages = demo_with(&[("pages/room.md", PAGE), ("courses/first.yaml", course)]);
    let read = page(&pages, "pages/room.html");
    let (main, _) = read.all("main").next().unwrap();
    let links: Vec<&str> = read.inside(main, "a").filter_map(|(_, link)| link.get("href")).collect();
    assert_eq!(
        links,
        [
            "../guides/pork/loin-boneless.html#step-ribs-sawn",
            "../guides/pork/loin-boneless.html",
            "about-the-shop.html",
            "../pieces/species/pork.html",
            "../pieces/species/pork.html#piece-pork-tenderloin",
            "../pictures/pork-loin-lines.svg",
            "#main",
            "../courses/first.html",
        ]
    );
    let (_, picture) = read.inside(main, "img").next().unwrap();
    assert_eq!(picture.get("src"), Some("../pictures/pork-loin-lines.svg"));
    let headings: Vec<(&str, &str)> = read
        .elements
        .iter()
        .filter(|element| ["h1", "h2", "h3", "h4"].contains(&element.name.as_str()))
        .map(|element| (element.name.as_str(), element.text.as_str()))
        .collect();
    assert_eq!(headings, [("h1", "Rules of the room"), ("h2", "Deep"), ("h3", "Deeper"), ("h2", "Deep again")]);
    let home = page(&pages, "index.html");
    for (href, name) in [
        ("pages/room.html", "Rules of the room"),
        ("pages/about-the-shop.html", "About the shop"),
        ("courses/first.html", "First"),
        ("checks/index.html", "What is checked"),
        ("pieces/index.html", "Pieces and their names"),
    ] {
        assert!(home.all("a").any(|(_, link)| link.get("href") == Some(href) && link.text == name), "{href}");
    }
}

/// The course of the demonstration: lessons in their order, each with its guides, what lies ready, what comes off before
/// a saw runs, and the way to its questions.
#[test]
fn a_course_leads_through_its_lessons() {
    let course = page(&DEMO, "courses/first-six-months.html");
    let lessons: Vec<usize> = course.with_class("lesson").map(|(at, _)| at).collect();
    assert_eq!(lessons.len(), 6);
    let hrefs = |lesson: usize| course.inside(lesson, "a").filter_map(|(_, link)| link.get("href")).collect::<Vec<_>>();
    assert!(hrefs(lessons[0]).contains(&"../guides/chicken/eight-pieces.html#ask"));
    let side = hrefs(lessons[2]);
    let at = |href: &str| side.iter().position(|known| *known == href).unwrap_or_else(|| panic!("{href}: {side:?}"));
    assert!(at("../guides/pork/side-primals.html") < at("../guides/pork/loin-boneless.html"));
    assert!(side.contains(&"../bench/pork/loin-boneless.html"));
    let text = |lesson: usize| course.elements[lesson].text.as_str();
    assert!(text(lessons[2]).contains("Take off") && text(lessons[2]).contains("band saw"), "{}", text(lessons[2]));
    assert!(!text(lessons[0]).contains("Take off"));
    // Portions need the sides, which stand in the same lesson.
    assert!(!text(lessons[3]).contains("Know first"));
    let alone =
        "title: Raw\nlessons:\n  - { name: One, procedures: [salmon/portions-raw] }\n  - { name: Two, procedures: [salmon/sides] }\n";
    let pages = demo_with(&[("courses/raw.yaml", alone)]);
    let raw = page(&pages, "courses/raw.html");
    let (first, _) = raw.with_class("lesson").next().unwrap();
    assert!(raw.elements[first].text.contains("Know first"), "{}", raw.elements[first].text);
}
