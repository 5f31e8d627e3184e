//! A waiver that silences nothing.

use crate::checks::waived::Idle;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject, reach};
use crate::finding::{Finding, Level};
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "waiver-without-finding",
        group: Group::Control,
        level: Level::Advice,
        what: "A waiver accepts an advice that is not given at that place: it was mended, or `where` names another place or nothing.\n\n\
               `where` is a step id (all of that step), a piece id (its entries in `give` and `yields`, its name in `take` and \
               `start`), or a key path from the top of the file or from a step: `start.weight`, `legs-off.give`, \
               `legs-off.pictures.2`. A step goes before a piece, a piece before a key. An advice about a key that is not there stands at \
               the mapping that lacks it. A waiver reaches its own file only; what is said of waivers can be turned off, not waived. \
               While the guidebook has a fault, nothing is said here.",
        why: "The guide shows a reason for a weak spot that it does not have, and the waiver would hide the next slip at that place.",
        example: "waivers:\n  - { check: picture-without-alt, where: legs, reason: Drawings come later., by: head butcher }    # the step is `legs-off`",
        mend: "Take the waiver out, or write in `where` the step, the piece or the key at which the advice is given.",
        source: "Guidebook format, version 1, `waivers`: one advice at one place.",
    },
    run: Run::OfWaivers(run),
};

fn run(subject: &Subject<'_>, idle: &[Idle<'_>], report: &mut Report) {
    for idle in idle {
        report.add(if idle.target_known { nothing_there(idle) } else { no_place(subject, idle) });
    }
}

fn nothing_there(idle: &Idle<'_>) -> Finding {
    let message = format!("`{}` gives no advice at `{}` that this waiver could accept", idle.check, idle.target.value);
    CHECK.info.at(idle.waiver.place, message).help("Take the waiver out, or name the place at which the advice is given.")
}

fn no_place(subject: &Subject<'_>, idle: &Idle<'_>) -> Finding {
    let message = format!("`{}` names no step, no piece and no key of this guide", idle.target.value);
    let near = nearest(&idle.target.value, reach::names(idle.procedure, subject.sources));
    let help = near.map_or_else(|| "Write the id of the step, the piece, or the key.".to_owned(), |near| format!("Write `{near}`."));
    CHECK.info.at(idle.target.place, message).help(help)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    const CAREFULLY: &str = "steps:
  - name: Halve
    take: chicken-whole
    do: Cut carefully along the keel.
    minutes: 1–2
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
";
    const TOLD: &str = "    do: Cut carefully along the keel.
#           ^^^^^^^^^ advice[vague-words]
";

    fn told() -> String {
        CAREFULLY.replace("    do: Cut carefully along the keel.\n", TOLD)
    }

    #[test]
    fn a_step_or_a_key_of_it_is_reached() {
        for place in ["halve", "halve.do", "steps.1.do", "steps"] {
            steps(&format!("waivers: [{{ check: vague-words, where: {place}, reason: They know it., by: lead }}]\n{CAREFULLY}"));
        }
    }

    #[test]
    fn another_key_of_the_step() {
        steps(&format!(
            "waivers:
  - {{ check: vague-words, where: halve.give, reason: They know it., by: lead }}
#   ^ advice[waiver-without-finding] `vague-words` gives no advice at `halve.give`
{}",
            told()
        ));
    }

    #[test]
    fn a_piece_is_not_its_step() {
        steps(&format!(
            "waivers:
  - {{ check: vague-words, where: chicken-half, reason: They know it., by: lead }}
#   ^ advice[waiver-without-finding] at `chicken-half`
{}",
            told()
        ));
    }

    #[test]
    fn a_place_that_is_not_there() {
        steps(&format!(
            "waivers:
  - {{ check: vague-words, where: halves, reason: They know it., by: lead }}
#                                ^^^^^^ advice[waiver-without-finding] `halves` names no step, no piece and no key
{}",
            told()
        ));
    }

    #[test]
    fn what_is_said_of_waivers_is_turned_off_and_not_waived() {
        let idle = "  - { check: vague-words, where: title, reason: They know it., by: lead }\n";
        let waived = "  - { check: waiver-without-finding, where: waivers, reason: Never mind., by: lead }\n";
        steps(&format!(
            "waivers:
{idle}#   ^ advice[waiver-without-finding] at `title`
{waived}#   ^ advice[waiver-without-finding] at `waivers`
{}",
            told()
        ));
        files(&[
            (
                "guidebook.yaml",
                "title: Shop\nlimits: eu-853\noff: [{ check: waiver-without-finding, reason: We tidy in May. }, { check: vague-words, reason: Later. }]\n",
            ),
            ("chicken/whole.yaml", &format!("{}waivers:\n{idle}{CAREFULLY}", crate::checks::testing::HEAD)),
        ]);
    }

    #[test]
    fn silent_while_there_is_a_fault() {
        steps(&format!(
            "waivers: [{{ check: picture-without-alt, where: halve, reason: They know it., by: lead }}]
level: learner
purpse: To learn it.
#^10:1 fault[unknown-key]
{}",
            told()
        ));
    }
}
