//! Cautions that stand after the act that they are about.

use crate::checks::hazard_words::{because, here_and_in};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "caution-after-act",
        group: Group::Caution,
        level: Level::Fault,
        what: "A step lacks a caution that it owes, and a later step that does not owe it carries it: the caution comes after the act.",
        why: "A warning that is read when the saw has stopped has warned nobody. On the phone the learner sees one step at a time.",
        example: "- name: Saw the ribs\n  tools: [band-saw]          # no-glove-at-moving-blade belongs here\n- name: Clear the table\n  tools: [tray]\n  cautions: [no-glove-at-moving-blade]",
        mend: "Move the caution to the step that does the act, or put it beside `steps`.",
        source: "Guidebook format, \"Built-in ids\": a demand is met by a caution on the step or beside `steps`, never by another step.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let lacking = owed::cautions(subject.book, procedure, |demands| &demands.cautions);
        if lacking.is_empty() {
            continue;
        }
        let owing = owed::steps(subject.book, procedure);
        for lacking in lacking {
            for lack in &lacking.lacks {
                let caution = lack.demand.what;
                let Some(other) = owed::elsewhere(procedure, &owing, lacking.step, caution).filter(|other| other.after_act) else {
                    continue;
                };
                let (name, later) = (step_name(lacking.step), step_name(other.step));
                let reason = because(subject.book, &lack.demand.because);
                let message =
                    format!("`{caution}` stands at `{later}`, after the act: {reason} demands it at `{name}`{}", here_and_in(lack.more));
                let finding = CHECK.info.at(lacking.step.tools_key, message).also(other.place, "it stands here");
                report.add(finding.help(format!("Move `{caution}` from `{later}` to `{name}`.")));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn pork(first: &str, second: &str) {
        files(&[(
            "pork/ribs.yaml",
            &format!(
                "title: Pork ribs
species: pork
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: pork-frame, weight: 2–3 kg, temperature: 0–4 °C }}
steps:
  - name: Saw the ribs
    take: pork-frame
    do: Saw.
{first}
    minutes: 1–2
    give: {{ pork-ribs: 40–48 %, pork-chine: {{ share: rest, use: bone }} }}
    loss: 1–2 %
  - name: Weigh the ribs
    take: pork-ribs
    do: Weigh.
{second}
    minutes: 1–2
    give: {{ pork-short-ribs: {{ share: 40–48 %, use: retail }}, pork-long-ribs: {{ share: rest, use: retail }} }}
    loss: 0
"
            ),
        )]);
    }

    #[test]
    fn a_caution_behind_the_saw() {
        pork(
            "    tools: [band-saw]
#   ^^^^^ fault[caution-after-act] `saw-guard-and-pusher` stands at `Weigh the ribs`, after the act: the band saw demands it at `Saw the ribs`
    cautions: [no-glove-at-moving-blade, isolate-before-cleaning, bone-splinters]
    wear: [eye-protection]",
            "    tools: [tray]
    cautions: [saw-guard-and-pusher]",
        );
    }

    /// A later step that owes the caution itself carries its own; then the first one is missing.
    #[test]
    fn silent_where_the_later_step_owes_it_too() {
        pork(
            "    tools: [band-saw]
#   ^^^^^ fault[caution-missing] `Saw the ribs` lacks the caution `saw-guard-and-pusher`
    cautions: [no-glove-at-moving-blade, isolate-before-cleaning, bone-splinters]
    wear: [eye-protection]",
            "    tools: [band-saw]
    cautions: [no-glove-at-moving-blade, saw-guard-and-pusher, isolate-before-cleaning, bone-splinters]
    wear: [eye-protection]",
        );
    }
}
