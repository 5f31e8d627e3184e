//! The pages of the demo guidebook, and of one with odd cases, made whole and looked through.
//! With `SEAMWISE_PAGES` set to a folder, the demo is written there to be looked at.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads guidebooks from disk"
)]

#[path = "pages/anatomy.rs"]
mod anatomy;
#[path = "pages/before_act.rs"]
mod before_act;
#[path = "pages/cold.rs"]
mod cold;
#[path = "pages/guides.rs"]
mod guides;
#[path = "pages/hazards.rs"]
mod hazards;
#[path = "pages/html.rs"]
mod html;
#[path = "pages/limits.rs"]
mod limits;
#[path = "pages/made.rs"]
mod made;
#[path = "pages/offline.rs"]
mod offline;
#[path = "pages/other_pages.rs"]
mod other_pages;
#[path = "pages/sheets.rs"]
mod sheets;
#[path = "pages/structure.rs"]
mod structure;
#[path = "pages/themes.rs"]
mod themes;
#[path = "pages/work.rs"]
mod work;

use std::fs;
use std::path::PathBuf;

use made::{DEMO, ODD, inspected, pages};
use rayon::prelude::*;
use seamwise::site::{Site, Theme};

/// The paths, the mark of a script's content left out: it changes with every word of the script.
fn list(pages: &made::Pages) -> String {
    let unmarked = |path: &String| match path.split('.').collect::<Vec<_>>().as_slice() {
        [stem, mark, ending] if path.starts_with("assets/") && mark.len() == 10 => format!("{stem}.<mark>.{ending}"),
        _ => path.clone(),
    };
    pages.keys().map(unmarked).collect::<Vec<_>>().join("\n")
}

#[test]
fn the_pages_of_the_demo() {
    insta::assert_snapshot!(list(&DEMO));
}

#[test]
fn the_pages_of_odd_cases() {
    insta::assert_snapshot!(list(&ODD));
}

#[test]
fn the_same_guidebook_gives_the_same_bytes_in_any_order_and_from_many_threads() {
    let inspection = inspected("procedures");
    let site = Site::new(inspection.verdict.checked().unwrap(), &Theme::paper()).unwrap();
    let mut paths = site.pages();
    paths.reverse();
    let again: made::Pages = paths.into_par_iter().map(|path| (path.clone(), site.render(&path).unwrap())).collect();
    assert!(again == *DEMO);
    assert!(site.render("guides/none.html").unwrap_err().to_string().contains("`guides/none.html`"));
}

/// The first flight of a connection: 14,600 bytes (RFC 6928, IETF, 2013).
const FIRST_FLIGHT: usize = 14_600;
/// What style and markup may add to the words of a guide, compressed: own judgement, a little over what they take.
const BESIDE_WORDS: usize = 6_250;

fn compressed(text: &str) -> usize {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    std::io::Write::write_all(&mut encoder, text.as_bytes()).unwrap();
    encoder.finish().unwrap().len()
}

/// Every guide of the demonstration arrives whole, with the style of what is seen first, in the first flight.
#[test]
fn every_guide_of_the_demo_fits_the_first_flight_as_a_whole() {
    let mut seen = 0;
    for (path, bytes) in DEMO.iter().filter(|(path, _)| path.starts_with("guides/") && path.ends_with(".html")) {
        let whole = compressed(std::str::from_utf8(bytes).unwrap());
        assert!(whole <= FIRST_FLIGHT, "{path}: {whole} bytes, {} too many", whole - FIRST_FLIGHT);
        seen += 1;
    }
    assert!(seen >= 8, "only {seen} guides were weighed");
}

/// Head, style, what can hurt and the first step stand in the first flight, whatever the length of the guide; and the
/// theme adds no more to the words of the author than it may.
#[test]
fn the_first_view_of_each_guide_fits_the_first_flight() {
    for (path, bytes) in DEMO.iter().filter(|(path, _)| path.starts_with("guides/") && path.ends_with(".html")) {
        let page = std::str::from_utf8(bytes).unwrap();
        let second = page.match_indices("<li class=step ").nth(1).map_or(page.len(), |(at, _)| at);
        let first_view = compressed(&page[..second]);
        assert!(first_view <= FIRST_FLIGHT, "{path}: {first_view} bytes up to the end of step 1");
        let body = page.split_once("<body>").unwrap().1;
        let words: String = body.split('<').map(|part| part.split_once('>').map_or(part, |(_, text)| text)).collect::<Vec<_>>().join("\n");
        let (whole, words) = (compressed(page), compressed(&words));
        assert!(whole <= words + BESIDE_WORDS, "{path}: {whole} bytes for {words} bytes of words");
    }
}

#[test]
fn written_to_be_looked_at() {
    let Ok(target) = std::env::var("SEAMWISE_PAGES") else { return };
    let book = std::env::var("SEAMWISE_BOOK").unwrap_or_else(|_| "procedures".to_owned());
    for (path, bytes) in pages(&book) {
        let file = PathBuf::from(&target).join(&path);
        fs::create_dir_all(file.parent().unwrap()).unwrap();
        fs::write(file, bytes).unwrap();
    }
}
