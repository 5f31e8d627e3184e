//! A species whose anatomy and limits nobody knows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "species-unknown",
        group: Group::Reference,
        level: Level::Fault,
        what: "The species of a procedure is not built in, and no `anatomy/<species>.yaml` says whose anatomy it shares.",
        why: "The species decides which limits hold and which bones there are. Nothing of that can be checked for a species that nobody knows.",
        example: "# bison/rump.yaml\nspecies: bison       # without anatomy/bison.yaml\n# anatomy/bison.yaml\nlike: cattle         # now it is known",
        mend: "Write `like:` with a built-in group into `anatomy/<species>.yaml`, or mend the name of the folder.",
        source: "Guidebook format, version 1, \"Built-in ids\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let mut told: Vec<&str> = Vec::new();
    for procedure in &book.procedures {
        let Some(species) = procedure.species.given() else { continue };
        let name = species.value.as_str();
        let anatomy = format!("anatomy/{name}.yaml");
        let known = book.builtin.species.contains_key(name) || book.anatomy_like.contains_key(name) || known::is_broken(book, &anatomy);
        if known || told.contains(&name) {
            continue;
        }
        told.push(name);
        let others = book.procedures.iter().filter(|other| other.species.value().is_some_and(|other| other == name)).count() - 1;
        let more = match others {
            0 => String::new(),
            1 => " (here and in 1 more guide)".to_owned(),
            many => format!(" (here and in {many} more guides)"),
        };
        let message = format!("`{name}` is not a built-in species, and no `{anatomy}` says whose anatomy it shares{more}");
        let help = match nearest(name, book.builtin.species.keys().map(String::as_str)) {
            Some(near) => format!("Rename the folder to `{near}` and write `species: {near}`."),
            None => format!("Write `like: cattle`, or another group, into `{anatomy}`."),
        };
        report.add(CHECK.info.at(species.place, message).help(help));
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_species_of_its_own() {
        files(&[
            ("bison/rump.yaml", "title: Half
species: bison
#        ^^^^^ fault[species-unknown] `anatomy/bison.yaml`
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: bison-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: bison-whole, do: Cut along the keel., minutes: 1–2, give: { bison-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }

    #[test]
    fn one_finding_for_all_guides_of_the_species() {
        files(&[
            ("bison/a.yaml", "title: Half
species: bison
#        ^^^^^ fault[species-unknown] in 1 more guide
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: bison-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: bison-whole, do: Cut along the keel., minutes: 1–2, give: { bison-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
            ("bison/b.yaml", "title: Another half
species: bison
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: bison-rump, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: bison-rump, do: Cut along the keel., minutes: 1–2, give: { bison-steak: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }

    #[test]
    fn a_species_like_another() {
        files(&[
            ("anatomy/bison.yaml", "like: cattle
"),
            ("bison/rump.yaml", "title: Half
species: bison
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: bison-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: bison-whole, do: Cut along the keel., minutes: 1–2, give: { bison-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
        ]);
    }
}
