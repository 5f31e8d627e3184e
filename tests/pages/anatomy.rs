//! Anatomy pages: every part of a species once, with its source, and steps and parts linked both ways.

use std::collections::BTreeSet;

use seamwise::analysis::anatomy::{Anatomy, named_parts};
use seamwise::model::words::{PartKind, Verified};

use super::html::Page;
use super::made::{DEMO, book, inspected, pages_of, read, with_id};

const SPECIES: [&str; 6] = ["beef", "chicken", "lamb", "pork", "salmon", "venison"];

fn page(species: &str) -> Page {
    read(&DEMO, &format!("anatomy/{species}.html"))
}

fn flat(text: &str) -> String {
    text.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn only_species_of_the_guidebook_have_a_page() {
    let pages: Vec<&str> = DEMO.keys().filter_map(|path| path.strip_prefix("anatomy/")?.strip_suffix(".html")).collect();
    assert_eq!(pages, SPECIES);
}

/// Each part stands once, in words, with what its facts rest on.
#[test]
fn every_part_stands_once_with_what_it_rests_on() {
    let inspection = inspected("procedures");
    let mut seen = 0;
    for species in SPECIES {
        let page = page(species);
        let anatomy = Anatomy::of(inspection.verdict.book(), species).unwrap();
        for part in anatomy.parts() {
            let (_, card) = with_id(&page, &format!("part-{}", part.id));
            let told = anatomy.told(part.id).unwrap();
            let text = flat(&card.text);
            for words in told.also.iter().chain(&told.sources).chain([&told.does, &told.lies]) {
                assert!(text.contains(&flat(words)), "{species}/{}: {words}: {text}", part.id);
            }
            let rests_on = match told.verified.unwrap() {
                Verified::Read => "The passage was read.",
                Verified::Adopted => "Read in a code that adopts it.",
                Verified::Secondary => "Second hand",
                Verified::Memory => "From memory",
                Verified::Practice => "Common practice.",
            };
            assert!(text.contains(rests_on), "{species}/{}: {rests_on}: {text}", part.id);
            if part.kind == Some(PartKind::Gland) {
                assert!(text.contains("Take it out whole. It goes with the inedible."), "{species}/{}", part.id);
            }
            seen += 1;
        }
        let cards = page.elements.iter().filter_map(|element| element.get("id")).filter(|id| id.starts_with("part-")).count();
        assert_eq!(cards, anatomy.parts().count(), "{species}");
    }
    assert!(seen > 250, "only {seen} parts were looked at");
}

/// Counts with their spread, as sources print them: University of Guelph, animal biosciences, meat laboratory notes by
/// H. J. Swatland, laboratory 8.1 (undated page), vertebrae by region; each thoracic vertebra carries a pair of ribs.
#[test]
fn counts_are_those_of_the_sources_and_say_that_they_differ() {
    for (species, part, count) in [
        ("pork", "thoracic-vertebrae", "How many13–17 not the same in every animal"),
        ("pork", "ribs", "How many13–17 on each side not the same in every animal"),
        ("pork", "neck-bones", "How many7"),
        ("beef", "thoracic-vertebrae", "How many13"),
        ("beef", "lumbar-vertebrae", "How many6"),
        ("lamb", "ribs", "How many13–14 on each side not the same in every animal"),
    ] {
        let page = page(species);
        let text = flat(&with_id(&page, &format!("part-{part}")).1.text);
        assert!(text.contains(count), "{species}/{part}: {count}: {text}");
        assert_eq!(text.contains("not the same in every animal"), count.contains('–'), "{species}/{part}");
    }
}

/// From each step at the bench to the parts that it looks for, and from each part back to that step. A guide, which must
/// arrive at once, leads to the page of all parts from each step that names some.
#[test]
fn steps_and_parts_are_linked_both_ways() {
    let inspection = inspected("procedures");
    let guidebook = inspection.verdict.book();
    let (mut there, mut back) = (0, 0);
    let mut named: BTreeSet<(String, String)> = BTreeSet::new();
    for procedure in &guidebook.procedures {
        let species = procedure.species.value().unwrap();
        let anatomy = Anatomy::of(guidebook, species).unwrap();
        let guide = read(&DEMO, &format!("guides/{}.html", procedure.id));
        let (bench, parts) = (read(&DEMO, &format!("bench/{}.html", procedure.id)), page(species));
        for step in &procedure.steps {
            let (at, _) = with_id(&guide, &format!("step-{}", step.id));
            let all = format!("../../anatomy/{species}.html");
            let leads = guide.inside(at, "a").filter(|(_, link)| link.get("href") == Some(all.as_str())).count();
            assert_eq!(leads, usize::from(!step.anatomy.is_empty()), "{}, {}", procedure.id, step.id);
            let (at, _) = with_id(&bench, &format!("step-{}", step.id));
            let start = format!("../../anatomy/{species}.html#");
            let linked: Vec<&str> = bench.inside(at, "a").filter_map(|(_, link)| link.get("href")?.strip_prefix(start.as_str())).collect();
            let wanted: Vec<String> = step.anatomy.iter().map(|part| format!("part-{}", anatomy.id_of(&part.value).unwrap())).collect();
            assert_eq!(linked, wanted, "{}, {}", procedure.id, step.id);
            there += linked.len();
            for part in named_parts(step) {
                let (card, _) = with_id(&parts, &format!("part-{}", anatomy.id_of(&part.value).unwrap()));
                let href = format!("../guides/{}.html#step-{}", procedure.id, step.id);
                assert!(parts.inside(card, "a").any(|(_, link)| link.get("href") == Some(&href)), "{}: {}", step.id, part.value);
                named.insert((format!("{species}/part-{}", anatomy.id_of(&part.value).unwrap()), href));
            }
        }
    }
    // No part leads to a step that does not name it.
    for species in SPECIES {
        let parts = page(species);
        for (card, element) in parts.all("li").filter(|(_, item)| item.get("id").is_some_and(|id| id.starts_with("part-"))) {
            for (_, link) in parts.inside(card, "a") {
                let Some(href) = link.get("href").filter(|href| href.contains("#step-")) else { continue };
                assert!(named.contains(&(format!("{species}/{}", element.get("id").unwrap()), href.to_owned())), "{species}: {href}");
                back += 1;
            }
        }
    }
    assert!(there > 150 && back >= there, "{there} links there, {back} back");
}

/// A part that reaches into several regions is told in the first and linked from the others.
#[test]
fn parts_stand_in_the_order_of_the_animal() {
    let page = page("pork");
    let regions: Vec<&str> = page.all("h2").map(|(_, heading)| heading.text.as_str()).collect();
    assert_eq!(regions, ["Head", "Neck", "Shoulder", "Loin", "Belly", "Leg", "Foot", "Tail", "Inside the body"]);
    let inside = |region: &str, anchor: &str| {
        let (at, _) = page.elements.iter().enumerate().find(|(_, element)| element.get("aria-labelledby") == Some(region)).unwrap();
        page.inside(at, "a").any(|(_, link)| link.get("href") == Some(anchor))
    };
    // The tenderloin lies in the loin; its head reaches into the leg.
    assert!(inside("region-leg", "#part-tenderloin-muscle"));
    let (at, _) = page.elements.iter().enumerate().find(|(_, element)| element.get("aria-labelledby") == Some("region-loin")).unwrap();
    assert!(page.is_inside(with_id(&page, "part-tenderloin-muscle").0, at));
}

/// Risk material leads to the rule that makes it so; pigs and birds have none here.
#[test]
fn risk_material_leads_to_its_rule() {
    let beef = page("beef");
    let (card, element) = with_id(&beef, "part-spinal-cord");
    assert!(flat(&element.text).contains("Keep it apart. over 12 months"), "{}", element.text);
    assert!(beef.inside(card, "a").any(|(_, link)| link.get("href") == Some("../limits/index.html#limit-risk-material-12-months")));
    let limits = read(&DEMO, "limits/index.html");
    let (card, _) = with_id(&limits, "limit-risk-material-12-months");
    assert!(limits.inside(card, "a").any(|(_, link)| link.get("href") == Some("../anatomy/beef.html#part-spinal-cord")));
    for species in ["pork", "chicken"] {
        assert!(!page(species).all("main").next().unwrap().1.text.contains("Keep it apart"), "{species}");
    }
}

/// The pages of a species and of its pieces lead to its anatomy.
#[test]
fn species_and_pieces_lead_to_the_anatomy() {
    for species in SPECIES {
        let leads = |path: &str, href: &str| read(&DEMO, path).all("a").any(|(_, link)| link.get("href") == Some(href));
        assert!(leads(&format!("species/{species}.html"), &format!("../anatomy/{species}.html")), "{species}");
        assert!(leads(&format!("pieces/species/{species}.html"), &format!("../../anatomy/{species}.html")), "{species}");
    }
}

/// What a guidebook adds or says otherwise stands there as its own.
#[test]
fn a_guidebook_adds_parts_of_its_own() {
    let guide = "title: Loin
species: pork
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-loin, weight: 7–8 kg, temperature: 2–4 °C }
steps:
  - name: Trim
    take: pork-loin
    do: Trim.
    minutes: 1–2
    anatomy: [kernel, ribs]
    give: { pork-eye: { share: rest, use: retail }, pork-glands: { share: 1–2 %, use: inedible, holds: [mystery-lump] } }
    loss: 0
";
    let own = "ribs: { name: Ribs, kind: bone, count: 14, sources: [the shop's own count] }
mystery-lump: { name: Kernel, also: [lump], kind: gland, regions: [flap], lies: In the fat. }
";
    let inspection = book(&[("guidebook.yaml", "title: T\nlimits: eu-853\n"), ("anatomy/pork.yaml", own), ("pork/loin.yaml", guide)]);
    let pages = pages_of(&inspection);
    let page = read(&pages, "anatomy/pork.html");
    let ribs = flat(&with_id(&page, "part-ribs").1.text);
    assert!(ribs.contains("How many14 on each side") && ribs.contains("the shop's own count"), "{ribs}");
    let (at, lump) = with_id(&page, "part-mystery-lump");
    assert!(flat(&lump.text).contains("Entry of this guidebook.") && lump.text.contains("In the fat."), "{}", lump.text);
    assert!(page.inside(at, "a").any(|(_, link)| link.get("href") == Some("../guides/pork/loin.html#step-trim")));
    assert!(page.all("h2").any(|(_, heading)| heading.text == "Flap"));
    let step = read(&pages, "bench/pork/loin.html");
    assert!(step.all("a").any(|(_, link)| link.get("href") == Some("../../anatomy/pork.html#part-mystery-lump")));
}
