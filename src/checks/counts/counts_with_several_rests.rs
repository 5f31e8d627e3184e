//! A counted part of which more than one output holds the rest.

use crate::analysis::counts::CountTrouble;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};
use crate::model::Output;
use crate::model::procedure::CountSpec;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "counts-with-several-rests",
        group: Group::Counts,
        level: Level::Fault,
        what: "More than one output of a step has `rest` as its number of the same part.",
        why: "One `rest` is a number: whatever the others leave. Two of them can be anything.",
        example: "give:\n  pork-loin: { share: 55 %, counts: { ribs: rest } }\n  pork-belly: { share: rest, counts: { ribs: rest } }",
        mend: "Keep one `rest` and write the number of the other.",
        source: "Guidebook format, \"Outputs\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for trouble in &analysis.counts.troubles {
            let CountTrouble::SeveralRests { step, part } = trouble else { continue };
            let Some(step) = procedure.steps.get(*step) else { continue };
            let rests: Vec<(&str, Place)> = step.give.iter().filter_map(|output| rest(output, part)).collect();
            let [(first, _), (_, second), ..] = rests.as_slice() else { continue };
            let message = format!("`{first}` holds the rest of the {part} already");
            report.add(CHECK.info.at(*second, message).help("Write a number, such as `11`."));
        }
    }
}

/// The piece, and where it says that it holds the rest of a part.
fn rest<'a>(output: &'a Output, part: &str) -> Option<(&'a str, Place)> {
    let count = output.counts.iter().find(|count| count.part.value == part)?;
    let number = count.number.given().filter(|number| number.value == CountSpec::Rest)?;
    Some((output.piece.value.as_str(), number.place))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn two_rests_of_one_part() {
        steps(
            "steps:
  - name: Part the side
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-fore: { share: 35–40 %, counts: { ribs: rest }, use: retail }
      chicken-middle: { share: rest, counts: { ribs: rest }, use: retail }
#                                                    ^^^^ fault[counts-with-several-rests] `chicken-fore` holds the rest of the ribs already
    loss: 0
",
        );
    }

    /// Different parts have a rest each.
    #[test]
    fn silent_for_one_rest_a_part() {
        steps(
            "steps:
  - name: Part the side
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-fore: { share: 35–40 %, counts: { ribs: rest, vertebrae: 7 }, use: retail }
      chicken-middle: { share: rest, counts: { ribs: 10, vertebrae: rest }, use: retail }
    loss: 0
",
        );
    }
}
