//! A tub about which two steps say different things.

use crate::analysis::facts::{Agreed, output_at};
use crate::analysis::network::Giving;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};
use crate::model::{Output, Procedure, Stated};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "tub-stated-differently",
        group: Group::Balance,
        level: Level::Fault,
        what: "Several steps give the same piece, and its `use`, `pieces` or `portions` differ between them.",
        why: "One id is one tub. What lies in it can have one use, one number and one way to be portioned; told twice, one of the two is wrong.",
        example: "- give: { lamb-trim: { share: 3–6 %, use: lean-trim } }\n- give: { lamb-trim: { share: 5–9 %, use: fat-trim } }",
        mend: "Write the same in both steps, leave it out in the later one, or give the later piece an id of its own.",
        source: "Guidebook format, \"Tubs\": stated at least once and never differently.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for (piece, facts) in analysis.network.pieces.iter().zip(&analysis.facts) {
            let id = piece.id.as_str();
            // A piece that is taken should have no use at all, which is a fault of its own.
            if let (Agreed::Differs { value, at, other, other_at }, None) = (&facts.purpose, piece.taken_by) {
                let what = Words { id, key: "use", first: value.word().to_owned(), later: other.word().to_owned() };
                tell(procedure, [*at, *other_at], &what, |output| place(&output.purpose), report);
            }
            if let Agreed::Differs { value, at, other, other_at } = &facts.pieces {
                let what = Words { id, key: "pieces", first: value.to_string(), later: other.to_string() };
                tell(procedure, [*at, *other_at], &what, |output| place(&output.pieces), report);
            }
            if let Agreed::Differs { at, other_at, .. } = &facts.portions {
                let what = Words { id, key: "portions", first: String::new(), later: String::new() };
                tell(procedure, [*at, *other_at], &what, |output| place(&output.portions), report);
            }
        }
    }
}

/// What a finding names: the piece, the key, and both values where they are short.
struct Words<'a> {
    id: &'a str,
    key: &'a str,
    first: String,
    later: String,
}

fn place<T>(stated: &Stated<T>) -> Option<Place> {
    stated.given().map(|given| given.place)
}

fn tell(procedure: &Procedure, at: [Giving; 2], words: &Words<'_>, place: impl Fn(&Output) -> Option<Place>, report: &mut Report) {
    let [first, later] = at;
    let Some(place) = output_at(procedure, later).and_then(place) else { return };
    let Words { id, key, .. } = words;
    let step = first.step + 1;
    let (message, help) = if words.first.is_empty() {
        (
            format!("the `{key}` of the tub `{id}` differ from those of step {step}"),
            format!("Write the same `{key}:` as there, or leave it out here."),
        )
    } else {
        let message = format!("`{key}` of the tub `{id}` is `{}` here and `{}` in step {step}", words.later, words.first);
        (message, format!("Write `{key}: {}`, or leave it out here.", words.first))
    };
    report.add(CHECK.info.at(place, message).help(help));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn each_fact_at_the_later_value() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: { share: 10 %, use: lean-trim, pieces: 2, portions: { weight: 10–20 g } }
      chicken-body: rest
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: { share: 10 %, use: fat-trim, pieces: 3, portions: { weight: 10–30 g } }
#                                       ^^^^^^^^ fault[tub-stated-differently] `use` of the tub `chicken-bits` is `fat-trim` here and `lean-trim` in step 1
#                                                         ^ fault[tub-stated-differently] `pieces` of the tub `chicken-bits` is `3` here and `2` in step 1
#                                                                      ^ fault[tub-stated-differently] the `portions` of the tub `chicken-bits` differ from those of step 1
      chicken-crown: { share: rest, use: retail }
",
        );
    }

    #[test]
    fn silent_where_the_later_step_says_the_same_or_nothing() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: 10 %
      chicken-fat: { share: 1–2 %, use: fat-trim }
      chicken-body: rest
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: { share: 10 %, use: lean-trim }
      chicken-fat: { share: 1–2 %, use: fat-trim }
      chicken-crown: { share: rest, use: retail }
",
        );
    }
}
