//! Mistakes in what a step gives: shares, uses, pieces, counts, ids.

use std::ops::Range;

use super::guide::{Guide, Mistake, Output, spread};

/// All of them.
pub(crate) fn mistakes(guide: &Guide) -> Vec<Mistake> {
    let mut made: Vec<Mistake> = spread(&guide.steps).iter().flat_map(|step| [wholes(guide, step), shares(guide, step)].concat()).collect();
    let outputs: Vec<Output> = guide.steps.iter().flat_map(|step| guide.outputs(step)).collect();
    let long: Vec<Output> = outputs.into_iter().filter(|output| output.long && guide.lines[output.at].contains("use: ")).collect();
    made.extend(spread(&long).iter().flat_map(|output| [uses(guide, output), inside(guide, output)].concat()));
    made.extend(counts(guide));
    made
}

/// The line with another share.
fn with(guide: &Guide, output: &Output, share: &str) -> String {
    guide.lines[output.at].replacen(&format!("{} %", output.written), share, 1)
}

/// Steps that give more or less than they take.
fn wholes(guide: &Guide, step: &Range<usize>) -> Vec<Mistake> {
    let outputs = guide.outputs(step);
    let give = guide.find(step.clone(), "    give:").unwrap() + 1;
    let mut made = Vec::new();
    if let Some(largest) = outputs.iter().max_by(|a, b| a.share.0.total_cmp(&b.share.0)) {
        let others: f64 = outputs.iter().map(|output| output.share.0).sum::<f64>() - largest.share.0;
        // Three points over the whole, whatever the other pieces weigh.
        let low = (103.0 - others).min(100.0);
        if others + low > 100.0 {
            let share = format!("{low:.1}–100 %");
            made.push(Mistake {
                line: give,
                ..guide.instead("over the whole", largest.at, &with(guide, largest, &share), "shares-exceed-whole")
            });
        }
        let highs: f64 = outputs.iter().map(|output| output.share.1).sum::<f64>() - largest.share.1;
        let high = 95.0 - highs;
        if high > 1.0 {
            let share = format!("1–{high:.1} %");
            made.push(Mistake {
                line: give,
                ..guide.instead("short of the whole", largest.at, &with(guide, largest, &share), "shares-fall-short")
            });
        }
    }
    if let [first, .., last] = outputs.as_slice() {
        let both = guide.replaced("two rests", first.at..first.at + 1, &[&with(guide, first, "rest")], "more-than-one-rest", last.at + 1);
        let text = String::from_utf8(both.bytes.clone()).unwrap();
        let again = Guide::new(&guide.path, &text);
        made.push(again.instead("two rests", last.at, &with(guide, last, "rest"), "more-than-one-rest"));
        let line = &guide.lines[first.at];
        made.push(guide.replaced("a piece given twice in one step", first.at..first.at + 1, &[line, line], "doubled-key", first.at + 2));
    }
    made
}

fn shares(guide: &Guide, step: &Range<usize>) -> Vec<Mistake> {
    let outputs = guide.outputs(step);
    let Some(output) = outputs.last() else { return Vec::new() };
    let (low, high) = output.written.split_once('–').unwrap();
    let mut made = Vec::new();
    for (kind, share, check) in [
        ("a share upside down", format!("{high}–{low} %"), "range-inverted"),
        ("a share without its sign", format!("{low}–{high}"), "share-with-two-readings"),
        ("a share above the whole", "5–120 %".to_owned(), "value-out-of-bounds"),
        ("a share in kilograms", format!("{low}–{high} kg"), "unit-wrong"),
        ("a share as a word", "much".to_owned(), "value-malformed"),
        ("a share of a calculator", format!("{low}–{high}33333333333 %"), "too-many-digits"),
        ("an empty share", "\"\"".to_owned(), "empty-value"),
    ] {
        // Below 1, a number without a sign is a decimal share.
        if check != "share-with-two-readings" || output.share.1 >= 1.0 {
            made.push(guide.instead(kind, output.at, &with(guide, output, &share), check));
        }
    }
    if low != high && !low.starts_with('0') {
        let comma = format!("{},5–{},5 %", whole(low), whole(high));
        made.push(guide.instead("a share with a comma", output.at, &with(guide, output, &comma), "decimal-comma"));
    }
    let line = &guide.lines[output.at];
    let key = |id: &str| line.replacen(&output.piece, id, 1);
    // In the long form over several lines the key stands above the share.
    if line.contains(&output.piece) {
        made.push(guide.instead("a dot in the id of a piece", output.at, &key("piece.one"), "id-malformed"));
        made.push(guide.instead("a reserved word as a piece", output.at, &key("note"), "name-reserved"));
    }
    if let Some(loss) = guide.find(step.clone(), "    loss:") {
        made.push(guide.instead("a loss upside down", loss, "    loss: 0.4–0.2 %", "range-inverted"));
        made.push(guide.instead("a loss of one", loss, "    loss: 1", "share-with-two-readings"));
        if loss == output.at + 1 {
            made.push(guide.instead("the loss among the pieces", loss, "      loss: 0–0.3 %", "name-reserved"));
        }
    }
    made
}

fn whole(number: &str) -> &str {
    number.split('.').next().unwrap_or(number)
}

fn uses(guide: &Guide, output: &Output) -> Vec<Mistake> {
    let line = &guide.lines[output.at];
    let stated = line.split("use: ").nth(1).unwrap().split([',', ' ', '}']).next().unwrap().to_owned();
    let mut made = Vec::new();
    let tub = guide.lines.iter().filter(|line| line.trim_start().starts_with(&format!("{}:", output.piece))).count() > 1;
    let of = |to: &str| line.replacen(&format!("use: {stated}"), &format!("use: {to}"), 1);
    made.push(guide.instead("a use that is none", output.at, &of("retial"), "unknown-word"));
    made.push(guide.instead("trim that is not sorted", output.at, &of("trim"), "trim-unsorted"));
    made.push(guide.instead("an empty use", output.at, &of("\"\""), "empty-value"));
    if !tub {
        made.push(guide.instead(
            "a use left out",
            output.at,
            &line.replacen(&format!(", use: {stated}"), "", 1),
            "final-piece-without-use",
        ));
    }
    made
}

/// Keys inside the long form.
fn inside(guide: &Guide, output: &Output) -> Vec<Mistake> {
    let line = &guide.lines[output.at];
    let add =
        |kind, text: &str, check| guide.instead(kind, output.at, &format!("{}, {text} }}", line.trim_end_matches('}').trim_end()), check);
    let mut made = vec![
        add("an unknown key of an output", "colour: red", "unknown-key"),
        add("a typical share outside its range", &format!("typical: {} %", output.share.0 / 2.0), "typical-outside-range"),
        add("a typical share as a range", "typical: 5–7 %", "value-malformed"),
        add("a side that is none", "side: middle", "unknown-word"),
        guide.instead("the share left out", output.at, &line.replacen(&format!("share: {} %, ", output.written), "", 1), "missing-key"),
        guide.instead("a brace that is not closed", output.at, line.trim_end_matches(" }"), "unclosed-bracket"),
    ];
    if !line.contains("portions:") {
        made.push(add("portions of no size", "portions: { count: 4 }", "missing-key"));
        made.push(add("portions by weight and thickness", "portions: { weight: 150–160 g, thickness: 20–25 mm }", "portions-cut-twice"));
        made.push(add("a weight of portions without a unit", "portions: { weight: 150–160 }", "unit-missing"));
        made.push(add("portions that never fit", "portions: { weight: 90–95 kg }", "portions-never-fit"));
    }
    if let Some(pieces) = line.split("pieces: ").nth(1).and_then(|rest| rest.split([',', ' ', '}']).next()) {
        let of = |to: &str| line.replacen(&format!("pieces: {pieces}"), &format!("pieces: {to}"), 1);
        made.push(guide.instead("pieces in words", output.at, &of("two"), "value-malformed"));
        made.push(guide.instead("no pieces", output.at, &of("0"), "value-out-of-bounds"));
        made.push(guide.instead("a range of pieces", output.at, &of("1–2"), "value-malformed"));
    }
    made
}

/// Counted parts, where the guide counts any.
fn counts(guide: &Guide) -> Vec<Mistake> {
    let mut made = Vec::new();
    for step in &guide.steps {
        let counted: Vec<Output> =
            guide.outputs(step).into_iter().filter(|output| guide.lines[output.at].contains("counts: { ribs: ")).collect();
        let taken_across = guide.find(step.clone(), "    cuts-through:").is_some();
        let [output] = counted.as_slice() else { continue };
        let line = &guide.lines[output.at];
        let number = line.split("{ ribs: ").nth(1).unwrap().split(' ').next().unwrap();
        let of = |to: &str| line.replacen(&format!("{{ ribs: {number}"), &format!("{{ ribs: {to}"), 1);
        made.push(guide.instead("a count as a word", output.at, &of("many"), "value-malformed"));
        made.push(guide.instead("a count upside down", output.at, &of("14–10"), "range-inverted"));
        let first_count = guide.lines.iter().position(|line| line.contains("counts: {")) == Some(output.at);
        if !taken_across && !first_count {
            let give = guide.find(step.clone(), "    give:").unwrap() + 1;
            made.push(Mistake { line: give, ..guide.instead("counted parts that grow", output.at, &of("40"), "counts-not-conserved") });
        }
    }
    made
}
