//! Guides in which law turns on the age of the animal, and that do not state it.

use crate::analysis::anatomy::Anatomy;
use crate::analysis::cold_limits::profile_of;
use crate::analysis::risk_material::{entries, named};
use crate::checks::hazard_words::{and, of_number};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "risk-material-age-unstated",
        group: Group::Caution,
        level: Level::Advice,
        what: "A guide names a part that is risk material from some age on, and does not state the `age` of the animal.",
        why: "The cutter has to know the age before the first cut, because it decides which bin the bone goes to. Until it is stated it counts as over every limit.",
        example: "species: beef\n# age: under 30 months\nsteps:\n  - { anatomy: [thoracic-vertebrae] }",
        mend: "Add `age`, such as `under 12 months`, `12–30 months`, `over 30 months` or `unknown`.",
        source: "Regulation (EC) 999/2001, Annex V, point 1, version of 1 January 2018; 9 CFR 310.22, edition of 1 January 2007.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some((profile, _)) = profile_of(subject.book) else { return };
    for procedure in &subject.book.procedures {
        let (Some(species), true) = (procedure.species.value(), procedure.age.is_absent()) else { continue };
        let Some(anatomy) = Anatomy::of(subject.book, species) else { continue };
        let named = named(procedure, &anatomy);
        let aged = entries(subject.book, species).filter(|limit| limit.age.is_some());
        let found = aged.filter_map(|limit| {
            let parts: Vec<&str> = limit.parts.iter().map(String::as_str).filter(|part| named.contains(part)).collect();
            (!parts.is_empty()).then_some((limit, parts))
        });
        let found: Vec<_> = found.collect();
        let Some((limit, parts)) = found.first() else { continue };
        let bound = limit.age.map_or_else(String::new, |bound| bound.to_string());
        let message = format!(
            "{} {} risk material {bound} under {profile}, and no `age` is stated, so the animal counts as that",
            and(parts.iter().copied()),
            of_number(parts.len(), "is", "are")
        );
        report.add(
            CHECK
                .info
                .at(procedure.place, message)
                .help("Add `age:`, such as `under 12 months`, `12–30 months`, `over 30 months` or `unknown`."),
        );
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn beef(limits: &str, lines: &str, anatomy: &str) {
        files(&[
            ("guidebook.yaml", &format!("title: T\nlimits: {limits}\n")),
            (
                "beef/loin.yaml",
                &format!(
                    "title: Beef loin
{lines}species: beef
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: beef-loin, weight: 8–12 kg, temperature: 2–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body, risk-material-beef]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Take off the spine
    take: beef-loin
    do: Cut.
    anatomy: [{anatomy}]
    minutes: 9–22
    give:
      beef-strip: {{ share: 70–80 %, use: retail }}
      beef-loin-bone: {{ share: rest, holds: [lumbar-vertebrae], use: risk-material }}
    loss: 0
"
                ),
            ),
        ]);
    }

    #[test]
    fn a_backbone_of_no_age() {
        beef(
            "eu-853",
            "#^1:1 advice[risk-material-age-unstated] `lumbar-vertebrae` is risk material over 30 months under eu-853\n",
            "lumbar-vertebrae",
        );
    }

    #[test]
    fn silent_where_the_age_is_stated_or_the_profile_is_silent() {
        beef("eu-853", "age: unknown\n", "lumbar-vertebrae");
        beef("australia-retail", "", "lumbar-vertebrae");
    }
}
