//! Steps that owe protection and wear none that serves.

use crate::analysis::demands::wear_of;
use crate::checks::hazard_words::{and, because, here_and_in, sets};
use crate::checks::owed;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Spanned;
use crate::model::builtin::demands::WearDemand;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "protection-missing",
        group: Group::Caution,
        level: Level::Fault,
        what: "A step uses a tool, or draws the blade toward the body, and names no protection that serves against it.",
        why: "Most cuts go into the hand and forearm that hold the piece. A boning knife stabs through a cut glove above a bare wrist, and a blade that comes toward the body needs an apron in its way.",
        example: "- name: Bone the shoulder\n  tools: [boning-knife]\n  wear: [cut-glove]          # the forearm is open: add arm-guard, or wear mesh-gauntlet",
        mend: "Add what is missing to the step's `wear`, or to the one beside `steps`.",
        source: "Guidebook format, \"Built-in ids\", the table of demands; WorkSafe Victoria, Safe use of knives in the meat and food industry; US Occupational Safety and Health Administration, Standard 01-06-001 on 29 CFR 1910.132(a), 1978.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        for lacking in owed::protection(subject.book, procedure, |demands| &demands.wear) {
            let worn = wear_of(procedure, lacking.step).unwrap_or(&[]);
            let demands: Vec<String> = lacking
                .lacks
                .iter()
                .map(|lack| format!("{} demands {}", because(subject.book, &lack.demand.because), sets(&lack.demand.what)))
                .collect();
            let more = lacking.lacks.iter().map(|lack| lack.more).max().unwrap_or(0);
            let message = format!("{}, and `{}` wears {}{}", demands.join("; "), step_name(lacking.step), list(worn), here_and_in(more));
            let nearest: Vec<&str> = lacking.lacks.iter().flat_map(|lack| completion(&lack.demand.what, worn)).collect();
            let help = format!("Add {} to `wear`.", and(nearest));
            report.add(CHECK.info.at(lacking.step.tools_key, message).help(help));
        }
    }
}

fn list(worn: &[Spanned<String>]) -> String {
    if worn.is_empty() { "nothing".to_owned() } else { and(worn.iter().map(|own| own.value.as_str())) }
}

/// What is missing of the set that needs the least more.
fn completion<'d>(demand: &'d WearDemand, worn: &[Spanned<String>]) -> Vec<&'d str> {
    let missing = |set: &'d Vec<String>| -> Vec<&'d str> {
        set.iter().map(String::as_str).filter(|id| !worn.iter().any(|own| own.value == *id)).collect()
    };
    demand.any_of.iter().map(missing).min_by_key(Vec::len).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    fn legs(lines: &str) {
        steps(&format!(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
{lines}
    minutes: 1–2
    give:
      chicken-legs: {{ share: 31–35 %, use: retail }}
      chicken-body: {{ share: rest, use: retail }}
    loss: 0
"
        ));
    }

    #[test]
    fn a_boning_knife_with_an_open_forearm() {
        legs(
            "    tools: [cutting-board, boning-knife]
#   ^^^^^ fault[protection-missing] the boning knife demands `mesh-gauntlet`, or `cut-glove` with `arm-guard`, and `Take off the legs` wears `cut-glove` and `non-slip-boots`
    wear: [cut-glove, non-slip-boots]",
        );
    }

    /// What a boning knife asks for serves a slicing knife as well, so one finding is enough.
    #[test]
    fn two_knives_and_bare_hands() {
        legs(
            "    tools: [slicing-knife, boning-knife]
#   ^^^^^ fault[protection-missing] the boning knife demands `mesh-gauntlet`, or `cut-glove` with `arm-guard`, and `Take off the legs` wears nothing
    wear: []",
        );
    }

    #[test]
    fn drawn_toward_the_body_without_an_apron() {
        legs(
            "    draws: toward-body
    cautions: [apron-when-drawing-in]
    tools: [boning-knife]
#   ^^^^^ fault[protection-missing] a blade that is drawn toward the body demands `mesh-apron`
    wear: [mesh-gauntlet]",
        );
    }

    #[test]
    fn silent_where_one_set_is_worn() {
        legs("    tools: [boning-knife]\n    wear: [arm-guard, cut-glove]");
        legs("    tools: [cleaver]\n    cautions: [bone-splinters]\n    wear: [cut-glove]");
        legs("    tools: [tray]\n    wear: []");
    }
}
