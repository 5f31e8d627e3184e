//! Counted parts that do not come out as they went in.

use crate::analysis::anatomy::Anatomy;
use crate::analysis::counts::CountTrouble;
use crate::analysis::part_counts::too_many;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, weight};
use crate::finding::Level;
use crate::model::Procedure;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "counts-not-conserved",
        group: Group::Counts,
        level: Level::Fault,
        what: "The outputs of a step together hold more or fewer ribs, vertebrae or other counted parts than the piece that the step takes.",
        why: "A rib that is in no piece is in the trim, and a rib too many is a line in the wrong place. The count is how a cutter finds the line again.",
        example: "- give: { pork-middle: { share: rest, counts: { ribs: 11 } } }\n- take: pork-middle\n  give:\n    pork-loin: { share: 55 %, counts: { ribs: 6 } }\n    pork-belly: { share: rest, counts: { ribs: 4 } }   # one rib is missing",
        mend: "Correct a number, write `rest` for one output, or add `cuts-through` where the part is sawn across.",
        source: "Guidebook format, \"Outputs\": the outputs' numbers add up to what the input is known to hold.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        for trouble in &analysis.counts.troubles {
            let CountTrouble::NotConserved { step, part, taken, given } = trouble else { continue };
            // A number that no animal of the species has is wrong where it stands, and is told there.
            if outside_species(subject, procedure, analysis, part, *step) {
                continue;
            }
            let Some(step) = procedure.steps.get(*step) else { continue };
            let (by, side) =
                if given.low > taken.high { (given.low - taken.high, "too many") } else { (taken.low - given.high, "missing") };
            let name = weight::step_name(step);
            let message = format!("`{name}` takes {taken} {part} and gives {given}: {by} {side}");
            report.add(
                CHECK.info.at(step.give_key, message).help(format!("Make the {part} add up to {taken}, or write `rest` for one output.")),
            );
        }
    }
}

/// True when an earlier step counts more of the part than the species has.
fn outside_species(subject: &Subject<'_>, procedure: &Procedure, analysis: &ProcedureAnalysis, part: &str, step: usize) -> bool {
    let Some(anatomy) = Anatomy::of_procedure(subject.book, procedure) else { return false };
    too_many(subject.book, procedure, analysis, &anatomy).iter().any(|found| found.step < step && anatomy.is(part, found.part))
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

    /// What follows from numbers that are wrong stays silent.
    #[test]
    fn a_rib_too_many() {
        steps(&format!(
            "{RIBS}  - name: Part the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[counts-not-conserved] `Part the middle` takes 10–14 ribs and gives 15: 1 too many
      chicken-loin: {{ share: 52–58 %, counts: {{ ribs: 9 }}, use: retail }}
      chicken-belly: {{ share: rest, counts: {{ ribs: 6 }} }}
    loss: 0
  - name: Part the belly
    take: chicken-belly
    do: Cut.
    minutes: 1–2
    give:
      chicken-flank: {{ share: 52–58 %, counts: {{ ribs: 5 }}, use: retail }}
      chicken-point: {{ share: rest, use: retail }}
    loss: 0
"
        ));
    }

    #[test]
    fn a_rib_missing() {
        steps(&format!(
            "{RIBS}  - name: Part the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[counts-not-conserved] takes 10–14 ribs and gives 8–9: 1 missing
      chicken-flank: {{ share: 52–58 %, counts: {{ ribs: 8–9 }}, use: retail }}
      chicken-point: {{ share: rest, use: retail }}
    loss: 0
"
        ));
    }

    /// `rest` holds what is left, a part that no output names is followed no further, and a part that is sawn
    /// across lies in both outputs.
    #[test]
    fn silent_where_they_can_add_up() {
        steps(&format!(
            "{RIBS}  - name: Saw the middle
    take: chicken-middle
    do: Cut.
    minutes: 1–2
    give:
      chicken-loin: {{ share: 52–58 %, counts: {{ ribs: 10–14 }} }}
      chicken-belly: {{ share: rest, counts: {{ ribs: 10–14 }}, use: retail }}
    cuts-through: [ribs]
    loss: 0.1–0.4 %
  - name: Part the loin
    take: chicken-loin
    do: Cut.
    minutes: 1–2
    give:
      chicken-chop: {{ share: 52–58 %, counts: {{ ribs: 4 }} }}
      chicken-roast: {{ share: rest, counts: {{ ribs: rest }}, use: retail }}
    loss: 0
  - name: Bone the chop
    take: chicken-chop
    do: Cut.
    minutes: 1–2
    give:
      chicken-eye: {{ share: 52–58 %, use: retail }}
      chicken-bone: {{ share: rest, use: bone }}
    loss: 0
"
        ));
    }
}
