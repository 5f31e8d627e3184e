//! A guidebook that is held against nobody's limits.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "profile-missing",
        group: Group::Cold,
        level: Level::Advice,
        what: "`guidebook.yaml` names no profile under `limits`, so temperatures and times are held against nothing.",
        why: "A guide may then start from meat at any temperature and keep it out for any time, and nobody is told.",
        example: "title: Our shop\n# limits: uk-retail",
        mend: "Add `limits` with the profile of the place where the guides are used.",
        source: "Guidebook format, \"Time out of the cold\" and \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    if !subject.book.limits.is_absent() || subject.book.title.is_broken() {
        return;
    }
    let profiles: Vec<&str> = subject.book.builtin.profiles.keys().map(String::as_str).collect();
    let message = "no profile of limits: temperatures and times are held against nothing";
    report.add(CHECK.info.at(subject.book.place, message).help(format!("Add `limits:` with one of {}.", profiles.join(", "))));
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_guidebook_without_limits() {
        files(&[("guidebook.yaml", "title: Our shop\n#^1:1 advice[profile-missing] no profile of limits\n")]);
    }

    #[test]
    fn silent_with_a_profile() {
        files(&[("guidebook.yaml", "title: Our shop\nlimits: canada\n")]);
    }
}
