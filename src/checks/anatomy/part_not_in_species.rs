//! Parts of another animal.

use crate::analysis::anatomy::Anatomy;
use crate::checks::hazard_words::{and, inside};
use crate::checks::named_parts::{each_once, here_and_in, kinds, of_kind};
use crate::checks::nearest::nearest;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Guidebook;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "part-not-in-species",
        group: Group::Anatomy,
        level: Level::Fault,
        what: "A step or an output names a part that other animals have and this species has not: an aitch bone in a bird, a keel in a pig.",
        why: "A learner looks for a landmark that is not there, and cuts where another bone is.",
        example: "species: chicken\nsteps:\n  - { anatomy: [aitch-bone] }            # a bird has none",
        mend: "Name the part that this species has, or add it to `anatomy/<species>.yaml` if the built-in list lacks it.",
        source: "Built-in anatomy: University of Guelph, meat laboratory notes by H. J. Swatland, laboratory 8.1, for vertebrae; each other entry names its own source or says that it is common practice.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    for procedure in &book.procedures {
        let Some(anatomy) = Anatomy::of_procedure(book, procedure) else { continue };
        for named in each_once(procedure) {
            let id = named.name.value.as_str();
            if anatomy.id_of(id).is_some() {
                continue;
            }
            let others: Vec<_> = book.builtin.groups_with(id, anatomy.group).collect();
            let Some((_, kind)) = others.first() else { continue };
            let groups = others.iter().map(|(group, _)| plain(group)).collect::<Vec<_>>();
            let message = format!("{} has no `{id}`; {} have it{}", species(book, anatomy.species), list(&groups), here_and_in(named.more));
            let all = of_kind(&anatomy, Some(*kind), |_| true);
            let help = match nearest(id, all.iter().copied()) {
                Some(near) => format!("Write `{near}` if that is meant."),
                None => format!("Name one of its {}: {}.", kinds(Some(*kind)), and(all)),
            };
            report.add(CHECK.info.at(named.name.place, message).help(help));
        }
    }
}

fn species(book: &Guidebook, species: &str) -> String {
    book.builtin.species.get(species).map_or_else(|| format!("`{species}`"), |known| inside(&known.name))
}

/// A group of species in plain words.
fn plain(group: &str) -> String {
    match group {
        "bird" => "birds".to_owned(),
        "pig" => "pigs".to_owned(),
        "goat" => "goats".to_owned(),
        "rabbit" => "rabbits".to_owned(),
        other => other.replace('-', " "),
    }
}

fn list(groups: &[String]) -> String {
    match groups {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::steps;

    #[test]
    fn an_aitch_bone_in_a_chicken() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    anatomy: [aitch-bone, hip-joint]
#             ^^^^^^^^^^ fault[part-not-in-species] chicken has no `aitch-bone`; cattle, deer, goats, pigs and sheep have it
    minutes: 1–2
    give: { chicken-legs: { share: 31–35 %, use: retail }, chicken-body: { share: rest, use: retail } }
    loss: 0
",
        );
    }

    #[test]
    fn silent_for_a_part_that_it_has() {
        steps(
            "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    anatomy: [keel, wishbone]
    minutes: 1–2
    give: { chicken-legs: { share: 31–35 %, use: retail }, chicken-body: { share: rest, use: retail } }
    loss: 0
",
        );
    }
}
