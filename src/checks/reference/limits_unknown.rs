//! A profile of limits that is not built in.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::meant;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "limits-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "`limits` in `guidebook.yaml` names a profile that is not built in.",
        why: "Temperatures and times would be held against nothing, and the guide would look checked.",
        example: "limits: eu          # refused\nlimits: eu-853",
        mend: "Write the id of a built-in profile.",
        source: "Guidebook format, version 1, \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some(limits) = subject.book.limits.given() else { return };
    let profiles = &subject.book.builtin.profiles;
    if profiles.contains_key(&limits.value) {
        return;
    }
    let all = || profiles.keys().map(String::as_str);
    let help = meant(&limits.value, all())
        .map_or_else(|| format!("Write one of {}.", all().collect::<Vec<_>>().join(", ")), |near| format!("Write {near}."));
    report.add(CHECK.info.at(limits.place, format!("`{}` is not a built-in profile of limits", limits.value)).help(help));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_misspelt_profile() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: eu-835
#       ^^^^^^ fault[limits-unknown] `eu-835` is not a built-in profile
",
        )]);
    }

    #[test]
    fn a_profile() {
        files(&[(
            "guidebook.yaml",
            "title: Our shop
limits: uk-retail
",
        )]);
    }
}
