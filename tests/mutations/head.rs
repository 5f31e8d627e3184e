//! Mistakes above the steps: title, species, the control block, the start.

use super::guide::{Guide, Mistake};

/// All of them.
pub(crate) fn mistakes(guide: &Guide) -> Vec<Mistake> {
    [top(guide), revision(guide), start(guide), added(guide)].concat()
}

fn top(guide: &Guide) -> Vec<Mistake> {
    let at = |key| guide.top(key).unwrap();
    let (title, species) = (at("title:"), at("species:"));
    let first = title.min(species) + 1;
    let mut made = vec![
        guide.replaced("title left out", title..title + 1, &[], "missing-key", first),
        guide.replaced("species left out", species..species + 1, &[], "missing-key", first),
        guide.instead("another species", species, "species: goose", "species-not-folder"),
        guide.replaced("title written twice", title..title + 1, &[&guide.lines[title], "title: Another"], "doubled-key", title + 2),
        guide.instead("title emptied", title, "title:", "empty-value"),
    ];
    made.extend(guide.swapped("key misspelt at the top", title, "title:", "titel:", "unknown-key"));
    if let Some(house) = guide.top("house-cut:") {
        made.extend(guide.swapped("yes in place of true", house, "true", "yes", "not-true-or-false"));
    }
    let product = guide.replaced(
        "a product that is none",
        species..species + 1,
        &[&guide.lines[species], "product: red meat"],
        "unknown-word",
        species + 2,
    );
    made.push(product);
    made
}

fn revision(guide: &Guide) -> Vec<Mistake> {
    let lines = guide.below("revision:").unwrap();
    let first = lines.start + 1;
    let mut made = Vec::new();
    for (kind, key) in [
        ("number left out", "  number:"),
        ("date left out", "  date:"),
        ("author left out", "  author:"),
        ("approved-by left out", "  approved-by:"),
        ("review-by left out", "  review-by:"),
        ("change left out", "  change:"),
    ] {
        let at = guide.find(lines.clone(), key).unwrap();
        made.push(guide.replaced(kind, guide.block(at), &[], "missing-key", first));
    }
    let at = |key| guide.find(lines.clone(), key).unwrap();
    made.push(guide.instead("date as day, month, year", at("  date:"), "  date: 17.09.2026", "date-malformed"));
    made.push(guide.instead("a day that is none", at("  review-by:"), "  review-by: 2027-02-30", "date-malformed"));
    made.push(guide.instead("number in words", at("  number:"), "  number: three", "value-malformed"));
    made.push(guide.instead("number zero", at("  number:"), "  number: 0", "value-out-of-bounds"));
    let author = at("  author:");
    made.push(guide.replaced(
        "a state that is none",
        author..author + 1,
        &[&guide.lines[author], "  state: valid"],
        "unknown-word",
        author + 2,
    ));
    made.extend(guide.swapped("key of the revision misspelt", author, "author:", "auther:", "unknown-key"));
    made
}

fn start(guide: &Guide) -> Vec<Mistake> {
    let lines = guide.below("start:").unwrap();
    let at = |key| guide.find(lines.clone(), key).unwrap();
    let (piece, weight, typical, temperature) = (at("  piece:"), at("  weight:"), at("  typical:"), at("  temperature:"));
    let (low, high) = guide.lines[weight].trim_start_matches("  weight:").trim_end_matches("kg").trim().split_once('–').unwrap();
    let mut made = vec![
        guide.replaced("starting piece left out", piece..piece + 1, &[], "missing-key", lines.start + 1),
        guide.replaced("start weight left out", weight..weight + 1, &[], "missing-key", lines.start + 1),
        guide.instead("start weight upside down", weight, &format!("  weight: {high}–{low} kg"), "range-inverted"),
        guide.instead("start weight with a comma", weight, &format!("  weight: {},0–{},0 kg", whole(low), whole(high)), "decimal-comma"),
        guide.instead("start weight as a word", weight, "  weight: heavy", "value-malformed"),
        guide.instead("typical start outside the range", typical, "  typical: 99 kg", "typical-outside-range"),
        guide.instead("typical start as a range", typical, "  typical: 1–99 kg", "value-malformed"),
        guide.instead("temperature in kilograms", temperature, "  temperature: 0–4 kg", "unit-wrong"),
        guide.instead("temperature upside down", temperature, "  temperature: 4–0 °C", "range-inverted"),
        guide.instead("a reserved word as the start", piece, "  piece: lot", "name-reserved"),
        guide.instead("starting piece misspelt", piece, &format!("{}x", guide.lines[piece]), "piece-unknown"),
    ];
    // What is misspelt is told where a step takes it.
    if let Some(mistake) = made.last_mut() {
        mistake.line = guide.find(guide.steps[0].clone(), "    take:").unwrap() + 1;
    }
    made.extend(guide.swapped("start weight without a unit", weight, " kg", "", "unit-missing"));
    made.extend(guide.swapped("start weight in an unknown unit", weight, " kg", " kilos", "unit-wrong"));
    made.extend(guide.swapped("typical start without a unit", typical, " kg", "", "unit-missing"));
    made.extend(guide.swapped("temperature without a unit", temperature, " °C", "", "unit-missing"));
    made.extend(guide.swapped("key of the start misspelt", weight, "weight:", "wieght:", "unknown-key"));
    made
}

fn whole(number: &str) -> &str {
    number.split('.').next().unwrap_or(number)
}

/// Keys that name something which is not there, added below the title.
fn added(guide: &Guide) -> Vec<Mistake> {
    let title = guide.top("title:").unwrap();
    let add = |kind, line: &str, check| guide.replaced(kind, title..title + 1, &[&guide.lines[title], line], check, title + 2);
    let inside = |kind, lines: &[&str], check| {
        let all: Vec<&str> = [guide.lines[title].as_str()].into_iter().chain(lines.iter().copied()).collect();
        guide.replaced(kind, title..title + 1, &all, check, title + 1 + lines.len())
    };
    vec![
        add("a guide to know first that is not there", "needs: [pork/joints]", "procedure-unknown"),
        add("a yield of a piece that nothing gives", "yields: { nothing-at-all: 5–7 % }", "yield-for-unknown-piece"),
        add("a yield as `rest`", &format!("yields: {{ {}: rest }}", guide.outputs(&guide.steps[0])[0].piece), "value-malformed"),
        add("parasites that are none", "parasites: boiled", "unknown-word"),
        add("an empty text", "allergens: [\"\"]", "empty-value"),
        add("an earlier id that is a guide", &format!("was: [{}]", guide.path.trim_end_matches(".yaml")), "former-id-taken"),
        inside(
            "a waiver of a check that is not there",
            &["waivers:", "  - { check: shares-exceed-hole, where: start, reason: It is close., by: course lead }"],
            "check-unknown",
        ),
        inside(
            "a waiver of a fault",
            &["waivers:", "  - { check: shares-exceed-whole, where: start, reason: It is close., by: course lead }"],
            "check-not-waivable",
        ),
    ]
}
