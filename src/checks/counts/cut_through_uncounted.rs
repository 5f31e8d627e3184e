//! An output of a sawn part that gives no number of its own.

use crate::analysis::counts::CountTrouble;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Output;
use crate::model::words::Use;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "cut-through-uncounted",
        group: Group::Counts,
        level: Level::Advice,
        what: "A step saws across a part, and an output that can hold some of it does not say how many.",
        why: "Sawn parts lie in several pieces at once, so no number follows from the others. A piece without one cannot be checked at the next step.",
        example: "- cuts-through: [ribs]\n  give:\n    pork-loin: { share: 55 %, counts: { ribs: 11 } }\n    pork-belly: rest          # how many ribs?",
        mend: "Add `counts` with the part to each output; write 0 where none is in it.",
        source: "Guidebook format, \"Outputs\": each output of a step that saws across a part names its own count.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for trouble in &analysis.counts.troubles {
            let CountTrouble::CutThroughSilent { step, part, outputs } = trouble else { continue };
            let Some(step) = procedure.steps.get(*step) else { continue };
            let silent: Vec<&Output> = outputs.iter().filter_map(|at| step.give.get(*at)).filter(|output| can_hold(output)).collect();
            let Some(first) = silent.first() else { continue };
            let names: Vec<String> = silent.iter().map(|output| format!("`{}`", output.piece.value)).collect();
            let message = format!("the step saws across {part}, and {} names no number of them", names.join(", "));
            report.add(CHECK.info.at(first.place, message).help(format!("Add `counts: {{ {part}: 0 }}`, or how many there are.")));
        }
    }
}

/// Trim, skin and offal hold no counted parts.
fn can_hold(output: &Output) -> bool {
    !matches!(output.purpose.value(), Some(Use::LeanTrim | Use::FatTrim | Use::Skin | Use::Offal))
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
    fn an_output_without_a_number() {
        steps(&format!(
            "{RIBS}  - name: Saw the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
      chicken-loin: {{ share: 52–58 %, counts: {{ ribs: 10–14 }}, use: retail }}
      chicken-belly: {{ share: rest, use: retail }}
#                    ^ advice[cut-through-uncounted] `chicken-belly` names no number
    cuts-through: [ribs]
    loss: 0.1–0.4 %
"
        ));
    }

    #[test]
    fn silent_for_trim() {
        steps(&format!(
            "{RIBS}  - name: Saw the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
      chicken-loin: {{ share: 52–58 %, counts: {{ ribs: 10–14 }}, use: retail }}
      chicken-belly: {{ share: rest, counts: {{ ribs: 10–14 }}, use: retail }}
      chicken-fat: {{ share: 1–2 %, use: fat-trim }}
    cuts-through: [ribs]
    loss: 0.1–0.4 %
"
        ));
    }
}
