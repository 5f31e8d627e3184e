//! Anatomical parts that no anatomy knows.

use crate::analysis::anatomy::Anatomy;
use crate::checks::named_parts::{each_once, here_and_in};
use crate::checks::nearest::nearest;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "part-unknown",
        group: Group::Anatomy,
        level: Level::Fault,
        what: "A step or an output names an anatomical part that is neither built in for any species nor in the guidebook's `anatomy/<species>.yaml`.",
        why: "Without the part there is nothing to show when the learner asks where it lies, and nothing to check its count or its way to the bin against.",
        example: "species: pork\nsteps:\n  - { anatomy: [tenderlion-muscle] }      # tenderloin-muscle",
        mend: "Write the id of the part, or any of its other names with hyphens, or add it to `anatomy/<species>.yaml`.",
        source: "Guidebook format, \"Other documents\": anatomy.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(anatomy) = Anatomy::of_procedure(subject.book, procedure) else { continue };
        for named in each_once(procedure) {
            let id = named.name.value.as_str();
            if anatomy.id_of(id).is_some() || subject.book.builtin.groups_with(id, anatomy.group).next().is_some() {
                continue;
            }
            let all: Vec<&str> = anatomy.parts().map(|part| part.id).collect();
            let help = nearest(id, all.iter().copied()).map_or_else(
                || format!("Name a known part, or add `{id}:` to `anatomy/{}.yaml`.", anatomy.species),
                |near| format!("Write `{near}`."),
            );
            let message = format!("no anatomy knows `{id}`{}", here_and_in(named.more));
            report.add(CHECK.info.at(named.name.place, message).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    #[test]
    fn a_misspelt_part_is_told_once() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    anatomy: [femor, oyster]
#             ^^^^^ fault[part-unknown] no anatomy knows `femor` (here and in 1 more place)
    minutes: 1–2
    give: { chicken-legs: { share: 31–35 %, use: retail }, chicken-body: rest }
    loss: 0
  - name: Take off the wings
    take: chicken-body
    do: Cut.
    anatomy: [femor]
    minutes: 1–2
    give:
      chicken-wings: { share: 15–18 %, use: retail, counts: { flanges: 2 } }
#                                                             ^^^^^^^ fault[part-unknown] no anatomy knows `flanges`
      chicken-crown: { share: rest, use: retail }
    loss: 0
",
        );
    }

    /// Another name of a part serves as well, and so does a part of the guidebook.
    #[test]
    fn silent_for_other_names_and_parts_of_the_guidebook() {
        files(&[
            ("anatomy/chicken.yaml", "kernel-of-the-neck: { name: Kernel, kind: gland, regions: [neck] }\n"),
            (
                "chicken/whole.yaml",
                &format!(
                    "{}steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    anatomy: [thigh-bone, kernel-of-the-neck]
    minutes: 1–2
    give: {{ chicken-legs: {{ share: 31–35 %, use: retail }}, chicken-body: {{ share: rest, holds: [kernel], use: inedible }} }}
    loss: 0
",
                    crate::checks::testing::HEAD
                ),
            ),
        ]);
    }
}
