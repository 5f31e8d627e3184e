//! What can hurt: all of it at the head of a guide, and what comes off before a machine runs.

use std::collections::BTreeSet;

use seamwise::model::words::Signal;

use super::before_act::{Parts, cautions_inside, cautions_stand_before_acts};
use super::made::{DEMO, all_html, book, inspected, pages_of, read, with_id};

/// Whatever stands at a step as danger or warning stands at the head of its guide too, under the same signal word.
#[test]
fn every_danger_and_warning_below_is_told_at_the_head() {
    let mut seen = 0;
    for (path, page) in all_html().into_iter().filter(|(path, _)| path.contains("/guides/") && !path.contains("/tables/")) {
        let (head, _) = page.elements.iter().enumerate().find(|(_, element)| element.get("aria-labelledby") == Some("hurt")).unwrap();
        let at_head: BTreeSet<(&str, String)> = cautions_inside(&page, head).into_iter().collect();
        for (step, element) in page.with_class("step") {
            for (signal, avoid) in cautions_inside(&page, step) {
                assert!(at_head.contains(&(signal, avoid.clone())), "{path}, {}: {signal}: {avoid}", element.get("id").unwrap());
                seen += usize::from(["danger", "warning"].contains(&signal));
            }
        }
    }
    assert!(seen > 60, "only {seen} dangers and warnings were looked at");
}

/// Other views of a guide that go step by step carry the cautions of the guide at the same steps, before the act.
#[test]
fn other_views_carry_the_cautions_of_each_step() {
    let mut seen = 0;
    let all = all_html();
    for (path, guide) in all.iter().filter(|(path, _)| path.contains("/guides/") && !path.contains("/tables/")) {
        for view in ["/bench/", "/room/"] {
            let Some((path, page)) = all.iter().find(|(known, _)| *known == path.replace("/guides/", view)) else { continue };
            seen += cautions_stand_before_acts(path, page, &Parts { step: "step", act: "do" });
            for (step, element) in page.with_class("step") {
                let (same, _) = with_id(guide, element.get("id").unwrap());
                assert_eq!(cautions_inside(page, step), cautions_inside(guide, same), "{path}, {:?}", element.get("id"));
            }
        }
    }
    assert!(seen > 60, "only {seen} cautions were looked at");
}

/// The same from the files: each caution of the guidebook that is a danger or a warning, by its own words.
#[test]
fn no_danger_or_warning_of_the_files_is_missing_at_the_head() {
    let inspection = inspected("procedures");
    let guidebook = inspection.verdict.book();
    let mut seen = 0;
    for procedure in &guidebook.procedures {
        let page = read(&DEMO, &format!("guides/{}.html", procedure.id));
        let (head, _) = page.elements.iter().enumerate().find(|(_, element)| element.get("aria-labelledby") == Some("hurt")).unwrap();
        let at_head = cautions_inside(&page, head);
        let all: BTreeSet<&str> =
            procedure.steps.iter().flat_map(|step| &step.cautions).chain(&procedure.cautions).map(|id| id.value.as_str()).collect();
        for id in all {
            let caution = &guidebook.builtin.cautions[id];
            if !matches!(caution.signal, Signal::Danger | Signal::Warning) {
                continue;
            }
            let avoid = |text: &str| text.replace('\u{a0}', " ");
            let told = at_head.iter().any(|(signal, text)| *signal == caution.signal.word() && avoid(text) == avoid(&caution.avoid));
            assert!(told, "{}: `{id}` is not at the head: {at_head:?}", procedure.id);
            seen += 1;
        }
    }
    assert!(seen > 20, "only {seen} cautions were looked at");
}

fn kit(page: &super::html::Page, step: &str) -> String {
    let (at, _) = with_id(page, step);
    let (_, kit) = page.inside(at, "dl").find(|(_, list)| list.has_class("kit")).unwrap();
    kit.text.replace('\u{a0}', " ")
}

/// Every step with a powered machine tells which gloves come off; the ban is built in, and no author repeats it.
#[test]
fn what_a_machine_forbids_comes_off() {
    let inspection = inspected("procedures");
    let guidebook = inspection.verdict.book();
    let mut seen = 0;
    for procedure in &guidebook.procedures {
        let page = read(&DEMO, &format!("guides/{}.html", procedure.id));
        for step in &procedure.steps {
            let tools = step.tools.value().or_else(|| procedure.tools.value()).into_iter().flatten();
            let tools: Vec<_> = tools.flat_map(|choice| &choice.value.any_of).collect();
            let forbidden: BTreeSet<&String> =
                tools.iter().filter_map(|tool| guidebook.builtin.tools.get(&tool.value)).flat_map(|tool| &tool.demands.never).collect();
            let kit = kit(&page, &format!("step-{}", step.id));
            assert_eq!(kit.contains("Take off"), !forbidden.is_empty(), "{}, {}: {kit}", procedure.id, step.id);
            for id in forbidden {
                let name = guidebook.builtin.wear[id].name.to_lowercase();
                assert!(kit.split_once("Take off").unwrap().1.contains(&name), "{}, {}: {name}", procedure.id, step.id);
                seen += 1;
            }
        }
    }
    assert!(seen >= 3, "only {seen} gloves were looked at");
}

/// Of a choice of saws one is taken: the glove of the one and the bare hand at the other each say whose they are.
#[test]
fn a_choice_of_saws_says_what_each_asks_for() {
    let guide = "title: Ribs
species: pork
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-frame, weight: 2–3 kg, temperature: 0–4 °C }
steps:
  - name: Saw the ribs
    take: pork-frame
    do: Saw.
    minutes: 1–2
    tools: [{ any-of: [band-saw, hand-saw] }, tray]
    wear: [eye-protection]
    cautions: [no-glove-at-moving-blade, saw-guard-and-pusher, isolate-before-cleaning, protect-holding-hand, bone-splinters]
    give: { pork-ribs: { share: 40–48 %, use: retail }, pork-chine: { share: rest, use: bone } }
    loss: 1–2 %
";
    let inspection = book(&[("guidebook.yaml", "title: T\nlimits: eu-853\n"), ("pork/ribs.yaml", guide)]);
    assert!(inspection.findings.is_empty(), "{:#?}", inspection.findings);
    let kit = kit(&read(&pages_of(&inspection), "guides/pork/ribs.html"), "step-saw-the-ribs");
    let (worn, off) = kit.split_once("Take off").unwrap();
    assert!(worn.ends_with("eye protection, cut-resistant glove or mesh gauntlet (hand saw)"), "{worn}");
    assert_eq!(off, "cut-resistant glove (band saw), mesh gauntlet (band saw), single-use gloves (band saw)");
}

/// Pages about cold, limits and parts of the animal say whose word comes first, as guides do.
#[test]
fn local_codes_come_first_wherever_work_can_hurt() {
    let mut seen = 0;
    for (path, page) in all_html() {
        let kind = path.split('/').nth(1).unwrap();
        if !["guides", "bench", "limits", "cold", "anatomy", "index.html"].contains(&kind) {
            continue;
        }
        let (_, main) = page.all("main").next().unwrap();
        assert!(main.text.contains("Local codes and licensed practice come first"), "{path}");
        seen += 1;
    }
    assert!(seen > 25, "only {seen} pages were looked at");
}
