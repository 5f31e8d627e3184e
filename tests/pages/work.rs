//! What holds on the bench view and the room view: they say what the guide says, step by step, cautions first, and keep
//! nothing back but answers.

use super::html::Page;
use super::made::{DEMO, ODD, Pages, inspected};

fn page(pages: &Pages, path: &str) -> Page {
    let bytes = pages.get(path).unwrap_or_else(|| panic!("no page {path}"));
    Page::read(std::str::from_utf8(bytes).unwrap()).unwrap_or_else(|wrong| panic!("{path}: {wrong}"))
}

/// The text of everything of this class inside an element, in order, blanks made one.
fn texts(page: &Page, inside: usize, class: &str) -> Vec<String> {
    let found = page.with_class(class).filter(|(at, _)| page.is_inside(*at, inside));
    found.map(|(_, element)| plain(&element.text)).collect()
}

fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn with_id(page: &Page, id: &str) -> usize {
    page.elements.iter().position(|element| element.get("id") == Some(id)).unwrap_or_else(|| panic!("nothing has the id {id}"))
}

#[test]
fn every_guide_with_steps_has_both_views_and_leads_to_them() {
    for (pages, book) in [(&*DEMO, "procedures"), (&*ODD, "tests/guidebooks/odd")] {
        for procedure in &inspected(book).verdict.book().procedures {
            let guide = page(pages, &format!("guides/{}.html", procedure.id));
            for view in ["bench", "room"] {
                let path = format!("{view}/{}.html", procedure.id);
                let up = "../".repeat(path.matches('/').count());
                let linked = |from: &Page, folder: &str| {
                    from.all("a").any(|(_, link)| link.get("href").is_some_and(|href| href.starts_with(&format!("{up}{folder}/"))))
                };
                assert_eq!(pages.contains_key(&path), !procedure.steps_from_yields, "{path}");
                assert_eq!(linked(&guide, view), !procedure.steps_from_yields, "{path}");
                if !procedure.steps_from_yields {
                    let other = if view == "bench" { "room" } else { "bench" };
                    let own = page(pages, &path);
                    assert!(linked(&own, "guides") && linked(&own, other) && !linked(&own, view), "{path}");
                }
            }
        }
    }
}

#[test]
fn each_step_says_what_the_guide_says() {
    let mut steps = 0;
    for (pages, path) in [&*DEMO, &*ODD].into_iter().flat_map(|pages| pages.keys().map(move |path| (pages, path))) {
        let Some(id) = path.strip_prefix("bench/").and_then(|path| path.strip_suffix(".html")) else { continue };
        let (guide, bench, room) = (page(pages, &format!("guides/{id}.html")), page(pages, path), page(pages, &format!("room/{id}.html")));
        for (step, element) in guide.with_class("step") {
            let anchor = element.get("id").unwrap();
            let (at_bench, in_room) = (with_id(&bench, anchor), with_id(&room, anchor));
            assert_eq!(texts(&guide, step, "do"), texts(&bench, at_bench, "do"), "{path}#{anchor}");
            assert_eq!(texts(&guide, step, "caution"), texts(&bench, at_bench, "caution"), "{path}#{anchor}");
            let whole = plain(&room.elements[in_room].text);
            for (_, line) in guide
                .all("p")
                .filter(|(at, _)| guide.with_class("do").any(|(act, _)| guide.is_inside(act, step) && guide.is_inside(*at, act)))
            {
                assert!(whole.contains(&plain(&line.text)), "{path}#{anchor}: {}", line.text);
            }
            for (_, avoid) in guide.inside(step, "strong") {
                assert!(whole.contains(&plain(&avoid.text)), "{path}#{anchor}: {}", avoid.text);
            }
            steps += 1;
        }
        assert_eq!(guide.with_class("step").count(), bench.with_class("step").count(), "{path}");
        assert_eq!(guide.with_class("step").count(), room.with_class("step").count(), "{path}");
    }
    assert!(steps > 50, "only {steps} steps were looked at");
}

#[test]
fn cautions_stand_before_hold_landmark_and_cut() {
    let mut cautions = 0;
    for (path, bytes) in DEMO.iter().filter(|(path, _)| path.starts_with("bench/") || path.starts_with("room/")) {
        let page = Page::read(std::str::from_utf8(bytes).unwrap()).unwrap();
        let act = if path.starts_with("bench/") { "act" } else { "cut" };
        for (step, _) in page.with_class("step") {
            let (act, _) = page.with_class(act).find(|(at, _)| page.is_inside(*at, step)).unwrap();
            for (caution, element) in page.with_class("caution").filter(|(at, _)| page.is_inside(*at, step)) {
                assert!(caution < act, "{path}: {}", element.text);
                cautions += 1;
            }
        }
    }
    assert!(cautions > 80, "only {cautions} cautions were looked at");
}

/// What covers every step and is weaker than a warning stands at no step: before the work it must be said.
#[test]
fn what_can_hurt_is_said_before_the_first_step() {
    for (path, bytes) in DEMO.iter().filter(|(path, _)| path.starts_with("guides/") && path.ends_with(".html")) {
        let guide = Page::read(std::str::from_utf8(bytes).unwrap()).unwrap();
        let head = guide.elements.iter().position(|element| element.get("aria-labelledby") == Some("hurt")).unwrap();
        let id = path.strip_prefix("guides/").unwrap();
        let bench = page(&DEMO, &format!("bench/{id}"));
        assert_eq!(texts(&guide, head, "caution"), texts(&bench, with_id(&bench, "before"), "caution"), "{path}");
        let room = plain(&page(&DEMO, &format!("room/{id}")).all("main").next().unwrap().1.text);
        for (_, avoid) in guide.inside(head, "strong") {
            assert!(room.contains(&plain(&avoid.text)), "{path}: {}", avoid.text);
        }
    }
}

/// The loin guide: gauntlet and glove in all steps but the sawing, no glove there; 0–4 °C at the start; 30 minutes at most.
#[test]
fn the_whole_kit_the_start_and_the_limit_stand_before_the_first_step() {
    let bench = page(&DEMO, "bench/pork/loin-boneless.html");
    let before = plain(&bench.elements[with_id(&bench, "before")].text);
    for words in [
        "mesh gauntlet Steps 1, 2, 3, 5, 6, 7.",
        "eye protection Step 4.",
        "band saw Step 4.",
        "0–4 °C",
        "25 min out at the longest",
        "30 minutes at most",
    ] {
        assert!(before.contains(words), "{words}: {before}");
    }
    let root = bench.with_class("bench").next().unwrap().1;
    assert_eq!((root.get("data-guide"), root.get("data-revision")), (Some("pork/loin-boneless"), Some("5")));
    let (_, clock) = bench.with_class("clock").nth(2).unwrap();
    assert_eq!((clock.get("data-low"), clock.get("data-high")), (Some("300"), Some("720")), "step 3 takes 5 to 12 minutes, in seconds");
}

#[test]
fn a_guide_that_is_not_in_force_says_so_in_both_views() {
    for (path, mark) in [
        ("bench/cod/fillet.html", "DRAFT, not in force"),
        ("room/cod/fillet.html", "DRAFT, not in force"),
        ("bench/fisch/Lachs für zwei.html", "WITHDRAWN, do not work from it"),
        ("room/fisch/Lachs für zwei.html", "WITHDRAWN, do not work from it"),
    ] {
        let page = page(&ODD, path);
        assert!(page.with_class("state").next().unwrap().1.text.starts_with(mark), "{path}");
    }
}

#[test]
fn a_question_stands_behind_its_step_in_the_room_and_its_answer_is_folded() {
    let room = page(&DEMO, "room/pork/loin-boneless.html");
    let mut asked = 0;
    for (at, question) in room.with_class("asks") {
        let step = room.with_class("step").find(|(step, _)| room.is_inside(at, *step)).unwrap().1;
        if question.text.contains("How many ribs do you expect") {
            assert_eq!(step.get("id"), Some("step-ribs-sawn"));
        }
        let (fold, element) = room.inside(at, "details").next().unwrap();
        assert!(element.get("open").is_none());
        assert!(room.inside(fold, "div").next().is_some_and(|(_, answer)| answer.text.len() > 20));
        asked += 1;
    }
    assert_eq!(asked, 4);
    let bench = page(&DEMO, "bench/pork/loin-boneless.html");
    assert!(!bench.all("main").next().unwrap().1.text.contains("Eleven from a pig"), "no answers at the bench");
    assert!(bench.all("a").any(|(_, link)| link.get("href").is_some_and(|href| href.ends_with("guides/pork/loin-boneless.html#ask"))));
}
