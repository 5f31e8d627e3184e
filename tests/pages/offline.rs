//! What is kept on a device: the lists hold every file with the mark of its content, parts hold what is theirs, and the
//! edition changes with the content alone. The manifest, the revisions, and the feed of changes.

use std::collections::{BTreeMap, BTreeSet};

use seamwise::site::{AT_ONCE, Site, Theme};
use serde_json::Value;
use sha2::Digest;

use super::made::{DEMO, ODD, Pages, demo_with, inspected};

/// A file of a list: its path with the mark and the size that stand beside it.
type Listed = BTreeMap<String, (String, u64)>;

/// What stands in the service worker before its code.
struct Head {
    edition: String,
    all: bool,
    shell: Listed,
    parts: BTreeMap<String, Listed>,
}

fn listed(list: &Value) -> Listed {
    let entry = |file: &Value| (file[0].as_str().unwrap().to_owned(), (file[1].as_str().unwrap().to_owned(), file[2].as_u64().unwrap()));
    list.as_array().unwrap().iter().map(entry).collect()
}

/// Reads the head by the names in it, and each list of a part from its file.
fn head(pages: &Pages) -> Head {
    let text = std::str::from_utf8(&pages["service-worker.js"]).unwrap();
    let object = text.strip_prefix("const site = ").unwrap().split_once(" };\n").unwrap().0;
    let mut json = format!("{object} }}");
    for name in ["edition", "all", "revisions", "offline", "shell", "parts", "id", "list", "bytes"] {
        json = json.replace(&format!(" {name}: "), &format!(" \"{name}\": "));
    }
    let head: Value = serde_json::from_str(&json).unwrap_or_else(|error| panic!("{error}: {json}"));
    let part = |part: &Value| {
        let path = part["list"][0].as_str().unwrap();
        let own = listed(&serde_json::from_slice(&pages[path]).unwrap());
        assert_eq!(own.values().map(|(_, bytes)| bytes).sum::<u64>(), part["bytes"].as_u64().unwrap(), "{path}");
        let list = listed(&Value::Array(vec![part["list"].clone()]));
        (part["id"].as_str().unwrap().to_owned(), own.into_iter().chain(list).collect())
    };
    Head {
        edition: head["edition"].as_str().unwrap().to_owned(),
        all: head["all"].as_bool().unwrap(),
        shell: listed(&head["shell"]),
        parts: head["parts"].as_array().unwrap().iter().map(part).collect(),
    }
}

/// The first six bytes of the SHA-256 digest, made without the code that made the lists.
fn mark(bytes: &[u8]) -> String {
    sha2::Sha256::digest(bytes).iter().take(6).map(|byte| format!("{byte:02x}")).collect()
}

#[test]
fn every_file_of_the_site_is_in_a_list_with_its_size_and_the_mark_of_its_content() {
    for (book, pages) in [("demo", &*DEMO), ("odd", &*ODD)] {
        let head = head(pages);
        let mut all: BTreeSet<&String> = BTreeSet::new();
        for (list, files) in [("shell", &head.shell)].into_iter().chain(head.parts.iter().map(|(id, files)| (id.as_str(), files))) {
            for (path, told) in files {
                let bytes = pages.get(path).unwrap_or_else(|| panic!("{book}, {list}: {path} is no page"));
                assert_eq!(*told, (mark(bytes), bytes.len() as u64), "{book}, {list}: {path}");
            }
            all.extend(files.keys());
        }
        let expected: BTreeSet<&String> = pages.keys().filter(|path| *path != "service-worker.js").collect();
        assert_eq!(all, expected, "{book}");
        assert!(head.all, "{book}");
    }
}

#[test]
fn a_part_holds_what_is_its_own() {
    let head = head(&DEMO);
    let names: Vec<&str> = head.parts.keys().map(String::as_str).collect();
    let species = names.iter().filter(|name| name.starts_with("species/")).count();
    assert_eq!(species, DEMO.keys().filter(|path| path.starts_with("species/") && path.ends_with(".html")).count());
    let courses = names.iter().filter(|name| name.starts_with("courses/")).count();
    assert_eq!((courses + species + 1, head.parts.contains_key("rest")), (names.len(), true), "{names:?}");
    let pork = &head.parts["species/pork"];
    for path in [
        "species/pork.html",
        "guides/pork/loin-boneless.html",
        "guides/pork/side-primals.jsonld",
        "tables/guides/pork/loin-boneless.csv",
        "tables/species/pork.html",
        "drawings/flow/pork/side-primals.svg",
        "source/pork/loin-boneless.html",
        "pictures/pork-rib-count.svg",
        "bench/pork/loin-boneless.html",
        "cards/pork/loin-boneless.html",
        "anatomy/pork.html",
        "cuts/pork.html",
        "offline/species/pork.json",
    ] {
        assert!(pork.contains_key(path), "{path}");
    }
    for (id, part) in head.parts.iter().filter(|(id, _)| id.starts_with("species/")) {
        let own = id.trim_start_matches("species/");
        for path in part.keys().filter(|path| path.starts_with("guides/") || path.starts_with("species/") || path.starts_with("source/")) {
            assert!(path.contains(own), "{id}: {path}");
        }
    }
    for path in [
        "index.html",
        "courses/first-six-months.html",
        "pieces/index.html",
        "offline/index.html",
        "offline/revisions.json",
        "site.webmanifest",
    ] {
        assert!(head.shell.contains_key(path), "{path}");
    }
    assert!(head.parts["rest"].contains_key("pages/about-the-shop.html") && head.parts["rest"].contains_key("checks/index.html"));
}

#[test]
fn the_edition_changes_with_the_content_and_with_nothing_else() {
    let (one, again) = (head(&DEMO), demo_with(&[]));
    assert!(again == *DEMO);
    let changed = demo_with(&[("pages/about-the-shop.md", "{before}\nOne more line.\n")]);
    let other = head(&changed);
    assert_ne!(one.edition, other.edition);
    let marks = |head: &Head| -> Listed {
        head.shell.clone().into_iter().chain(head.parts.values().flatten().map(|(a, b)| (a.clone(), b.clone()))).collect()
    };
    let (before, after) = (marks(&one), marks(&other));
    for (path, told) in &before {
        let same = DEMO.get(path) == changed.get(path);
        assert_eq!(same, after.get(path) == Some(told), "{path}");
    }
}

/// The same bytes whether the pages are handed in, as publishing does, or made for the one page.
#[test]
fn a_page_that_lists_others_is_the_same_however_it_is_asked_for() {
    let inspection = inspected("tests/guidebooks/odd");
    let site = Site::new(inspection.verdict.checked().unwrap(), &Theme::paper()).unwrap();
    let closing = site.closing();
    assert_eq!(closing.last().map(String::as_str), Some("service-worker.js"), "it lists all the others");
    for path in closing.iter().rev() {
        assert!(site.render(path).unwrap() == ODD[path], "{path}");
    }
}

/// A picture makes the site larger than is kept unasked; courses can be chosen too, with the pictures of their guides.
#[test]
fn above_the_bound_a_reader_chooses() {
    let course = "title: First term\nlessons:\n  - { name: Loins, procedures: [pork/loin-boneless] }\n";
    let large = format!("{{before}}<!--{}-->", "photograph".repeat(1_000_000));
    let pages = demo_with(&[("pictures/pork-loin-lines.svg", &large), ("courses/first.yaml", course)]);
    let head = head(&pages);
    assert!(!head.all);
    let shell: u64 = head.shell.values().map(|(_, bytes)| bytes).sum();
    assert!(shell < AT_ONCE / 20, "{shell}");
    let course = &head.parts["courses/first"];
    assert!(course.contains_key("guides/pork/loin-boneless.html") && course.contains_key("pictures/pork-loin-lines.svg"));
    assert!(!course.contains_key("guides/pork/side-primals.html") && !course.contains_key("species/pork.html"));
    let page = std::str::from_utf8(&pages["offline/index.html"]).unwrap().replace('\u{a0}', " ");
    assert!(page.contains("Keep First term") && page.contains("Keep the other pages"));
    // All files together, in megabytes as they are told.
    let whole: u64 = pages.values().map(|bytes| bytes.len() as u64).sum();
    assert!(page.contains(&format!("The whole site is {}.", whole / 1_000_000)), "{whole}: {page}");
    let small = std::str::from_utf8(&DEMO["offline/index.html"]).unwrap();
    assert!(!small.contains("Keep Pork") && small.contains("All pages are then kept"));
}

#[test]
fn the_revisions_are_those_of_the_guides() {
    let inspection = inspected("procedures");
    let file: Value = serde_json::from_slice(&DEMO["offline/revisions.json"]).unwrap();
    let guides = file["guides"].as_array().unwrap();
    let procedures = &inspection.verdict.book().procedures;
    assert_eq!(guides.len(), procedures.len());
    for (guide, procedure) in guides.iter().zip(procedures) {
        assert_eq!(guide["id"], procedure.id.as_str());
        assert_eq!(guide["number"], *procedure.revision.number.value().unwrap());
        assert_eq!(guide["state"], "in-force");
        assert!(guide["title"].as_str().unwrap().len() > 5);
    }
    let loin = guides.iter().find(|guide| guide["id"] == "pork/loin-boneless").unwrap();
    assert_eq!((&loin["date"], &loin["number"]), (&Value::from("14 September 2026"), &Value::from(5)));
    assert!(loin["change"].as_str().unwrap().starts_with("The ribs are counted"));
    assert!(file["words"]["here"].as_str().unwrap().contains("[number]"));
}

/// Web Application Manifest (W3C): name, start, scope, display and icons; every icon is a file of the site.
#[test]
fn the_manifest_names_the_site_and_its_icons() {
    let manifest: Value = serde_json::from_slice(&DEMO["site.webmanifest"]).unwrap();
    assert_eq!(manifest["name"], "Cutting guides of the Fennick Yard");
    assert_eq!(
        (&manifest["start_url"], &manifest["scope"], &manifest["display"]),
        (&"index.html".into(), &"./".into(), &"standalone".into())
    );
    let icons = manifest["icons"].as_array().unwrap();
    let sizes: Vec<&str> = icons.iter().map(|icon| icon["sizes"].as_str().unwrap()).collect();
    assert_eq!(sizes, ["any", "192x192", "512x512"]);
    for icon in icons {
        assert!(DEMO.contains_key(icon["src"].as_str().unwrap()), "{icon}");
    }
}

const ATOM: &str = "http://www.w3.org/2005/Atom";

/// RFC 4287 (IETF, 2005): a feed has exactly one id, title and updated (section 4.1.1), should have a link to itself, and
/// an author unless each entry has one; an entry has exactly one id, title and updated (section 4.1.2), and without
/// content a link `alternate`; dates are as in RFC 3339 (section 3.3). Read by an XML parser that is not ours.
#[test]
fn what_changed_is_a_feed_where_the_guidebook_states_an_address() {
    assert!(!DEMO.contains_key("changes.atom"));
    let pages = demo_with(&[("guidebook.yaml", "{before}\nsite: https://guides.example.org/cuts/\n")]);
    let text = std::str::from_utf8(&pages["changes.atom"]).unwrap();
    let document = roxmltree::Document::parse(text).unwrap();
    let feed = document.root_element();
    assert!(feed.has_tag_name((ATOM, "feed")));
    let only = |node: &roxmltree::Node<'_, '_>, name: &str| -> String {
        let found: Vec<_> = node.children().filter(|child| child.has_tag_name((ATOM, name))).collect();
        assert_eq!(found.len(), 1, "{name} of {:?}", node.tag_name());
        found[0].text().unwrap_or_else(|| found[0].first_element_child().unwrap().text().unwrap()).to_owned()
    };
    let link = |node: &roxmltree::Node<'_, '_>, relation: &str| -> String {
        let found = node.children().find(|child| child.has_tag_name((ATOM, "link")) && child.attribute("rel") == Some(relation));
        found.unwrap().attribute("href").unwrap().to_owned()
    };
    let moment = regex::Regex::new(r"^\d{4}-\d\d-\d\dT00:00:00Z$").unwrap();
    assert_eq!(only(&feed, "id"), "https://guides.example.org/cuts/index.html");
    assert_eq!(only(&feed, "title"), "Cutting guides of the Fennick Yard");
    assert_eq!(only(&feed, "author"), "Fennick Yard training shop");
    assert_eq!(link(&feed, "self"), "https://guides.example.org/cuts/changes.atom");
    let entries: Vec<_> = feed.children().filter(|child| child.has_tag_name((ATOM, "entry"))).collect();
    let times: Vec<String> = entries.iter().map(|entry| only(entry, "updated")).collect();
    assert!(entries.len() == 8 && times.iter().all(|time| moment.is_match(time)), "{times:?}");
    assert!(times.windows(2).all(|pair| pair[0] >= pair[1]) && only(&feed, "updated") == times[0], "the newest first: {times:?}");
    let ids: BTreeSet<String> = entries.iter().map(|entry| only(entry, "id")).collect();
    assert_eq!(ids.len(), entries.len());
    assert!(ids.contains("https://guides.example.org/cuts/guides/pork/loin-boneless.html#revision-5"));
    for entry in &entries {
        let page = link(entry, "alternate");
        assert!(pages.contains_key(page.strip_prefix("https://guides.example.org/cuts/").unwrap()), "{page}");
        assert!(only(entry, "title").contains("revision") && !only(entry, "summary").is_empty() && !only(entry, "author").is_empty());
    }
    let home = std::str::from_utf8(&pages["index.html"]).unwrap();
    assert!(home.contains("<link rel=\"alternate\" type=\"application/atom+xml\" href=\"changes.atom\">"));
    assert!(!std::str::from_utf8(&pages["pieces/index.html"]).unwrap().contains("atom"));
}
