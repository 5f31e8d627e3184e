//! Steps that can hurt and do not carry the caution that says so.

use crate::checks::hazard_words::{and, because, here_and_in, of_number};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Procedure;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "caution-missing",
        group: Group::Caution,
        level: Level::Fault,
        what: "A step uses a tool, draws the blade toward the body, or meets a part or a fish that demands a caution, and carries it neither itself nor beside `steps`.",
        why: "The caution is what stands before the act on every screen and sheet. Without it the learner meets the hazard first and the warning never.",
        example: "- name: Saw the ribs\n  tools: [band-saw]\n  cautions: [saw-guard-and-pusher, isolate-before-cleaning]\n  # no-glove-at-moving-blade is missing",
        mend: "Add the caution to the step's `cautions`, or beside `steps` where every step needs it.",
        source: "Guidebook format, \"Built-in ids\", the table of demands; each caution names its own source. Knives: WorkSafe Victoria, Safe use of knives in the meat and food industry. Saws: US Occupational Safety and Health Administration, Safeguarding Equipment and Protecting Employees from Amputations (OSHA 3170), 2007.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        tell(subject, procedure, report);
    }
}

fn tell(subject: &Subject<'_>, procedure: &Procedure, report: &mut Report) {
    let book = subject.book;
    let lacking = owed::cautions(book, procedure, |demands| &demands.cautions);
    if lacking.is_empty() {
        return;
    }
    let owing = owed::steps(book, procedure);
    for lacking in lacking {
        let elsewhere = |caution: &str| owed::elsewhere(procedure, &owing, lacking.step, caution);
        // One that stands after the act is told by the check of that.
        let lacks: Vec<_> = lacking.lacks.iter().filter(|lack| !elsewhere(lack.demand.what).is_some_and(|other| other.after_act)).collect();
        let Some(first) = lacks.first() else { continue };
        let ids: Vec<&str> = lacks.iter().map(|lack| lack.demand.what).collect();
        let same = lacks.iter().all(|lack| lack.demand.because == first.demand.because);
        let more = lacks.iter().map(|lack| lack.more).max().unwrap_or(0);
        let name = step_name(lacking.step);
        let reason =
            if same { format!("{} demands", because(book, &first.demand.because)) } else { "what it uses and cuts demands".to_owned() };
        let message = format!(
            "`{name}` lacks the caution{} {}: {reason} {}{}",
            of_number(ids.len(), "", "s"),
            and(ids.iter().copied()),
            of_number(ids.len(), "it", "them"),
            here_and_in(more)
        );
        let mut finding = CHECK.info.at(lacking.step.tools_key, message);
        for id in &ids {
            if let Some(other) = elsewhere(id) {
                finding = finding.also(other.place, format!("`{id}` stands here, and covers `{}` alone", step_name(other.step)));
            }
        }
        let place = if more > 0 { "beside `steps`" } else { "to the step's `cautions`, or beside `steps`" };
        report.add(finding.help(format!("Add {} {place}.", and(ids.iter().copied()))));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    #[test]
    fn a_knife_without_its_cautions() {
        files(&[(
            "chicken/whole.yaml",
            "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    tools: [boning-knife, cutting-board]
#   ^^^^^ fault[caution-missing] `Take off the legs` lacks the cautions `protect-holding-hand` and `blade-away-from-body`: the boning knife demands them
    wear: [mesh-gauntlet]
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: rest
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    tools: [{ any-of: [boning-knife, poultry-shears] }]
#   ^^^^^ fault[caution-missing] `Take off the wings` lacks the caution `blade-away-from-body`: the boning knife demands it
    cautions: [protect-holding-hand]
    wear: [mesh-gauntlet]
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail }
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        )]);
    }

    /// A caution on one step does not cover the next, and what stands beside `steps` covers all.
    #[test]
    fn silent_where_the_step_or_the_guide_carries_it() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    tools: [fillet-knife]
    wear: [cut-glove]
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: rest, use: retail }
    loss: 0
",
        );
    }

    const LOOSE: &str = "title: Whole chicken
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
tools: [slicing-knife]
wear: [cut-glove]
steps:
";

    /// Tools beside `steps` without a caution beside them are one mistake.
    #[test]
    fn tools_beside_steps_are_told_once() {
        files(&[(
            "chicken/whole.yaml",
            &format!(
                "{LOOSE}  - name: Take off the legs
#   ^^^^ fault[caution-missing] lacks the caution `protect-holding-hand`: the slicing knife demands it (here and in 1 more step)
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give: {{ chicken-legs: {{ share: 31–35 %, use: retail }}, chicken-body: rest }}
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give: {{ chicken-wings: {{ share: 15–18 %, use: retail }}, chicken-crown: {{ share: rest, use: retail }} }}
    loss: 0
"
            ),
        )]);
        files(&[(
            "chicken/whole.yaml",
            &format!(
                "{LOOSE}  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    cautions: [protect-holding-hand]
    minutes: 1–2
    give: {{ chicken-legs: {{ share: 31–35 %, use: retail }}, chicken-body: rest }}
    loss: 0
  - name: Take off the wings
#   ^^^^ fault[caution-missing] `Take off the wings` lacks
    take: chicken-body
    do: Cut.
    minutes: 1–2
    give: {{ chicken-wings: {{ share: 15–18 %, use: retail }}, chicken-crown: {{ share: rest, use: retail }} }}
    loss: 0
"
            ),
        )]);
    }
}
