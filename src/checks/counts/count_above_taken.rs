//! An output that holds more of a sawn part than was there.

use crate::analysis::counts::CountTrouble;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "count-above-taken",
        group: Group::Counts,
        level: Level::Fault,
        what: "A step saws across a part, and an output names more of it than the step takes. Where only the high end of a range is above, it is advice.",
        why: "A saw makes no ribs. The number on the label is wrong, and the next cutter counts to it.",
        example: "- take: pork-middle            # 11 ribs\n  cuts-through: [ribs]\n  give:\n    pork-loin: { share: 55 %, counts: { ribs: 12 } }",
        mend: "Correct the number: each output holds at most what the step takes.",
        source: "Guidebook format, \"Outputs\": none above what was taken.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for trouble in &analysis.counts.troubles {
            let CountTrouble::AboveTaken { step, output, part, taken, given } = trouble else { continue };
            let Some(output) = procedure.steps.get(*step).and_then(|step| step.give.get(*output)) else { continue };
            let count = output.counts.iter().find(|count| count.part.value == *part);
            let Some(place) = count.and_then(|count| count.number.given()).map(|number| number.place) else { continue };
            let piece = &output.piece.value;
            let by = given.high - taken.high;
            let finding = if given.low > taken.high {
                CHECK.info.at(place, format!("`{piece}` holds {given} {part}, and the step takes {taken}: {by} too many"))
            } else {
                CHECK.info.advice_at(
                    place,
                    format!("`{piece}` may hold {given} {part}, and the step takes {taken}: the high end is {by} too many"),
                )
            };
            report.add(finding.help(format!("Write `{part}: {taken}`, or fewer.")));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    const RIBS: &str = "steps:
  - name: Part the side
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-fore: { share: 35–40 %, counts: { ribs: 3 }, use: retail }
      chicken-middle: { share: rest, counts: { ribs: 10–14 } }
    loss: 0
";

    #[test]
    fn more_than_the_saw_can_find() {
        steps(&format!(
            "{RIBS}  - name: Saw the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
      chicken-loin: {{ share: 52–58 %, counts: {{ ribs: 15 }}, use: retail }}
#                                                     ^^ fault[count-above-taken] `chicken-loin` holds 15 ribs, and the step takes 10–14: 1 too many
      chicken-belly: {{ share: rest, counts: {{ ribs: 12–16 }}, use: retail }}
#                                                   ^^^^^ advice[count-above-taken] the high end is 2 too many
    cuts-through: [ribs]
    loss: 0.1–0.4 %
"
        ));
    }

    /// Fewer than were taken is fine: a slip of the saw leaves a rib whole.
    #[test]
    fn silent_up_to_what_was_taken() {
        steps(&format!(
            "{RIBS}  - name: Saw the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
      chicken-loin: {{ share: 52–58 %, counts: {{ ribs: 10–14 }}, use: retail }}
      chicken-belly: {{ share: rest, counts: {{ ribs: 9–13 }}, use: retail }}
    cuts-through: [ribs]
    loss: 0.1–0.4 %
"
        ));
    }
}
