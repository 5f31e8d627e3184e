//! Gloves where a running blade or worm can catch them.

use crate::analysis::demands::wear_of;
use crate::checks::hazard_words::{and, the_tool};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "protection-forbidden",
        group: Group::Caution,
        level: Level::Fault,
        what: "A step with a band saw wears a glove, or one with a mincer, slicing machine or tenderizer wears a cut or mesh glove, or the shop's own tool forbids what is worn.",
        why: "A running blade catches a glove and pulls the hand in after it. Mesh does not stop a driven blade; it is drawn in as one piece.",
        example: "- name: Saw the ribs\n  tools: [band-saw]\n  wear: [mesh-gauntlet, eye-protection]   # take the gauntlet out",
        mend: "Take the glove out of the step's `wear`. Where it comes from beside `steps`, give the step a `wear` of its own.",
        source: "US Occupational Safety and Health Administration, letter of 17 April 1992 on Program Directive 100-49 (mesh at running power equipment), and Safeguarding Equipment and Protecting Employees from Amputations (OSHA 3170), 2007, meat band saws (gloves caught by the blade).",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let mut told: Vec<Place> = Vec::new();
        for owing in owed::steps(subject.book, procedure) {
            // Tools that contradict each other are one mistake, and no glove mends it.
            if !owing.contradicted.is_empty() {
                continue;
            }
            let worn = wear_of(procedure, owing.step).unwrap_or(&[]);
            let by = |id: &str| owing.demands.never.iter().find(|(never, _)| *never == id).map(|(_, tool)| *tool);
            let forbidden: Vec<_> = worn.iter().filter_map(|own| Some((own, by(&own.value)?))).collect();
            let inherited = owing.step.wear.is_absent();
            let Some((first, tool)) = forbidden.first() else { continue };
            let name = step_name(owing.step);
            if inherited {
                // One list beside `steps` is one mistake, however many gloves stand in it.
                if told.contains(&first.place) {
                    continue;
                }
                told.push(first.place);
                let ids = and(forbidden.iter().map(|(own, _)| own.value.as_str()));
                let kept = worn.iter().filter(|own| by(&own.value).is_none()).map(|own| own.value.as_str()).collect::<Vec<_>>();
                let message =
                    format!("`{name}` takes {ids} from beside `steps` to {}, which can catch a glove", the_tool(subject.book, tool));
                let finding = CHECK.info.at(first.place, message).also(owing.step.place, "the step has no `wear` of its own");
                report.add(finding.help(format!("Give `{name}` its own `wear: [{}]`.", kept.join(", "))));
            } else {
                for (own, tool) in &forbidden {
                    let message =
                        format!("`{}` at {}, which can catch a glove and pull the hand in", own.value, the_tool(subject.book, tool));
                    report.add(CHECK.info.at(own.place, message).help(format!("Take `{}` out of the `wear` of `{name}`.", own.value)));
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn pork(beside: &str, lines: &str) {
        files(&[(
            "pork/ribs.yaml",
            &format!(
                "title: Pork ribs
species: pork
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: pork-frame, weight: 2–3 kg, temperature: 0–4 °C }}
cautions: [no-glove-at-moving-blade, saw-guard-and-pusher, isolate-before-cleaning, bone-splinters]
{beside}
steps:
  - name: Saw the ribs
    take: pork-frame
    do: Saw.
{lines}
    minutes: 1–2
    give: {{ pork-ribs: {{ share: 40–48 %, use: retail }}, pork-chine: {{ share: rest, use: bone }} }}
    loss: 1–2 %
"
            ),
        )]);
    }

    #[test]
    fn gloves_at_the_band_saw() {
        pork(
            "level: month two",
            "    tools: [band-saw]
    wear: [mesh-gauntlet, eye-protection, disposable-gloves]
#          ^^^^^^^^^^^^^ fault[protection-forbidden] `mesh-gauntlet` at the band saw
#                                         ^^^^^^^^^^^^^^^^^ fault[protection-forbidden] `disposable-gloves` at the band saw",
        );
    }

    /// Nobody knows which of the two is taken, so the glove that the one asks for stays off for the sake of the other.
    #[test]
    fn gloves_where_the_band_saw_is_a_choice() {
        pork(
            "level: month two",
            "    tools: [{ any-of: [hand-saw, band-saw] }]
    cautions: [protect-holding-hand]
    wear: [cut-glove, eye-protection]
#          ^^^^^^^^^ fault[protection-forbidden] `cut-glove` at the band saw",
        );
    }

    #[test]
    fn gloves_from_beside_the_steps() {
        pork(
            "wear: [mesh-gauntlet, cut-glove, eye-protection]
#      ^^^^^^^^^^^^^ fault[protection-forbidden] takes `mesh-gauntlet` and `cut-glove` from beside `steps` to the band saw",
            "    tools: [band-saw]",
        );
    }

    /// A mincer forbids cut and mesh gloves only, and an arm guard is no glove.
    #[test]
    fn silent_for_what_may_be_worn() {
        pork("wear: [mesh-gauntlet, cut-glove]", "    tools: [band-saw]\n    wear: [eye-protection, arm-guard, mesh-apron]");
        pork("level: month two", "    tools: [mincer]\n    wear: [disposable-gloves]");
    }
}
