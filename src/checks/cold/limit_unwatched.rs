//! Limits of the shop that nobody is told to watch.

use crate::checks::hazard_words::and;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "limit-unwatched",
        group: Group::Cold,
        level: Level::Advice,
        what: "An entry under `stricter` does not say who watches the limit, how often, or what is done when it is missed.",
        why: "A limit that nobody watches is a wish. A plan that an inspector accepts names the limit, who watches it, when, and what happens then.",
        example: "stricter:\n  - { limit: time-out, at-most: 30 minutes }   # watch, every, if-missed",
        mend: "Add `watch`, `every` and `if-missed`.",
        source: "Codex Alimentarius, General Principles of Food Hygiene, CXC 1-1969: critical limit, monitoring, corrective action (from memory).",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for stricter in &subject.book.stricter {
        let keys = [("watch", &stricter.watch), ("every", &stricter.every), ("if-missed", &stricter.if_missed)];
        let missing: Vec<&str> = keys.iter().filter(|(_, stated)| stated.is_absent()).map(|(key, _)| *key).collect();
        let Some(limit) = stricter.limit.value().filter(|_| !missing.is_empty()) else { continue };
        let message = format!("the limit on `{}` does not say {}", limit.word(), and(missing.iter().copied()));
        report.add(CHECK.info.at(stricter.place, message).help(format!("Add {}.", and(missing))));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_limit_without_a_watch() {
        files(&[(
            "guidebook.yaml",
            "title: T
limits: eu-853
stricter:
  - { limit: time-out, at-most: 30 minutes, watch: the learner }
#   ^ advice[limit-unwatched] the limit on `time-out` does not say `every` and `if-missed`
",
        )]);
    }

    #[test]
    fn silent_where_it_is_watched() {
        files(&[(
            "guidebook.yaml",
            "title: T
limits: eu-853
stricter:
  - { limit: time-out, at-most: 30 minutes, watch: the learner, every: each piece, if-missed: Put it back. }
",
        )]);
    }
}
