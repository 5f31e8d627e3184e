//! Mistakes in the texts and the lists of a step: tools, cautions, wear, minutes, pictures, keys.

use std::ops::Range;

use super::guide::{Guide, Mistake, spread};

/// All of them.
pub(crate) fn mistakes(guide: &Guide) -> Vec<Mistake> {
    let steps = spread(&guide.steps);
    let mut made: Vec<Mistake> =
        steps.iter().flat_map(|step| [keys(guide, step), lists(guide, step), texts(guide, step)].concat()).collect();
    made.extend(pictures(guide));
    made
}

/// A key at the left edge of a step, by its line.
fn at(guide: &Guide, step: &Range<usize>, key: &str) -> Option<usize> {
    guide.find(step.clone(), &format!("    {key}:"))
}

fn keys(guide: &Guide, step: &Range<usize>) -> Vec<Mistake> {
    let first = step.start + 1;
    let mut made = Vec::new();
    for (kind, key) in [("take left out", "take"), ("do left out", "do"), ("give left out", "give")] {
        if let Some(at) = at(guide, step, key) {
            made.push(guide.replaced(kind, guide.block(at), &[], "missing-key", first));
        }
    }
    // The dash moves to the next key, which then begins the step.
    let next = guide.lines[step.start + 1].trim_start().to_owned();
    made.push(guide.replaced("name left out", step.start..step.start + 2, &[&format!("  - {next}")], "missing-key", first));
    for (kind, key, wrong, check) in [
        ("minutes misspelt", "minutes", "minuts", "unknown-key"),
        ("take misspelt", "take", "takes", "unknown-key"),
        ("give misspelt", "give", "gives", "unknown-key"),
        ("cautions misspelt", "cautions", "caution", "unknown-key"),
        ("landmark misspelt", "landmark", "landmak", "unknown-key"),
        ("wear in the words of another shop", "wear", "ppe", "unknown-key"),
    ] {
        made.extend(at(guide, step, key).and_then(|at| guide.swapped(kind, at, &format!("{key}:"), &format!("{wrong}:"), check)));
    }
    if let Some(at) = at(guide, step, "minutes") {
        let line = guide.lines[at].clone();
        made.push(guide.replaced("minutes written twice", at..at + 1, &[&line, "    minutes: 7–9"], "doubled-key", at + 2));
        made.push(guide.instead("minutes with their unit", at, &format!("{line} min"), "unit-wrong"));
        made.push(guide.instead("minutes upside down", at, "    minutes: 9–7", "range-inverted"));
        made.push(guide.instead("minutes below nothing", at, "    minutes: -3", "value-out-of-bounds"));
        made.push(guide.instead("minutes emptied", at, "    minutes:", "empty-value"));
    }
    if let Some(at) = at(guide, step, "id") {
        made.push(guide.instead("a dot in the id of a step", at, "    id: step.one", "id-malformed"));
    }
    made
}

fn lists(guide: &Guide, step: &Range<usize>) -> Vec<Mistake> {
    let mut made = Vec::new();
    for (kind, key, check) in [
        ("an unknown tool", "tools", "tool-unknown"),
        ("an unknown caution", "cautions", "caution-unknown"),
        ("unknown protection", "wear", "wear-unknown"),
    ] {
        if let Some(at) = at(guide, step, key) {
            made.extend(guide.swapped(kind, at, "]", ", nobody-knows-it]", check));
        }
    }
    if let Some(at) = at(guide, step, "tools") {
        let line = guide.lines[at].clone();
        made.push(guide.instead("a tool alone where a list belongs", at, "    tools: boning-knife", "wrong-kind"));
        made.push(guide.instead("a list that is not closed", at, line.trim_end_matches(']'), "unclosed-bracket"));
        made.push(guide.instead("text behind a list", at, &format!("{line} too"), "yaml-refused"));
        made.push(guide.instead("an empty choice of tools", at, "    tools: [{ any-of: [] }]", "empty-value"));
    }
    if let Some(at) = at(guide, step, "take") {
        made.push(guide.instead("nothing taken", at, "    take: []", "step-takes-nothing"));
        made.extend(guide.swapped("a taken piece misspelt", at, "take: ", "take: x", "piece-unknown"));
        made.extend(guide.swapped("an alias", at, "take: ", "take: *", "anchor-or-alias"));
        made.extend(guide.swapped("a tag", at, "take: ", "take: !piece ", "yaml-tag"));
        made.extend(guide.swapped("a colon without its space", at, "take: ", "take:", "space-missing"));
    }
    made
}

fn texts(guide: &Guide, step: &Range<usize>) -> Vec<Mistake> {
    let mut made = Vec::new();
    let one_line = ["landmark", "good", "hold", "mistakes"]
        .into_iter()
        .filter_map(|key| at(guide, step, key))
        .find(|at| !guide.lines[*at].ends_with('|'));
    if let Some(at) = one_line {
        let (key, text) = guide.lines[at].split_once(": ").unwrap();
        made.push(guide.instead("a colon inside a text", at, &format!("{key}: Look here: {text}"), "colon-in-text"));
        made.push(guide.instead("a hash inside a text", at, &format!("{key}: Cut in gap #3. {text}"), "hash-cuts-text"));
        made.push(guide.instead("a quote that is not closed", at, &format!("{key}: \"{text}"), "unclosed-quote"));
        made.push(guide.instead("an apostrophe in single quotes", at, &format!("{key}: 'It's so.'"), "quote-in-text"));
        made.push(guide.instead("a sign at the start of a text", at, &format!("{key}: % {text}"), "text-start"));
        made.push(guide.instead("a link that is dead", at, &format!("{key}: See [this](nothing.yaml)."), "link-dead"));
        made.push(guide.instead("a link that runs", at, &format!("{key}: See [this](javascript:1)."), "link-unsafe"));
        made.push(guide.instead("a link out of the guidebook", at, &format!("{key}: See [this](../../nothing)."), "link-leaves-guidebook"));
        made.push(guide.instead("a list in place of a text", at, &format!("{key}: [{}]", "one, two"), "wrong-kind"));
        made.push(guide.instead("one space too many", at, &format!(" {}", guide.lines[at]), "indent"));
        made.push(guide.instead("one space too few", at, &guide.lines[at][1..], "indent"));
        made.push(guide.instead("a tab", at, &format!("\t{}", guide.lines[at].trim_start()), "tab-indent"));
    }
    made
}

fn pictures(guide: &Guide) -> Vec<Mistake> {
    let named: Vec<usize> = (0..guide.lines.len()).filter(|at| guide.lines[*at].trim_start().starts_with("- file: pictures/")).collect();
    let mut made = Vec::new();
    for at in spread(&named) {
        made.extend(guide.swapped("a picture that is not there", at, "pictures/", "pictures/no-", "picture-missing"));
        made.extend(guide.swapped("a picture elsewhere", at, "pictures/", "../../", "link-leaves-guidebook"));
    }
    made
}
