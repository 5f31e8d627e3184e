//! A tub that is taken before the last step that fills it.

use crate::analysis::order::OrderFault;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "piece-given-after-taken",
        group: Group::Order,
        level: Level::Fault,
        what: "A step takes a piece of which a later step gives more.",
        why: "What comes off later lies in a tub that nobody takes any more, and the yield of the step that took it is too low.",
        example: "- take: lamb-trim\n- give: { lamb-trim: 5–9 % }   # more of it, too late",
        mend: "Move the step that takes the tub behind the last one that fills it, or give the later piece another id.",
        source: "Guidebook format, \"Tubs\": a piece is taken after the last step that gives it.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for fault in &analysis.network.faults {
            let OrderFault::TakenBeforeComplete { at, given_by } = fault else { continue };
            let (Some(step), Some(giver)) = (procedure.steps.get(at.step), procedure.steps.get(given_by.step)) else { continue };
            let Some(name) = step.take.get(at.take) else { continue };
            let message = format!("`{}` is not all there yet: step {} gives more of it", name.value, given_by.step + 1);
            let help = format!("Move this step behind `{}`.", weight::step_name(giver));
            report.add(CHECK.info.at(name.place, message).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    const HEADLESS: &str = "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: 10 %
      chicken-body: rest
    loss: 0
";

    #[test]
    fn a_tub_taken_too_early() {
        steps(&format!(
            "{HEADLESS}  - name: Sort the bits
    take: chicken-bits
#         ^^^^^^^^^^^^ fault[piece-given-after-taken] `chicken-bits` is not all there yet: step 3 gives more of it
    do: Sort.
    minutes: 1–2
    give:
      chicken-mince: {{ share: rest, use: retail }}
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: 15–18 %
      chicken-crown: {{ share: rest, use: retail }}
    loss: 0
"
        ));
    }

    #[test]
    fn silent_for_a_tub_that_is_full() {
        steps(&format!(
            "{HEADLESS}  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give:
      chicken-bits: 15–18 %
      chicken-crown: {{ share: rest, use: retail }}
    loss: 0
  - name: Sort the bits
    take: chicken-bits
    do: Sort.
    minutes: 1–2
    give:
      chicken-mince: {{ share: rest, use: retail }}
    loss: 0
"
        ));
    }
}
