//! Protection that good practice puts on, and that a step leaves out: eyes at the saw, a cover over a cut glove.

use crate::checks::hazard_words::{because, here_and_in, sets};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "advised-protection-missing",
        group: Group::Caution,
        level: Level::Advice,
        what: "A step at the band saw wears no eye protection, or a cut glove meets food that is eaten raw and no single-use glove covers it.",
        why: "Bone dust and splinters fly at eye height. The weave of a cut glove holds the juice of the last piece.",
        example: "- name: Saw the ribs\n  tools: [band-saw]\n  wear: []                    # eye-protection",
        mend: "Add it to the step's `wear`.",
        source: "Eyes: common practice. Gloves: FDA Food Code, 3-304.15, read in Washington Administrative Code 246-215-03342, 2022.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        for lacking in owed::protection(subject.book, procedure, |demands| &demands.advised_wear) {
            for lack in &lacking.lacks {
                let reason = because(subject.book, &lack.demand.because);
                let wanted = sets(&lack.demand.what);
                let message = format!(
                    "{wanted} goes well with {reason}, and `{}` does not wear it{}",
                    step_name(lacking.step),
                    here_and_in(lack.more)
                );
                report.add(CHECK.info.at(lacking.step.tools_key, message).help(format!("Add {wanted} to `wear`.")));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    #[test]
    fn a_saw_without_eye_protection() {
        steps(
            "steps:
  - name: Saw the back
    take: chicken-whole
    do: Saw.
    tools: [band-saw]
#   ^^^^^ advice[advised-protection-missing] `eye-protection` goes well with the band saw, and `Saw the back` does not wear it
    cautions: [no-glove-at-moving-blade, saw-guard-and-pusher, isolate-before-cleaning, bone-splinters]
    wear: []
    minutes: 1–2
    give: { chicken-back: { share: 40–48 %, use: bone }, chicken-front: { share: rest, use: retail } }
    loss: 1–2 %
",
        );
    }

    fn raw_salmon(wear: &str) {
        files(&[(
            "salmon/sashimi.yaml",
            &format!(
                "title: Salmon for raw service
species: salmon
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: salmon-side, weight: 1–2 kg, temperature: 0–2 °C }}
served-raw: true
parasites: frozen
cautions: [protect-holding-hand, parasite-freezing, cover-cut-glove-for-raw-service]
steps:
  - name: Cut the blocks
    take: salmon-side
    do: Cut.
    tools: [slicing-knife]
{wear}
    minutes: 1–2
    give: {{ salmon-block: {{ share: 80–90 %, use: retail }}, salmon-lean-trim: {{ share: rest, use: lean-trim }} }}
    loss: 0
"
            ),
        )]);
    }

    #[test]
    fn a_bare_cut_glove_on_raw_fish() {
        raw_salmon(
            "#   ^^^^^ advice[advised-protection-missing] `disposable-gloves` goes well with a cut glove on food that is eaten raw\n    wear: [cut-glove]",
        );
    }

    #[test]
    fn silent_where_the_glove_is_covered() {
        raw_salmon("    wear: [cut-glove, disposable-gloves]");
        raw_salmon("    wear: [mesh-gauntlet]");
    }
}
