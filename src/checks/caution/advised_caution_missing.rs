//! Cautions that good practice puts beside a tool, and that a step leaves out.

use crate::checks::hazard_words::{and, because, here_and_in};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "advised-caution-missing",
        group: Group::Caution,
        level: Level::Advice,
        what: "A step saws or chops bone, or lifts with a hook or a hoist, without the caution that goes with it.",
        why: "Splinters and heavy pieces hurt less often than blades, so they are forgotten more easily.",
        example: "- name: Saw the chine\n  tools: [hand-saw]\n  cautions: [protect-holding-hand]      # bone-splinters goes with it",
        mend: "Add the caution to the step, or beside `steps`.",
        source: "common practice",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        for lacking in owed::cautions(subject.book, procedure, |demands| &demands.advised_cautions) {
            let ids: Vec<&str> = lacking.lacks.iter().map(|lack| lack.demand.what).collect();
            let more = lacking.lacks.iter().map(|lack| lack.more).max().unwrap_or(0);
            let Some(first) = lacking.lacks.first() else { continue };
            let name = step_name(lacking.step);
            let reason = because(subject.book, &first.demand.because);
            let message =
                format!("{} goes well with {reason}, and `{name}` does not carry it{}", and(ids.iter().copied()), here_and_in(more));
            report.add(CHECK.info.at(lacking.step.tools_key, message).help(format!("Add {} to the step's `cautions`.", and(ids))));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn a_cleaver_without_splinters() {
        steps(
            "steps:
  - name: Chop the back
    take: chicken-whole
    do: Chop.
    tools: [cleaver]
#   ^^^^^ advice[advised-caution-missing] `bone-splinters` goes well with the cleaver, and `Chop the back` does not carry it
    minutes: 1–2
    give: { chicken-back: { share: 40–48 %, use: bone }, chicken-front: { share: rest, use: retail } }
    loss: 1–2 %
",
        );
    }

    #[test]
    fn silent_for_a_knife_and_for_a_saw_that_carries_it() {
        steps(
            "steps:
  - name: Saw the back
    take: chicken-whole
    do: Saw.
    tools: [hand-saw]
    cautions: [bone-splinters]
    minutes: 1–2
    give: { chicken-back: { share: 40–48 %, use: bone }, chicken-front: { share: rest, use: retail } }
    loss: 1–2 %
",
        );
    }
}
