//! A waiver of a check that is not there.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::checks::{all, find};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "check-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "A waiver, or an entry of `off`, names a check that does not exist.",
        why: "It waives nothing, and whoever wrote it believes that something was accepted.",
        example: "off:\n  - { check: picture-without-text, reason: Drawings come later. }     # refused",
        mend: "Write the id of the check as it stands in the finding.",
        source: "Guidebook format, version 1, \"A procedure\": `waivers` and `off`.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let waived = subject.book.procedures.iter().flat_map(|procedure| &procedure.waivers).filter_map(|waiver| waiver.check.given());
    let off = subject.book.off.iter().filter_map(|off| off.check.given());
    for check in waived.chain(off).filter(|check| find(&check.value).is_none()) {
        let help = nearest(&check.value, all().iter().map(|check| check.info.id))
            .map_or_else(|| "Write the id that stands in brackets in the finding.".to_owned(), |near| format!("Write `{near}`."));
        report.add(CHECK.info.at(check.place, format!("there is no check `{}`", check.value)).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{beside, files};

    #[test]
    fn a_misspelt_check() {
        beside(
            "waivers:
  - { check: picture-without-al, where: halve, reason: Comes later., by: head butcher }
#            ^^^^^^^^^^^^^^^^^^ fault[check-unknown] no check `picture-without-al`
",
        );
    }

    #[test]
    fn off() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-853
off:
  - { check: spelling, reason: Later. }
#            ^^^^^^^^ fault[check-unknown]
",
        )]);
    }

    #[test]
    fn a_check() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-853
off:
  - { check: picture-without-alt, reason: Drawings come later. }
",
        )]);
    }
}
