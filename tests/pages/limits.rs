//! The page of limits: every figure of every profile as the reference data has it, with its source, and nothing else.
//!
//! That the reference data holds what was read in the rules is the matter of `tests/outside_limits.rs`.

use std::collections::BTreeSet;

use seamwise::figures::units::other_scale;
use seamwise::model::builtin::Builtin;
use seamwise::model::builtin::limits::Limit;
use seamwise::model::words::{Force, Product, Stage, Verified};

use super::html::Page;
use super::made::{DEMO, Pages, book, inspected, pages_of, read, with_id};

const CHICKEN: &str = "title: Legs
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }
steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–3
    tools: [boning-knife]
    wear: [mesh-gauntlet]
    cautions: [protect-holding-hand, blade-away-from-body]
    give: { chicken-legs: { share: 31–35 %, pieces: 2, use: retail }, chicken-body: { share: rest, use: retail } }
    loss: 0–0.3 %
";

/// The pages of a small guidebook under a profile, with more lines in its head.
fn under(profile: &str, more: &str) -> Pages {
    let head = format!("title: T\nlimits: {profile}\n{more}");
    pages_of(&book(&[("guidebook.yaml", &head), ("chicken/legs.yaml", CHICKEN)]))
}

/// The text as it is read: no-break spaces are spaces, a minus sign is a hyphen.
fn flat(text: &str) -> String {
    text.replace('\u{a0}', " ").replace('\u{2212}', "-").split_whitespace().collect::<Vec<_>>().join(" ")
}

fn limits(pages: &Pages) -> Page {
    read(pages, "limits/index.html")
}

/// All that an entry holds in words and figures.
fn facts(limit: &Limit) -> Vec<String> {
    let figures = [&limit.at_most, &limit.at_least, &limit.above].into_iter().flatten().map(|figure| figure.printed.clone());
    let time = limit.duration.iter().map(|time| time.printed.clone());
    let age = limit.age.iter().map(ToString::to_string);
    let source = &limit.citation;
    let source = [
        Some(&source.title),
        source.section.as_ref(),
        source.publisher.as_ref(),
        source.edition.as_ref(),
        source.year.as_ref(),
        source.read_in.as_ref(),
    ];
    let words = limit.printed_twin.iter().chain(limit.note.iter()).cloned().chain([limit.text.clone()]);
    figures.chain(time).chain(age).chain(words).chain(source.into_iter().flatten().cloned()).collect()
}

fn numbers(text: &str) -> BTreeSet<String> {
    text.split(|c: char| !c.is_ascii_digit() && c != '.' && c != ',')
        .map(|number| number.trim_matches(['.', ',']).to_owned())
        .filter(|number| !number.is_empty())
        .collect()
}

/// Every limit of every profile stands on its page, with all that the reference data says of it; and no number stands
/// there that the data does not hold, but the figure in the other unit, which is worked out from it.
#[test]
fn each_limit_is_shown_as_the_reference_data_has_it() {
    let mut seen = 0;
    for (id, profile) in &Builtin::get().profiles {
        let pages = under(id, "");
        let page = limits(&pages);
        for limit in &profile.limits {
            let (_, card) = with_id(&page, &format!("limit-{}", limit.id));
            let text = flat(&card.text);
            for fact in facts(limit) {
                assert!(text.contains(&flat(&fact)), "{id}/{}: `{fact}` is not in: {text}", limit.id);
            }
            let force = match limit.force {
                Force::Law => "Law.",
                Force::Guidance => "Guidance of an authority.",
                Force::Standard => "Voluntary standard.",
                Force::Repealed => "Repealed: shown for reference, never checked.",
            };
            let verified = match limit.verified {
                Verified::Read => "The passage was read.",
                Verified::Adopted => "Read in a code that adopts it.",
                Verified::Secondary => "Second hand",
                Verified::Memory => "From memory",
                Verified::Practice => "Common practice.",
            };
            assert!(text.contains(force) && text.contains(verified), "{id}/{}: {force} {verified}: {text}", limit.id);
            let figure = limit.at_most.as_ref().or(limit.at_least.as_ref()).and_then(|figure| figure.temperature);
            let other = figure.filter(|_| limit.printed_twin.is_none()).map(|figure| flat(&other_scale(figure)));
            assert!(other.as_ref().is_none_or(|other| text.contains(&format!("({other}, worked out)"))), "{id}/{}: {text}", limit.id);
            let known = numbers(&facts(limit).iter().chain(&other).map(|fact| flat(fact)).collect::<Vec<_>>().join(" "));
            let shown = numbers(&text);
            assert!(shown.is_subset(&known), "{id}/{}: {:?}", limit.id, shown.difference(&known).collect::<Vec<_>>());
            seen += 1;
        }
        let cards = page.elements.iter().filter_map(|element| element.get("id")).filter(|id| id.starts_with("limit-")).count();
        assert_eq!(cards, profile.limits.len(), "{id}");
    }
    assert_eq!(seen, 89);
}

/// For each class of product the highest figures at a glance are those that hold, each leading to its source; where the
/// profile has none, the page says that it is silent and shows no other figure.
#[test]
fn what_holds_for_a_product_is_told_at_a_glance() {
    let stages = [Stage::Hold, Stage::Receiving, Stage::Room, Stage::TimeOut];
    let (mut figures, mut silent) = (0, 0);
    for (id, profile) in &Builtin::get().profiles {
        let page = limits(&under(id, ""));
        for product in Product::ALL {
            let (card, _) = with_id(&page, &format!("product-{}", product.word()));
            let cells: Vec<(usize, String)> = page.inside(card, "dd").map(|(at, cell)| (at, flat(&cell.text))).collect();
            assert_eq!(cells.len(), stages.len(), "{id}: {}", product.word());
            for (stage, (at, text)) in stages.iter().zip(&cells) {
                let holds = profile.limits.iter().filter(|limit| {
                    limit.stage == *stage && limit.force != Force::Repealed && !limit.only_when_asked && limit.covers(Some(*product), "")
                });
                let (numbers, words): (Vec<&Limit>, Vec<&Limit>) =
                    holds.partition(|limit| limit.at_most.is_some() || limit.duration.is_some());
                let holds = if numbers.is_empty() { words } else { numbers };
                let linked: Vec<&str> = page.inside(*at, "a").filter_map(|(_, link)| link.get("href")).collect();
                assert_eq!(linked, holds.iter().map(|limit| format!("#limit-{}", limit.id)).collect::<Vec<_>>(), "{id}");
                for limit in &holds {
                    let figure = limit.at_most.as_ref().map(|figure| &figure.printed).or(limit.duration.as_ref().map(|time| &time.printed));
                    assert!(text.contains(figure.map_or("in words", String::as_str)), "{id}/{}: {text}", limit.id);
                    figures += 1;
                }
                if holds.is_empty() {
                    assert_eq!(text, "The profile is silent.", "{id}: {} {}", product.word(), stage.word());
                    silent += 1;
                }
            }
        }
    }
    assert!(figures > 60 && silent > 50, "{figures} figures, {silent} silent cells");
}

/// Hold figures at a glance, read off the page and held against the rules themselves: FDA Food Code 3-501.16(A)(2);
/// Regulation (EC) 853/2004, Annex III, sections I, II and V, as restated by the Food Safety Authority of Ireland; Food
/// Hygiene (Wales) Regulations 2006, Schedule 4; CFIA, Manual of Procedures, 4.2.1; Standard 3.2.2 in NSW guidance.
#[test]
fn hold_figures_on_the_page_are_those_of_the_rules() {
    let rows = [
        ("us-food-code", "red-meat", "5 °C 41 °F"),
        ("us-food-code", "fish", "5 °C 41 °F"),
        ("eu-853", "red-meat", "7 °C 44.6 °F"),
        ("eu-853", "offal", "3 °C 37.4 °F"),
        ("eu-853", "poultry", "4 °C 39.2 °F"),
        ("eu-853", "minced", "2 °C 35.6 °F"),
        ("eu-853", "fish", "in words"),
        ("uk-retail", "poultry", "8 °C 46.4 °F"),
        ("canada", "red-meat", "4 °C 39.2 °F"),
        ("canada", "fish", "The profile is silent."),
        ("australia-retail", "game", "5 °C 41 °F"),
        ("us-plant", "poultry", "in words"),
    ];
    for (profile, product, told) in rows {
        let page = limits(&under(profile, ""));
        let (card, _) = with_id(&page, &format!("product-{product}"));
        let (_, cell) = page.inside(card, "dd").next().unwrap();
        assert_eq!(flat(&cell.text), told, "{profile}, {product}");
    }
}

#[test]
fn what_a_profile_does_not_say_is_told_too() {
    let page = limits(&under("eu-853", ""));
    let text = flat(&page.all("main").next().unwrap().1.text);
    assert!(text.contains("Time out of the coldThe profile is silent here: nothing is checked."), "{text}");
    assert!(text.contains("The profile is also silent on: cooling what arrives warm, keeping hot"), "{text}");
    let without = pages_of(&book(&[("guidebook.yaml", "title: T\n"), ("chicken/legs.yaml", CHICKEN)]));
    let text = flat(&limits(&without).all("main").next().unwrap().1.text);
    assert!(text.contains("names no profile of limits"), "{text}");
}

/// The contract: the Food Code's 240 minutes are applied to bench work as a prudent limit, and the page says so; the
/// six hours hold only where the guidebook asks for them.
#[test]
fn a_rule_for_other_work_says_that_it_is_a_prudent_limit() {
    for profile in ["us-food-code", "uk-retail"] {
        let pages = under(profile, "");
        let card = flat(&with_id(&limits(&pages), "limit-time-out").1.text);
        assert!(card.contains("Held against bench work it is a prudent limit"), "{card}");
        let clock = flat(&read(&pages, "cold/chicken/legs.html").all("main").next().unwrap().1.text);
        assert!(clock.contains("Held against bench work it is a prudent limit"), "{clock}");
    }
    let page = limits(&under("us-food-code", ""));
    assert!(with_id(&page, "limit-time-out-six-hours").1.text.contains("only where the guidebook asks for it"));
    let own = "stricter:\n  - { limit: time-out, at-most: 5 h, watch: the cutter, every: each run, if-missed: Throw it away. }\n";
    let page = limits(&under("us-food-code", own));
    let (card, element) = with_id(&page, "own-time-out");
    assert!(element.text.contains("Asks for the option"), "{}", element.text);
    assert!(page.inside(card, "a").any(|(_, link)| link.get("href") == Some("#limit-time-out-six-hours")));
}

#[test]
fn the_shop_says_who_watches_and_what_is_done() {
    let page = limits(&DEMO);
    let (_, card) = with_id(&page, "own-time-out");
    for words in
        ["30 minutes", "the learner at the board, by the wall clock", "each stretch between leaving the cold", "Probe the warmest piece"]
    {
        assert!(flat(&card.text).contains(words), "{words}: {}", card.text);
    }
    let own = "stricter:\n  - { limit: hold, at-most: 40 °F, watch: the receiver, every: delivery, if-missed: Send it back. }\n";
    let page = limits(&under("us-food-code", own));
    let text = flat(&with_id(&page, "own-hold").1.text);
    assert!(text.contains("40 °F 4.4 °C") && text.contains("Send it back."), "{text}");
}

/// From any guide a reader stands at the source of any limit after two taps: one to the class of product of the guide,
/// one from a figure to its entry, and in the entry stands the source.
#[test]
fn the_source_of_every_limit_is_two_taps_from_any_guide() {
    let inspection = inspected("procedures");
    let profile = &Builtin::get().profiles["eu-853"];
    let page = limits(&DEMO);
    let linked: BTreeSet<&str> = page.all("a").filter_map(|(_, link)| link.get("href")?.strip_prefix('#')).collect();
    for procedure in &inspection.verdict.book().procedures {
        let guide = read(&DEMO, &format!("guides/{}.html", procedure.id));
        let leads: Vec<&str> = guide.all("a").filter_map(|(_, link)| link.get("href")?.strip_prefix("../../limits/index.html#")).collect();
        assert!(leads.iter().any(|anchor| anchor.starts_with("product-")), "{}: {leads:?}", procedure.id);
        for anchor in leads {
            // The shop's own limit stands beside those of the profile.
            let (card, _) = with_id(&page, anchor);
            let beside = page.inside(card, "a").any(|(_, link)| link.get("href") == Some("#own-time-out"));
            assert!(beside || anchor == "own-time-out", "{anchor}");
        }
    }
    for limit in &profile.limits {
        // One tap more leads to the entry or to the heading that it stands under.
        let at_heading = linked.contains(format!("stage-{}", limit.stage.word()).as_str());
        assert!(at_heading || linked.contains(format!("limit-{}", limit.id).as_str()), "{}", limit.id);
        assert!(flat(&with_id(&page, &format!("limit-{}", limit.id)).1.text).contains(&flat(&limit.citation.title)), "{}", limit.id);
    }
}
