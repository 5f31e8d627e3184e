//! Cold clocks: the drawing and the table hold the times that the analysis computes, and those that were worked by hand.

use std::fmt::Write as _;

use seamwise::analysis::clock::ClockKind;

use super::html::Page;
use super::made::{DEMO, Pages, book, inspected, pages_of, read};

/// Minutes of a loin, trained and apprentice, step by step: own judgement, from the trade reference of this project,
/// whose totals were worked apart: 22 and 45 minutes, 25 for the apprentice by the end of step 4.
const LOIN: [(u32, u32); 7] = [(2, 5), (2, 4), (5, 12), (3, 4), (5, 10), (2, 5), (3, 5)];

/// A loin that is cut in a chain of steps, everything going back after the steps named; six at once or one.
fn loin(head: &str, back: &[usize], at_once: u32, unknown: Option<usize>) -> Pages {
    let mut steps = String::new();
    for (at, (trained, apprentice)) in (1..).zip(LOIN) {
        let taken = if at == 1 { "pork-loin".to_owned() } else { format!("pork-part-{}", at - 1) };
        let purpose = if at == LOIN.len() { ", use: retail" } else { "" };
        let minutes = if unknown == Some(at) { String::new() } else { format!("    minutes: {trained}–{apprentice}\n") };
        let back = if back.contains(&at) { "    back-to-cold: all\n" } else { "" };
        let _ = write!(
            steps,
            "  - name: Step {at}\n    take: {taken}\n    do: Cut.\n{minutes}    at-once: {at_once}\n{back}    give: {{ pork-side-{at}: {{ share: 10–20 %, use: retail }}, pork-part-{at}: {{ share: rest{purpose} }} }}\n    loss: 0\n"
        );
    }
    let guide = format!(
        "title: Loin\nspecies: pork\nrevision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}\nstart: {{ piece: pork-loin, weight: 7–8 kg, temperature: 2–4 °C }}\nsteps:\n{steps}"
    );
    pages_of(&book(&[("guidebook.yaml", &format!("title: T\n{head}")), ("pork/loin.yaml", &guide)]))
}

const SHOP: &str = "limits: eu-853\nstricter:\n  - { limit: time-out, at-most: 30 minutes, watch: me, every: piece, if-missed: Back. }\n";

/// The cells of each row of the table, the name first.
fn rows(page: &Page) -> Vec<Vec<String>> {
    let (body, _) = page.all("tbody").next().unwrap();
    let cells = |row: usize| {
        let all = page
            .elements
            .iter()
            .enumerate()
            .filter(|(at, element)| page.is_inside(*at, row) && ["th", "td"].contains(&element.name.as_str()));
        all.map(|(_, cell)| cell.text.clone()).collect()
    };
    page.inside(body, "tr").map(|(row, _)| cells(row)).collect()
}

fn row(page: &Page, name: &str) -> Vec<String> {
    rows(page).into_iter().find(|row| row[0] == name).unwrap_or_else(|| panic!("no row {name}"))
}

/// A drawing read as elements.
fn drawing(pages: &Pages, path: &str) -> Page {
    let svg = std::str::from_utf8(pages.get(path).unwrap_or_else(|| panic!("no drawing {path}"))).unwrap();
    Page::read(&format!("<!doctype html>{}", svg.trim_end())).unwrap()
}

/// Widths of the bars of a class in the order of the lanes, without the sign of the legend below them.
fn widths(page: &Page, class: &str) -> Vec<f64> {
    let mut all: Vec<f64> = page
        .with_class(class)
        .filter(|(_, rect)| rect.name == "rect")
        .map(|(_, rect)| rect.get("width").unwrap().parse().unwrap())
        .collect();
    all.pop();
    all
}

/// The numbers at the ends of the bars, in their order.
fn ends(page: &Page) -> Vec<String> {
    page.with_class("minutes").map(|(_, text)| text.text.clone()).collect()
}

fn cells(name: &str, rest: [&str; 6]) -> Vec<String> {
    [name].iter().chain(&rest).map(|cell| (*cell).to_owned()).collect()
}

#[test]
fn a_loin_without_going_back_takes_22_to_45_minutes() {
    let pages = loin("limits: eu-853\n", &[], 1, None);
    let page = read(&pages, "cold/pork/loin.html");
    assert_eq!(row(&page, "Pork part 7"), cells("Pork part 7", ["1", "7", "22", "45", "none", "none"]));
    assert!(page.all("main").next().unwrap().1.text.contains("no rule sets a time"));
    let drawn = drawing(&pages, "drawings/cold/pork/loin.svg");
    assert_eq!(ends(&drawn), ["22", "45"]);
    let (solid, open) = (widths(&drawn, "solid")[0], widths(&drawn, "open")[0]);
    assert!((solid / open - 22.0 / 45.0).abs() < 1e-3, "{solid} of {open}");
    assert_eq!(drawn.with_class("limit").count(), 0);
}

#[test]
fn a_loin_that_goes_back_after_step_4_has_five_minutes_left() {
    let pages = loin(SHOP, &[4], 1, None);
    let page = read(&pages, "cold/pork/loin.html");
    assert_eq!(row(&page, "Pork loin"), cells("Pork loin", ["1", "4", "12", "25", "30", "5"]));
    assert_eq!(row(&page, "Pork part 7"), cells("Pork part 7", ["5", "7", "10", "20", "30", "10"]));
    let drawn = drawing(&pages, "drawings/cold/pork/loin.svg");
    assert_eq!(ends(&drawn), ["12", "25", "10", "20"]);
    // The line of the limit lies where 30 minutes lie on the scale of the bars.
    let x = |element: &super::html::Element, name: &str| element.get(name).unwrap().parse::<f64>().unwrap();
    let (_, line) = drawn.with_class("limit").last().unwrap();
    let (_, bar) = drawn.with_class("open").find(|(_, rect)| rect.name == "rect").unwrap();
    let at = (x(line, "x1") - x(bar, "x")) / x(bar, "width") * 25.0;
    assert!((at - 30.0).abs() < 0.05, "the limit is drawn at {at} minutes");
    let text = &drawn.elements[0].text;
    for words in ["30\u{a0}min, limit of the shop", "back to the cold", "Steps 1 to 4", "Steps 5 to 7"] {
        assert!(text.contains(words), "{words}: {text}");
    }
}

/// Six loins pulled together by one trained cutter: the last piece is out for 132 minutes.
#[test]
fn six_loins_pulled_together_stretch_to_132_minutes() {
    let pages = loin("limits: eu-853\n", &[], 6, None);
    let page = read(&pages, "cold/pork/loin.html");
    assert_eq!(row(&page, "Pork part 7"), cells("Pork part 7", ["1", "7", "132", "270", "none", "none"]));
    let drawn = drawing(&pages, "drawings/cold/pork/loin.svg");
    assert_eq!(ends(&drawn), ["132", "270"]);
    assert!(drawn.elements[0].text.contains("Step 1: 6 one after another."), "{}", drawn.elements[0].text);
    // Five dotted lines part six pieces in each of seven steps.
    assert_eq!(drawn.with_class("piece").count(), 35);
}

/// Every row of the demo is a stretch of the clock, with its times and what they leave; none is missing.
#[test]
fn the_tables_of_the_demo_hold_what_the_clock_computes() {
    let inspection = inspected("procedures");
    let (guidebook, analysis) = (inspection.verdict.book(), inspection.verdict.analysis());
    let mut seen = 0;
    for (procedure, analysis) in guidebook.procedures.iter().zip(&analysis.procedures) {
        let clock = analysis.cold.as_ref().unwrap();
        let page = read(&DEMO, &format!("cold/{}.html", procedure.id));
        let rows = rows(&page);
        let timed = clock.timed();
        assert_eq!(rows.len(), timed.len(), "{}", procedure.id);
        for (row, timed) in rows.iter().zip(&timed) {
            let number = |at: usize| row[at].replace('\u{2212}', "-").parse::<f64>().unwrap();
            assert_eq!(
                [number(1), number(2)],
                [timed.stretch.from as f64 + 1.0, timed.stretch.to as f64 + 1.0],
                "{}: {row:?}",
                procedure.id
            );
            let (low, high) = (timed.alone.low.number(), timed.alone.high.unwrap().number());
            assert_eq!([number(3), number(4), number(5), number(6)], [low, high, 30.0, 30.0 - high], "{}: {row:?}", procedure.id);
            seen += 1;
        }
        let most = rows.iter().map(|row| row[4].parse::<f64>().unwrap()).fold(0.0, f64::max);
        assert_eq!(most, clock.longest(ClockKind::Single).unwrap().number(), "{}", procedure.id);
        // The drawing tells each stretch once, with the same numbers.
        let drawn = drawing(&DEMO, &format!("drawings/cold/{}.svg", procedure.id));
        let ends = ends(&drawn);
        let mut told: Vec<(&str, &str)> = ends.chunks(2).map(|pair| (pair[0].as_str(), pair[1].as_str())).collect();
        let mut expected: Vec<(&str, &str, &str, &str)> =
            rows.iter().map(|row| (row[1].as_str(), row[2].as_str(), row[3].as_str(), row[4].as_str())).collect();
        expected.sort_unstable();
        expected.dedup();
        let mut expected: Vec<(&str, &str)> = expected.into_iter().map(|(_, _, low, high)| (low, high)).collect();
        told.sort_unstable();
        expected.sort_unstable();
        assert_eq!(told, expected, "{}", procedure.id);
    }
    assert!(seen > 80, "only {seen} rows were looked at");
}

#[test]
fn a_step_without_minutes_leaves_the_longest_time_unknown() {
    let pages = loin("limits: eu-853\n", &[4], 1, Some(6));
    assert!(!pages.contains_key("drawings/cold/pork/loin.svg"));
    let page = read(&pages, "cold/pork/loin.html");
    assert_eq!(row(&page, "Pork loin"), cells("Pork loin", ["1", "4", "12", "25", "none", "none"]));
    assert_eq!(row(&page, "Pork part 7"), cells("Pork part 7", ["5", "7", "8", "not known", "none", "none"]));
    let text = &page.all("main").next().unwrap().1.text;
    assert!(text.contains("so no longest time is known: step 6"), "{text}");
    let guide = read(&pages, "guides/pork/loin.html");
    assert!(guide.all("a").any(|(_, link)| link.get("href") == Some("../../cold/pork/loin.html")));
}

/// Where time adds up, the second stretch begins with what the first took: 25 and 20 minutes are 45 of 120.
#[test]
fn time_that_adds_up_is_drawn_and_counted_from_the_first_minute() {
    let pages = loin("limits: australia-retail\n", &[4], 1, None);
    let page = read(&pages, "cold/pork/loin.html");
    let last = ["Pork part 7", "5", "7", "10", "20", "22", "45", "120", "75"];
    assert_eq!(row(&page, "Pork part 7"), last);
    assert!(page.all("main").next().unwrap().1.text.contains("All stretches out of the cold add up."));
    let drawn = drawing(&pages, "drawings/cold/pork/loin.svg");
    assert_eq!(ends(&drawn), ["12", "25", "22", "45"]);
    let (before, open) = (widths(&drawn, "before"), widths(&drawn, "open"));
    assert!((before[1] / open[1] - 25.0 / 20.0).abs() < 1e-2, "{before:?} {open:?}");
    assert!(drawn.elements[0].text.contains("120\u{a0}min, limit of the profile"));
    // 240 minutes are more than three times 45: the line would press all bars together, so words tell of it.
    let drawn = drawing(&loin("limits: us-food-code\n", &[], 1, None), "drawings/cold/pork/loin.svg");
    assert_eq!(drawn.with_class("limit").count(), 0);
    assert!(drawn.elements[0].text.contains("limit 240\u{a0}min, off this drawing"));
}
