//! Protection that nobody knows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::meant;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "wear-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "A protection under `wear`, or in `tools.yaml`, is not built in.",
        why: "Which glove is demanded and which is forbidden turns on its id. A misspelt one protects nobody.",
        example: "wear: [mesh-glove]          # refused\nwear: [mesh-gauntlet]",
        mend: "Write the id of a built-in protection.",
        source: "Guidebook format, version 1, \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let builtin = &subject.book.builtin.wear;
    for wear in known::named_wear(subject.book) {
        if builtin.contains_key(&wear.value) {
            continue;
        }
        let all = || builtin.keys().map(String::as_str);
        let help = meant(&wear.value, all())
            .map_or_else(|| format!("Write one of {}.", all().collect::<Vec<_>>().join(", ")), |near| format!("Write {near}."));
        report.add(CHECK.info.at(wear.place, format!("`{}` is not a built-in protection", wear.value)).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    #[test]
    fn a_misspelt_glove() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    tools: [tray]
    wear: [cut-gloves]
#          ^^^^^^^^^^ fault[wear-unknown] `cut-gloves`
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }

    #[test]
    fn a_tool_of_the_shop() {
        files(&[(
            "tools.yaml",
            "tub:
  name: Tub
  never: [scarf]
#         ^^^^^ fault[wear-unknown] `scarf`
",
        )]);
    }

    #[test]
    fn what_is_built_in() {
        steps(
            "steps:
  - name: Halve
    take: chicken-whole
    do: Cut along the keel.
    minutes: 1–2
    wear: [mesh-gauntlet, cut-glove, arm-guard, mesh-apron, non-slip-boots]
    give:
      chicken-half: { share: 98–100 %, pieces: 2, use: retail }
    loss: 0–2 %
",
        );
    }
}
