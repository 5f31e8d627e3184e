//! The animal's left against the animal's right.

use std::collections::BTreeMap;

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::Side;
use crate::model::{Procedure, Spanned, Stated, Step};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "sides-do-not-pair",
        group: Group::Counts,
        level: Level::Fault,
        what: "A step, an output or a picture names the other side than the piece that is worked on.",
        why: "Left and right are mirror images. With the picture of the other side beside the board the first cut goes to the wrong end.",
        example: "start: { piece: pork-side, side: left }\nsteps:\n  - name: Take off the leg\n    pictures:\n      - { file: pictures/leg.svg, side: right }",
        mend: "Correct the side, or leave it out. Left and right are the animal's, never the cutter's.",
        source: "Guidebook format, \"On a step\": `side` is the animal's. That guides mix sides is common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        walk(procedure, report);
    }
}

/// The one side of each piece; `None` for both, or not stated.
type Sides<'a> = BTreeMap<&'a str, Option<Spanned<Side>>>;

/// Follows the side of each piece from the start on; a side stated later holds from there.
fn walk<'a>(procedure: &'a Procedure, report: &mut Report) {
    let mut sides: Sides<'a> = BTreeMap::new();
    if let Some(piece) = procedure.start.piece.value() {
        sides.insert(piece.as_str(), one(&procedure.start.side));
    }
    for step in &procedure.steps {
        let worked = worked_on(step, &sides);
        compare(&step.side, worked, "a step on the", "takes a piece of the", report);
        let held = one(&step.side).or(worked);
        for picture in &step.pictures {
            compare(&picture.side, held, "a picture of the", "beside work on the", report);
        }
        for output in &step.give {
            compare(&output.side, held, "a piece of the", "comes of the", report);
            // Where the two differ a finding tells it, and what is worked on holds. A tub of both sides has none.
            let side = held.or_else(|| one(&output.side));
            let known = sides.entry(output.piece.value.as_str()).or_insert(side);
            *known = known.filter(|known| side.is_some_and(|side| side.value == known.value));
        }
    }
}

/// The one side that all taken pieces have.
fn worked_on(step: &Step, sides: &Sides<'_>) -> Option<Spanned<Side>> {
    let mut taken = step.take.iter().map(|piece| sides.get(piece.value.as_str()).copied().flatten());
    let first = taken.next()??;
    taken.all(|other| other.is_some_and(|other| other.value == first.value)).then_some(first)
}

/// A stated side that is one of the two.
fn one(side: &Stated<Side>) -> Option<Spanned<Side>> {
    side.given().copied().filter(|side| side.value != Side::Both)
}

fn compare(side: &Stated<Side>, held: Option<Spanned<Side>>, what: &str, other: &str, report: &mut Report) {
    let (Some(side), Some(held)) = (one(side), held) else { return };
    if side.value == held.value {
        return;
    }
    let (wrong, right) = (side.value.word(), held.value.word());
    let message = format!("{what} {wrong} side {other} {right} side");
    report.add(CHECK.info.at(side.place, message).also(held.place, "stated here").help(format!("Write `side: {right}`.")));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{procedure, steps};

    #[test]
    fn each_against_what_holds_there() {
        procedure(
            "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-half, weight: 0.8–1.0 kg, side: left, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Take off the leg
    take: chicken-half
    do: Cut.
    minutes: 1–2
    give:
      chicken-leg: { share: 31–35 %, use: retail, side: right }
#                                                       ^^^^^ fault[sides-do-not-pair] a piece of the right side comes of the left side
      chicken-body: rest
    loss: 0
  - name: Take off the wing
    take: chicken-body
    do: Cut.
    minutes: 1–2
    side: right
#         ^^^^^ fault[sides-do-not-pair] a step on the right side takes a piece of the left side
    give:
      chicken-wing: { share: 15–18 %, use: retail, side: right }
      chicken-breast: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// A whole bird gives a left and a right, and joined they are both.
    #[test]
    fn silent_where_both_sides_are_there() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    side: both
    minutes: 1–2
    give:
      chicken-left-leg: { share: 15–17 %, side: left }
      chicken-right-leg: { share: 15–17 %, side: right }
      chicken-body: { share: rest, use: retail }
    loss: 0
  - name: Tie the legs
    take: [chicken-left-leg, chicken-right-leg]
    do: Tie them.
    minutes: 1–2
    give:
      chicken-pair: { share: rest, use: retail, side: both }
    loss: 0
",
        );
    }
}
