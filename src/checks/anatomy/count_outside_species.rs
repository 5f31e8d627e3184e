//! More ribs, vertebrae or other counted parts than the animal has.

use crate::analysis::anatomy::Anatomy;
use crate::analysis::part_counts::{TooMany, too_many};
use crate::checks::hazard_words::inside;
use crate::checks::weight::step_name;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Level, Place};
use crate::model::{Guidebook, Procedure};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "count-outside-species",
        group: Group::Anatomy,
        level: Level::Fault,
        what: "An output, or the outputs of a step together, hold more of a counted part than this species has: 14 ribs on a side of beef. Pieces that can be of both sides may hold both sides' parts. A number that was written from memory makes advice.",
        why: "A rib too many means that somebody counted from the wrong end, and the line moves by a rib on every animal after that.",
        example: "species: beef\nsteps:\n  - give: { beef-rib: { share: 20 %, counts: { ribs: 14 } } }    # beef has 13 a side",
        mend: "Correct the number. Where a piece holds both sides of the animal, say `side: both`.",
        source: "University of Guelph, meat laboratory notes by H. J. Swatland, laboratory 8.1, table of vertebrae by region: thoracic vertebrae 13 in beef, 13 to 17 in pork, 13 to 14 in lamb; each carries a pair of ribs.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        let Some(anatomy) = Anatomy::of_procedure(subject.book, procedure) else { continue };
        for found in too_many(subject.book, procedure, analysis, &anatomy) {
            let Some((place, holds)) = words(procedure, &found, &anatomy) else { continue };
            let side = if found.paired { " a side" } else { "" };
            let memory = if found.sure { "" } else { " (from memory)" };
            let message = format!(
                "{holds} {} {}, and {} has {}{side}{memory}",
                found.found,
                found.part.replace('-', " "),
                species(subject.book, &anatomy),
                found.most
            );
            let finding = if found.sure { CHECK.info.at(place, message) } else { CHECK.info.advice_at(place, message) };
            report.add(finding.help("Correct the number; where the piece holds both sides of the animal, add `side: both`."));
        }
    }
}

/// Where too many stand, and who holds them.
fn words(procedure: &Procedure, found: &TooMany<'_>, anatomy: &Anatomy<'_>) -> Option<(Place, String)> {
    let step = procedure.steps.get(found.step)?;
    let Some(output) = found.output.and_then(|output| step.give.get(output)) else {
        return Some((step.give_key, format!("the outputs of `{}` hold together", step_name(step))));
    };
    let count = output.counts.iter().find(|count| anatomy.is(&count.part.value, found.part))?;
    let place = count.number.given().map_or(count.part.place, |number| number.place);
    Some((place, format!("`{}` holds", output.piece.value)))
}

fn species(book: &Guidebook, anatomy: &Anatomy<'_>) -> String {
    book.builtin.species.get(anatomy.species).map_or_else(|| format!("`{}`", anatomy.species), |known| inside(&known.name))
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn guide(species: &str, cuts: &str, start: &str, give: &str) {
        let text = format!(
            "title: A side
species: {species}
age: under 12 months
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: {start}, weight: 20–30 kg, temperature: 2–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Part the side
    take: {start}
    do: Cut.
    minutes: 1–2
{give}
    loss: 0
"
        );
        files(&[(&format!("cuts/{species}.yaml"), cuts), (&format!("{species}/side.yaml"), &text)]);
    }

    const TAIL: &str = "tail: { name: Tail }\n";

    const ONE: &str = "    give:
      fore: { share: 40–50 %, use: retail }
      hind: { share: rest, use: retail, counts: { ribs: NUMBER } }
";

    fn ribs(species: &str, number: &str, finding: &str) {
        let give = format!("{}{finding}", ONE.replace("NUMBER", number));
        guide(species, &format!("{species}-side: {{ name: Side, per-animal: 2 }}\n"), &format!("{species}-side"), &give);
    }

    #[test]
    fn more_ribs_than_a_side_has() {
        let caret = |text: &str| format!("#                                                       ^ fault[count-outside-species] {text}\n");
        ribs("beef", "14", &caret("`hind` holds 14 ribs, and beef has 13 a side"));
        ribs("pork", "18", &caret("`hind` holds 18 ribs, and pork has 13–17 a side"));
        ribs("pork", "10–18", &caret("`hind` holds 10–18 ribs"));
        ribs("lamb", "15", &caret("`hind` holds 15 ribs, and lamb has 13–14 a side"));
    }

    #[test]
    fn the_outputs_together() {
        guide(
            "beef",
            TAIL,
            "beef-forequarter",
            "    give:
#   ^^^^ fault[count-outside-species] the outputs of `Part the side` hold together 14 ribs, and beef has 13 a side
      fore: { share: 40–50 %, use: retail, counts: { ribs: 6 } }
      hind: { share: rest, use: retail, counts: { ribs: 8 } }",
        );
    }

    /// Both sides together may hold twice as many, and ribs that are sawn across lie in both pieces.
    #[test]
    fn silent_for_both_sides_and_sawn_ribs() {
        for (species, number) in [("beef", "13"), ("pork", "10–14"), ("pork", "17"), ("lamb", "14")] {
            ribs(species, number, "");
        }
        let both = ONE.replace("NUMBER", "26");
        guide("beef", TAIL, "beef-carcass", &both);
        guide("beef", TAIL, "beef-ribs", &both.replace("use: retail, counts", "use: retail, pieces: 2, counts"));
        guide("chicken", TAIL, "chicken-bird", &ONE.replace("NUMBER", "14"));
        guide(
            "beef",
            TAIL,
            "beef-forequarter",
            "    give:
      fore: { share: 40–50 %, use: retail, counts: { ribs: 13 } }
      hind: { share: rest, use: retail, counts: { ribs: 13 } }
    cuts-through: [ribs]",
        );
    }
}
