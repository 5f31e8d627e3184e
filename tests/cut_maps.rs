//! Cut maps: the graph of a species with its figures, the drawing, and the page of each species of the demo, on which every piece
//! stands with the numbers of `tally`.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the demo from disk"
)]

#[path = "pages/html.rs"]
#[allow(dead_code, reason = "each file of tests uses a part of it")]
mod html;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use seamwise::figures::Kind;
use seamwise::figures::answer;
use seamwise::figures::cut_map::{CutMap, MapPiece};
use seamwise::figures::cut_map_drawing::{CutMapDrawing, MapWords};
use seamwise::figures::numbers::{NO_BREAK, percent};
use seamwise::figures::units::Scale;
use seamwise::model::words::Use;
use seamwise::site::{Site, Theme};
use seamwise::source::{Entry, Files};

const HEAD: &str = "revision: { number: 1, date: 2026-03-02, author: lead, approved-by: head, review-by: 2027-03-02 }\n";

/// A side into loin and trim, the loin into eye, bone and trim, and another way to cut the loin.
fn map() -> CutMap {
    let side = format!(
        "title: Side\nspecies: pork\nhouse-cut: true\n{HEAD}start: {{ piece: side, weight: 40 kg }}\nsteps:\n  - {{ name: A, take: side, do: Cut., give: {{ half: 100 % }}, loss: 0 }}\n  - {{ name: B, take: half, do: Cut., give: {{ loin: 25 %, trim: {{ share: rest, use: lean-trim }} }}, loss: 0 }}\n"
    );
    let loin = format!(
        "title: Loin\nspecies: pork\nhouse-cut: true\n{HEAD}start: {{ piece: loin, weight: 10 kg }}\nsteps:\n  - {{ name: A, take: loin, do: Cut., give: {{ eye: {{ share: 60–80 %, typical: 70 %, use: retail }}, bone: {{ share: 10 %, use: bone }}, trim: {{ share: rest, use: lean-trim }} }}, loss: 0 }}\n"
    );
    let other = format!(
        "title: Chops\nspecies: pork\n{HEAD}start: {{ piece: loin, weight: 10 kg }}\nsteps:\n  - {{ name: A, take: loin, do: Saw., give: {{ chops: {{ share: rest, use: retail }} }}, loss: 1 % }}\n"
    );
    let texts =
        [("guidebook.yaml", "title: G\n".to_owned()), ("pork/a-side.yaml", side), ("pork/b-loin.yaml", loin), ("pork/c-chops.yaml", other)];
    let files = texts.into_iter().map(|(path, text)| (path.to_owned(), Entry::File(text.into_bytes())));
    let inspection = seamwise::inspect(files.collect());
    let (book, analysis) = (inspection.verdict.book(), inspection.verdict.analysis());
    CutMap::of(book, analysis, 0..3, Scale(book.units()))
}

fn piece<'a>(map: &'a CutMap, id: &str) -> &'a MapPiece {
    map.pieces.iter().find(|piece| piece.id == id).unwrap()
}

#[test]
fn every_piece_is_one_node_with_its_guides() {
    let map = map();
    let ids: Vec<&str> = map.pieces.iter().map(|piece| piece.id.as_str()).collect();
    assert_eq!(ids, ["side", "half", "loin", "trim", "eye", "bone", "chops"]);
    let trim = piece(&map, "trim");
    assert_eq!((trim.given_by.as_slice(), trim.kind), (&[0, 1][..], Some(Kind::Final(Use::LeanTrim))));
    let loin = piece(&map, "loin");
    assert_eq!((loin.given_by.as_slice(), loin.cut_by.as_slice(), loin.kind), (&[0][..], &[1, 2][..], Some(Kind::Final(Use::ForCutting))));
    let half = piece(&map, "half");
    assert_eq!((half.inside.as_slice(), half.kind), (&[(0, 2)][..], Some(Kind::Onward)));
    assert_eq!(
        (piece(&map, "side").kind, map.guides.iter().map(|guide| guide.house_cut).collect::<Vec<_>>()),
        (None, vec![true, true, false])
    );
}

/// Reckoned by hand: the loin is 25 % of the side, the eye 70 % of the loin; trim is 75 % and 20 % of 25 %.
#[test]
fn a_share_is_of_the_first_start() {
    let map = map();
    let told = |id: &str| {
        let (whole, figure) = piece(&map, id).figure.clone().unwrap();
        (map.wholes[whole].name.clone(), figure.of_start.typical, figure.weight.typical)
    };
    let side = |share: &str, weight: &str| ("Side".to_owned(), share.to_owned(), weight.to_owned());
    assert_eq!(told("side"), side("100.0", "40.00"));
    assert_eq!(told("half"), side("100.0", "40.00"));
    assert_eq!(told("loin"), side("25.0", "10.00"));
    assert_eq!(told("eye"), side("17.5", "7.00"));
    assert_eq!(told("trim"), side("80.0", "32.00"));
    // The other way to cut the loin is in no chain: its share is of the loin.
    assert_eq!(told("chops"), ("Loin".to_owned(), "99.0".to_owned(), "9.90".to_owned()));
    assert_eq!(map.wholes.iter().map(|whole| whole.is_first).collect::<Vec<_>>(), [true, false]);
    let loss = map.wholes[1].loss.clone().unwrap();
    assert_eq!(loss.of_start.range, format!("1{NO_BREAK}%"));
}

fn words() -> MapWords {
    let kinds = Kind::of_a_whole().map(|kind| (kind, kind.id().replace('-', " ")));
    MapWords { kinds: kinds.collect(), house_cut: "the house cut".to_owned(), on_the_way: "on the way:".to_owned() }
}

#[test]
fn the_drawing_of_a_small_map() {
    let map = map();
    let drawing = CutMapDrawing::of(&map, &words());
    assert_eq!(drawing.crossings(), 0);
    insta::assert_snapshot!(drawing.svg().replace("><", ">\n<"));
}

/// A guidebook in which every one of many guides gives the same tubs stays as wide as a phone.
#[test]
fn many_guides_that_give_one_tub_stay_readable() {
    let mut files = Files::new();
    files.insert("guidebook.yaml".to_owned(), Entry::File(b"title: G\n".to_vec()));
    for number in 0..40 {
        let text = format!(
            "title: Part {number}\nspecies: pork\nhouse-cut: true\n{HEAD}start: {{ piece: part-{number}, weight: 4 kg }}\nsteps:\n  - {{ name: A, take: part-{number}, do: Cut., give: {{ meat-{number}: {{ share: 80 %, use: retail }}, bone: {{ share: 10 %, use: bone }}, trim: {{ share: rest, use: lean-trim }} }}, loss: 0 }}\n"
        );
        files.insert(format!("pork/part-{number:02}.yaml"), Entry::File(text.into_bytes()));
    }
    let inspection = seamwise::inspect(files);
    let (book, analysis) = (inspection.verdict.book(), inspection.verdict.analysis());
    let map = CutMap::of(book, analysis, 0..40, Scale(book.units()));
    let drawing = CutMapDrawing::of(&map, &words());
    assert_eq!((drawing.order().len(), drawing.guides().count()), (map.pieces.len(), 40));
    let svg = drawing.svg();
    let left = |part: &str| part.split("x=\"").nth(1).unwrap().split('"').next().unwrap().parse::<f64>().unwrap();
    assert!(svg.split("<text ").skip(1).all(|text| left(text) < 328.0 - 120.0), "words have room");
    // Shares of a tub that several starts lead to are of none of them.
    assert!(piece(&map, "trim").figure.is_none() && piece(&map, "meat-7").figure.is_some());
}

fn demo() -> Files {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures");
    let entries = walkdir::WalkDir::new(&folder).into_iter().map(|entry| entry.unwrap().into_path()).filter(|path| path.is_file());
    let name = |path: &Path| path.strip_prefix(&folder).unwrap().to_str().unwrap().replace('\\', "/");
    entries.map(|path| (name(&path), Entry::File(fs::read(path).unwrap()))).collect()
}

/// The words of a drawing, lines joined again.
fn words_of(svg: &str) -> String {
    svg.split("<text ").skip(1).map(|text| text.split('>').nth(1).unwrap().split('<').next().unwrap()).collect::<Vec<_>>().join(" ")
}

#[test]
fn every_piece_of_the_demo_stands_on_its_map_with_the_numbers_of_tally() {
    let inspection = seamwise::inspect(demo());
    let checked = inspection.verdict.checked().unwrap();
    let (book, analysis) = (checked.value(), checked.analysis());
    let site = Site::new(checked, &Theme::paper()).unwrap();
    let chains: Vec<_> = analysis.chains.iter().collect();
    let told: serde_json::Value = serde_json::from_str(&answer::json(&[], &chains)).unwrap();
    let species: BTreeSet<&str> = book.procedures.iter().map(|procedure| procedure.id.split('/').next().unwrap()).collect();
    let mut compared = 0;
    for species in species {
        let svg = String::from_utf8(site.render(&format!("drawings/cuts/{species}.svg")).unwrap()).unwrap();
        let drawn = words_of(&svg);
        let page = String::from_utf8(site.render(&format!("cuts/{species}.html")).unwrap()).unwrap();
        let page = html::Page::read(&page).unwrap();
        let rows: Vec<(String, Vec<String>)> = page
            .all("tr")
            .filter_map(|(at, _)| {
                let (_, name) = page.inside(at, "th").next()?;
                Some((name.text.clone(), page.inside(at, "td").map(|(_, cell)| cell.text.clone()).collect()))
            })
            .collect();
        let own =
            book.procedures.iter().zip(&analysis.procedures).filter(|(procedure, _)| procedure.id.starts_with(&format!("{species}/")));
        let ids: BTreeSet<&str> = own.flat_map(|(_, own)| own.network.pieces.iter().map(|piece| piece.id.as_str())).collect();
        for id in ids {
            let name = seamwise::figures::yield_table::capitalised(&book.piece_name(id));
            assert!(drawn.contains(&name), "{species}: {name} is not drawn");
            let row: Vec<_> = rows.iter().filter(|(own, _)| *own == name).collect();
            assert_eq!(row.len(), 1, "{species}: {name} stands once");
            let cells = &row[0].1;
            let Some(known) = told["chains"]
                .as_array()
                .unwrap()
                .iter()
                .flat_map(|chain| chain["pieces"].as_array().unwrap())
                .find(|piece| piece["piece"] == id)
            else {
                continue;
            };
            let share = |key: &str| known[key].as_f64().unwrap();
            assert_eq!((cells[3].clone(), cells[5].clone()), (percent(share("low")), percent(share("high"))), "{name}");
            // A printed whole adds up, so a typical share may be rounded the other way.
            assert!((cells[4].parse::<f64>().unwrap() - share("typical") * 100.0).abs() < 0.1, "{name}: {}", cells[4]);
            assert_eq!(
                known["use"].as_str().is_some_and(|word| cells[6].contains(&word.replace('-', " "))),
                known["use"].is_string(),
                "{name}"
            );
            // What stands inside a guide is named there without numbers.
            if known["use"].is_string() || cells[6].starts_with("for cutting") {
                assert!(drawn.contains(&format!("{}{NO_BREAK}% {}{NO_BREAK}kg", cells[4], cells[1])), "{name}: {} {}", cells[4], cells[1]);
            }
            compared += 1;
        }
    }
    assert!(compared > 100, "{compared} pieces");
}
