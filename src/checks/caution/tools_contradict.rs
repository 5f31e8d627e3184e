//! Tools that cannot be used in one step, because one demands what the other forbids.

use crate::checks::hazard_words::{because, sets, the_tool};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::{Procedure, Step};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "tools-contradict",
        group: Group::Caution,
        level: Level::Fault,
        what: "One tool of a step demands hand protection that another tool of the same step forbids. Of a choice of tools only one is taken: its tools may differ from each other, but each of them must fit the other tools of the step.",
        why: "Whoever follows the step is either bare-handed at the knife or gloved at the running saw. Both have cost hands.",
        example: "- name: Part the loin\n  tools: [boning-knife, band-saw]   # glove on, and no glove",
        mend: "Split the step: the knife work in one, the saw work in the next, each with its own `wear`.",
        source: "Guidebook format, \"Built-in ids\": tools in one step whose demands contradict each other are a fault.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let mut shared = false;
        for owing in owed::steps(subject.book, procedure) {
            let Some(first) = owing.demands.contradictions.first() else { continue };
            // Tools beside `steps` are one mistake, told at the first step that has them.
            if owing.step.tools.is_absent() && std::mem::replace(&mut shared, true) {
                continue;
            }
            let (knife, saw) = (because(subject.book, &first.demand.because), the_tool(subject.book, first.forbidden_by));
            let name = step_name(owing.step);
            let message = format!("in `{name}` {knife} demands {}, and {saw} forbids it", sets(&first.demand.what));
            let help = if is_choice(procedure, owing.step) {
                format!("Write one step for {knife} and one for {saw}, or name only one of them.")
            } else {
                format!("Split `{name}`: {knife} in one step, {saw} in another.")
            };
            report.add(CHECK.info.at(owing.step.tools_key, message).help(help));
        }
    }
}

/// True when the step offers a choice of tools.
fn is_choice(procedure: &Procedure, step: &Step) -> bool {
    let tools = step.tools.value().or_else(|| procedure.tools.value());
    tools.into_iter().flatten().any(|choice| choice.value.any_of.len() > 1)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn pork(tools: &str) {
        files(&[(
            "pork/ribs.yaml",
            &format!(
                "title: Pork ribs
species: pork
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: pork-frame, weight: 2–3 kg, temperature: 0–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body, no-glove-at-moving-blade, saw-guard-and-pusher, isolate-before-cleaning, bone-splinters]
steps:
  - name: Saw the ribs
    take: pork-frame
    do: Saw.
{tools}
    minutes: 1–2
    give: {{ pork-ribs: {{ share: 40–48 %, use: retail }}, pork-chine: {{ share: rest, use: bone }} }}
    loss: 1–2 %
"
            ),
        )]);
    }

    /// With or without the glove, the step cannot be right; it has this one fault.
    #[test]
    fn a_knife_and_a_band_saw() {
        pork(
            "    wear: [mesh-gauntlet, eye-protection]
    tools: [boning-knife, band-saw]
#   ^^^^^ fault[tools-contradict] the boning knife demands `mesh-gauntlet`, or `cut-glove` with `arm-guard`, and the band saw forbids it",
        );
    }

    /// Whoever takes the band saw is bare-handed at the knife, whatever else could have been taken.
    #[test]
    fn a_choice_must_fit_the_other_tools() {
        for tools in
            ["boning-knife, { any-of: [hand-saw, band-saw] }", "{ any-of: [boning-knife, cleaver] }, { any-of: [mincer, band-saw] }"]
        {
            pork(&format!(
                "    wear: [eye-protection]
    tools: [{tools}]
#   ^^^^^ fault[tools-contradict] the boning knife demands `mesh-gauntlet`, or `cut-glove` with `arm-guard`, and the"
            ));
        }
        pork(
            "    wear: [eye-protection]
    tools: [mincer, { any-of: [band-saw, hand-saw] }]
#   ^^^^^ fault[tools-contradict] the hand saw demands `cut-glove`, or `mesh-gauntlet`, and the mincer forbids it",
        );
    }

    /// One saw or the other: nothing has to be worn for both at once.
    #[test]
    fn a_choice_does_not_contradict_itself() {
        pork("    wear: [eye-protection]\n    tools: [{ any-of: [band-saw, hand-saw] }]");
    }

    #[test]
    fn silent_where_something_can_be_worn() {
        pork("    wear: [cut-glove, mesh-apron]\n    tools: [{ any-of: [cleaver, hand-saw] }]");
    }
}
