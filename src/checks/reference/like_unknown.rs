//! A group of species that is not built in.

use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "like-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "An anatomy file says under `like` that its species is built like a group that is not built in.",
        why: "Bones, glands and counts of the species are then unknown, and checks that need them stay silent.",
        example: "# anatomy/bison.yaml\nlike: cow         # refused\nlike: cattle",
        mend: "Write the name of a built-in group.",
        source: "Guidebook format, version 1, \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let builtin = &subject.book.builtin.species;
    let mut groups: Vec<&str> = builtin.values().map(|species| species.group.as_str()).collect();
    groups.sort_unstable();
    groups.dedup();
    for like in subject.book.anatomy_like.values() {
        if groups.contains(&like.value.as_str()) {
            continue;
        }
        let meant = builtin.get(&like.value).map(|species| species.group.as_str()).or_else(|| nearest(&like.value, groups.iter().copied()));
        let help = meant.map_or_else(|| format!("Write one of {}.", groups.join(", ")), |group| format!("Write `like: {group}`."));
        report.add(CHECK.info.at(like.place, format!("`{}` is not a built-in group of species", like.value)).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_species_instead_of_its_group() {
        files(&[(
            "anatomy/bison.yaml",
            "like: beef
#     ^^^^ fault[like-unknown] `beef` is not a built-in group
",
        )]);
    }

    #[test]
    fn a_group() {
        files(&[(
            "anatomy/bison.yaml",
            "like: cattle
",
        )]);
    }
}
