//! A waiver of what nobody may waive.

use crate::checks::find;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "check-not-waivable",
        group: Group::Reference,
        level: Level::Fault,
        what: "A waiver, or an entry of `off`, names a check that makes faults, or one of the groups balance, caution and cold.",
        why: "A fault means that the guide is wrong or can hurt. Accepting it in writing makes neither better.",
        example: "waivers:\n  - { check: shares-exceed-whole, where: legs-off, reason: It is close., by: lead }    # refused",
        mend: "Mend what the check finds, and take the waiver out.",
        source: "Guidebook format, version 1, \"A procedure\": no fault, and nothing of the groups balance, caution and cold, can be waived.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let waived = subject.book.procedures.iter().flat_map(|procedure| &procedure.waivers).filter_map(|waiver| waiver.check.given());
    let off = subject.book.off.iter().filter_map(|off| off.check.given());
    for named in waived.map(|check| (check, "waived")).chain(off.map(|check| (check, "turned off"))) {
        let (check, done) = named;
        let Some(info) = find(&check.value).map(|check| &check.info) else { continue };
        if info.can_be_waived() {
            continue;
        }
        let why = if info.level == Level::Fault {
            "for it makes faults".to_owned()
        } else {
            format!("for it belongs to the group {}", info.group.word())
        };
        let finding = CHECK.info.at(check.place, format!("`{}` can't be {done}, {why}", check.value));
        report.add(finding.help("Mend what it finds, and take this entry out."));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::beside;

    #[test]
    fn a_fault() {
        beside(
            "waivers:
  - { check: shares-exceed-whole, where: halve, reason: It is close., by: lead }
#            ^^^^^^^^^^^^^^^^^^^ fault[check-not-waivable] `shares-exceed-whole` can't be waived
",
        );
    }

    #[test]
    fn an_advice_of_another_group() {
        beside(
            "waivers:
  - { check: picture-without-alt, where: halve, reason: Drawings come later., by: head butcher }
#   ^ advice[waiver-without-finding]
",
        );
    }
}
