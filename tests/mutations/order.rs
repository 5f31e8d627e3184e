//! Mistakes in the order of the work: steps swapped, left out, written twice; pieces taken twice.

use std::ops::Range;

use super::guide::{Guide, Mistake, spread};

/// All of them.
pub(crate) fn mistakes(guide: &Guide) -> Vec<Mistake> {
    [swapped(guide), doubled(guide), taken(guide), misspelt(guide), left_out(guide), gap(guide), after(guide)].concat()
}

fn take(guide: &Guide, step: &Range<usize>) -> (usize, String) {
    let at = guide.find(step.clone(), "    take:").unwrap();
    (at, guide.lines[at].trim_start_matches("    take:").trim().to_owned())
}

fn gives(guide: &Guide, step: &Range<usize>, piece: &str) -> bool {
    guide.outputs(step).iter().any(|output| output.piece == piece)
}

/// Steps whose order is turned round although the later takes what the earlier gives.
fn swapped(guide: &Guide) -> Vec<Mistake> {
    let pairs: Vec<(Range<usize>, Range<usize>)> = guide
        .steps
        .windows(2)
        .filter(|pair| gives(guide, &pair[0], &take(guide, &pair[1]).1))
        .map(|pair| (pair[0].clone(), pair[1].clone()))
        .collect();
    spread(&pairs)
        .into_iter()
        .map(|(one, other)| {
            let lines = |range: Range<usize>| guide.lines[range].iter().map(String::as_str);
            let turned: Vec<&str> = lines(other.clone()).chain(lines(one.end..other.start)).chain(lines(one.clone())).collect();
            // The later step now stands where the earlier one stood.
            let line = one.start + (take(guide, &other).0 - other.start) + 1;
            guide.replaced("two steps swapped", one.start..other.end, &turned, "piece-used-before-made", line)
        })
        .collect()
}

fn doubled(guide: &Guide) -> Vec<Mistake> {
    let ids: Vec<(usize, usize)> = guide
        .steps
        .windows(2)
        .filter_map(|pair| Some((guide.find(pair[0].clone(), "    id:")?, guide.find(pair[1].clone(), "    id:")?)))
        .collect();
    spread(&ids)
        .into_iter()
        .map(|(first, second)| guide.instead("two steps with one id", second, &guide.lines[first], "doubled-step-id"))
        .collect()
}

/// A step that takes what an earlier one took.
fn taken(guide: &Guide) -> Vec<Mistake> {
    let takes: Vec<(usize, String)> = guide.steps.iter().map(|step| take(guide, step)).collect();
    let pairs: Vec<(usize, String)> = takes.windows(2).map(|pair| (pair[1].0, pair[0].1.clone())).collect();
    spread(&pairs)
        .into_iter()
        .map(|(at, earlier)| guide.instead("a piece taken twice", at, &format!("    take: {earlier}"), "piece-used-twice"))
        .collect()
}

/// A piece misspelt where it is given; a later step takes it by its right name.
fn misspelt(guide: &Guide) -> Vec<Mistake> {
    let takes: Vec<(usize, String)> = guide.steps.iter().map(|step| take(guide, step)).collect();
    let given: Vec<(usize, String)> = guide
        .steps
        .iter()
        .flat_map(|step| guide.outputs(step))
        .filter_map(|output| {
            takes.iter().find(|(_, piece)| *piece == output.piece).map(|(taken_at, piece)| (output.at, *taken_at, piece.clone()))
        })
        .map(|(at, taken_at, piece)| (at.max(taken_at), at.min(taken_at), piece))
        .map(|(later, earlier, piece)| (later * 10_000 + earlier, piece))
        .collect();
    spread(&given)
        .into_iter()
        .map(|(packed, piece)| {
            let (taken_at, given_at) = (packed / 10_000, packed % 10_000);
            let wrong = guide.lines[given_at].replacen(&piece, &format!("{piece}x"), 1);
            Mistake { line: taken_at + 1, ..guide.instead("a given piece misspelt", given_at, &wrong, "piece-unknown") }
        })
        .collect()
}

fn left_out(guide: &Guide) -> Vec<Mistake> {
    // What the last step took is now final, and has no use.
    let last = guide.steps.last().unwrap().clone();
    let piece = take(guide, &last).1;
    let giver = guide.steps.iter().flat_map(|step| guide.outputs(step)).find(|output| output.piece == piece);
    let tub_uses_elsewhere = guide.outputs(&last).iter().all(|output| guide.lines[output.at].contains("use: "));
    giver
        .filter(|_| tub_uses_elsewhere)
        .map(|giver| guide.replaced("the last step left out", last, &[], "final-piece-without-use", giver.at + 1))
        .into_iter()
        .collect()
}

/// A step left out whose one taken piece a later step still takes.
fn gap(guide: &Guide) -> Vec<Mistake> {
    let takes: Vec<(usize, String)> = guide.steps.iter().map(|step| take(guide, step)).collect();
    let mut made = Vec::new();
    for step in &guide.steps {
        let taken: Vec<usize> = guide
            .outputs(step)
            .iter()
            .filter_map(|output| takes.iter().find(|(_, piece)| *piece == output.piece))
            .map(|(at, _)| *at)
            .collect();
        let on_one_line = guide.outputs(step).iter().all(|output| guide.lines[output.at].contains(&output.piece));
        if let ([at], true) = (taken.as_slice(), on_one_line) {
            made.push(guide.replaced("a step left out", step.clone(), &[], "piece-unknown", at - step.len() + 1));
        }
    }
    spread(&made)
}

fn after(guide: &Guide) -> Vec<Mistake> {
    let named: Vec<usize> = (0..guide.lines.len()).filter(|at| guide.lines[*at].starts_with("      - step: ")).collect();
    spread(&named)
        .into_iter()
        .map(|at| guide.instead("an order after a step that is not there", at, "      - step: nobody-did-it", "after-unknown-step"))
        .collect()
}
