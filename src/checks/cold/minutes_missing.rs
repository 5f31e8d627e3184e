//! Steps without minutes, which make the longest time out of the cold unknown.

use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "minutes-missing",
        group: Group::Cold,
        level: Level::Advice,
        what: "A step states no `minutes`, so it is not known how long the pieces lie out of the cold, and no limit on time can be held against the guide.",
        why: "Meat that is out too long warms through, and it is the learner, who is slowest, who leaves it out longest.",
        example: "- name: Take off the wings\n  take: chicken-body\n  # minutes: 1–2",
        mend: "Add `minutes` to the step, from a trained cutter to a learner.",
        source: "Guidebook format, \"Time out of the cold\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        // One step that was made of `yields` alone has no place for minutes.
        if procedure.steps_from_yields {
            continue;
        }
        let mut silent = procedure.steps.iter().filter(|step| step.minutes.is_absent());
        let Some(first) = silent.next() else { continue };
        let others = match silent.count() {
            0 => String::new(),
            1 => " and 1 more step state".to_owned(),
            many => format!(" and {many} more steps state"),
        };
        let states = if others.is_empty() { " states" } else { &others };
        let message = format!("`{}`{states} no minutes, so the longest time out of the cold is not known", step_name(first));
        report.add(CHECK.info.at(first.place, message).help("Add `minutes:`, from a trained cutter to a learner, as in `minutes: 2–5`."));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{procedure, steps};

    #[test]
    fn two_steps_without_minutes_are_one_advice() {
        steps(
            "steps:
  - name: Take off the legs
#   ^^^^ advice[minutes-missing] `Take off the legs` and 1 more step state no minutes
    take: chicken-whole
    do: Cut.
    give: { chicken-legs: { share: 31–35 %, use: retail }, chicken-body: rest }
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    give: { chicken-wings: { share: 15–18 %, use: retail }, chicken-crown: { share: rest, use: retail } }
    loss: 0
",
        );
    }

    #[test]
    fn silent_for_yields_alone() {
        procedure(
            "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
yields:
  chicken-legs: 31–35 %
  chicken-body: 65–69 %
",
        );
    }
}
