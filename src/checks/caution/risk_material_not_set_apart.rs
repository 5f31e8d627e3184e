//! Risk material that ends anywhere but in its own bin.

use crate::analysis::anatomy::Anatomy;
use crate::analysis::cold_limits::profile_of;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::risk_material::{Listed, Misplaced, age_of, listed, misplaced, use_of};
use crate::checks::hazard_words::{and, of_number};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Finding, Level, Place};
use crate::model::Procedure;
use crate::model::age::Age;
use crate::model::builtin::limits::{AgeBound, Limit};
use crate::model::words::Use;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "risk-material-not-set-apart",
        group: Group::Caution,
        level: Level::Fault,
        what: "A guide names a part that the profile lists as risk material at this age, and the part ends in a piece with another use than `risk-material`. An age that is not stated counts as over every limit. What a profile lists from memory is advice.",
        why: "Backbone in the stock pot or cord in the trim is what the law was made against. Cooking does not destroy the agent, and one wrong tub condemns the day's work.",
        example: "species: beef\nsteps:\n  - name: Part the ribs from the spine\n    give:\n      beef-spine: { share: 55–64 %, holds: [vertebral-column], use: bone }   # risk-material",
        mend: "Give the piece `use: risk-material`, say under `holds` which piece the part goes with, or state the `age` where the animal is younger.",
        source: "Regulation (EC) 999/2001, Annex V, point 1, version of 1 January 2018; 9 CFR 310.22, edition of 1 January 2007. The text in force at the place comes first.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some((profile, _)) = profile_of(subject.book) else { return };
    for (_, procedure, analysis) in subject.procedures() {
        let listed = listed(subject.book, procedure);
        let anatomy = Anatomy::of_procedure(subject.book, procedure);
        let (Some(anatomy), false) = (anatomy, listed.is_empty()) else { continue };
        let parts: Vec<&str> = listed.iter().map(|listed| listed.part).collect();
        let wrong = misplaced(procedure, analysis, &anatomy, &parts, &[Use::RiskMaterial]);
        for (place, group) in by_place(procedure, analysis, &wrong) {
            report.add(finding(procedure, analysis, profile, &listed, place, &group));
        }
    }
}

/// One finding for each wrong use; what steps merely name is one mistake for the whole guide.
fn by_place<'w, 'a>(
    procedure: &Procedure,
    analysis: &ProcedureAnalysis,
    wrong: &'w [Misplaced<'a>],
) -> Vec<(Place, Vec<&'w Misplaced<'a>>)> {
    let mut places: Vec<(Place, Vec<&Misplaced<'_>>)> = Vec::new();
    for misplaced in wrong {
        let stated = misplaced.piece.and_then(|piece| use_of(procedure, &analysis.network, piece));
        let place = match stated {
            Some(stated) => stated.place,
            // What set out together and got lost together is one mistake.
            None if misplaced.trace.held => {
                let together = |group: &[&Misplaced<'_>]| {
                    group.iter().any(|other| {
                        other.piece.is_none() && other.trace.step == misplaced.trace.step && other.trace.ends == misplaced.trace.ends
                    })
                };
                places.iter().find(|(_, group)| together(group)).map_or(misplaced.trace.named, |(place, _)| *place)
            }
            None => places.first().map_or(misplaced.trace.named, |(first, _)| *first),
        };
        match places.iter_mut().find(|(known, _)| *known == place) {
            Some((_, group)) => group.push(misplaced),
            None => places.push((place, vec![misplaced])),
        }
    }
    places
}

fn finding(
    procedure: &Procedure,
    analysis: &ProcedureAnalysis,
    profile: &str,
    listed: &[Listed<'_>],
    place: Place,
    group: &[&Misplaced<'_>],
) -> Finding {
    let mut parts: Vec<&str> = group.iter().map(|misplaced| misplaced.part).collect();
    parts.dedup();
    let limit = |part: &str| listed.iter().find(|listed| listed.part == part).map(|listed| listed.limit);
    let first = parts.first().and_then(|part| limit(part));
    let binds = parts.iter().any(|part| limit(part).is_some_and(Limit::binds));
    let piece = group.first().and_then(|misplaced| analysis.network.pieces.get(misplaced.piece?));
    let ends = match piece {
        Some(piece) => {
            let purpose = group.first().and_then(|misplaced| use_of(procedure, &analysis.network, misplaced.piece?));
            format!("in `{}` with the use `{}`", piece.id, purpose.map_or("", |stated| stated.value.word()))
        }
        None => "in no piece with the use `risk-material`".to_owned(),
    };
    let message = format!(
        "{} {} {ends}: risk material {}under {profile}{}",
        and(parts.iter().copied()),
        of_number(parts.len(), "ends", "end"),
        age(first),
        counted_as(procedure, first)
    );
    let finding = if binds { CHECK.info.at(place, message) } else { CHECK.info.advice_at(place, format!("{message} (from memory)")) };
    let help = match piece {
        Some(_) => "Write `use: risk-material`.".to_owned(),
        None => "Name it under `holds` of the piece that it goes with, and give that piece `use: risk-material`.".to_owned(),
    };
    finding.help(help)
}

/// `over 30 months `, or nothing for any age.
fn age(limit: Option<&Limit>) -> String {
    limit.and_then(|limit| limit.age).map_or_else(|| "at any age ".to_owned(), |bound| format!("{bound} "))
}

/// Why the animal counts as that old, where it is not plain.
fn counted_as(procedure: &Procedure, limit: Option<&Limit>) -> String {
    let Some(bound) = limit.and_then(|limit| limit.age) else { return String::new() };
    match age_of(procedure) {
        Some(Age::Unknown) => ", and an unknown age counts as that".to_owned(),
        Some(age @ (Age::Between(_) | Age::Under(_))) => {
            let months = match bound {
                AgeBound::From(months) | AgeBound::Over(months) => months,
            };
            format!(", and `{age}` counts as that, because {months} months fall inside it")
        }
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    /// A bone-in chuck, from which the spine comes off as it does at the table.
    fn chuck(limits: &str, age: &str, anatomy: &str, spine: &str) {
        chuck_with(limits, age, "rest", anatomy, spine);
    }

    /// The same with an output of its own for the frame of the first step.
    fn chuck_with(limits: &str, age: &str, frame: &str, anatomy: &str, spine: &str) {
        files(&[
            ("guidebook.yaml", &format!("title: T\nlimits: {limits}\n")),
            (
                "beef/chuck.yaml",
                &format!(
                    "title: Beef chuck
species: beef
{age}revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: beef-chuck, weight: 36–46 kg, temperature: 2–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body, risk-material-beef]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Take off spine and ribs
    take: beef-chuck
    do: Cut.
    minutes: 9–22
    give:
      beef-chuck-boneless: {{ share: 81.5–86 %, use: retail }}
      beef-frame: {frame}
    loss: 0
  - name: Part the ribs from the spine
    take: beef-frame
    do: Cut.
{anatomy}    minutes: 3–6
    give:
      beef-ribs: {{ share: 35–45 %, use: retail }}
      {spine}
    loss: 0
"
                ),
            ),
        ]);
    }

    #[test]
    fn a_spine_in_the_stock_tub() {
        chuck(
            "eu-853",
            "age: over 30 months\n",
            "",
            "beef-backs: { share: rest, holds: [vertebral-column, neck-bones], use: bone }
#                                                                            ^^^^ fault[risk-material-not-set-apart] `vertebral-column` and `neck-bones` end in `beef-backs` with the use `bone`: risk material over 30 months under eu-853",
        );
        chuck(
            "us-food-code",
            "age: 24–36 months\n",
            "",
            "beef-spine: { share: rest, use: bone }
#                                     ^^^^ fault[risk-material-not-set-apart] risk material from 30 months under us-food-code, and `24–36 months` counts as that, because 30 months fall inside it",
        );
    }

    /// A guide that names the backbone and says nowhere where it goes, from an animal of unknown age.
    #[test]
    fn a_backbone_that_goes_nowhere() {
        chuck(
            "eu-853",
            "age: unknown\n",
            "    anatomy: [thoracic-vertebrae, neck-bones, ribs]
#             ^^^^^^^^^^^^^^^^^^ fault[risk-material-not-set-apart] `thoracic-vertebrae` and `neck-bones` end in no piece with the use `risk-material`: risk material over 30 months under eu-853, and an unknown age counts as that
",
            "beef-backs: { share: rest, use: bone }",
        );
    }

    /// Two parts of one frame, and nothing said of either when the frame is parted: one mistake.
    #[test]
    fn parts_that_get_lost_together() {
        chuck_with(
            "eu-853",
            "age: over 30 months\n",
            "{ share: rest, holds: [vertebral-column, dorsal-root-ganglia] }
#                                        ^^^^^^^^^^^^^^^^ fault[risk-material-not-set-apart] `vertebral-column` and `dorsal-root-ganglia` end in no piece with the use `risk-material`",
            "",
            "beef-backs: { share: rest, use: bone }",
        );
    }

    /// From memory, so advice.
    #[test]
    fn what_a_profile_lists_from_memory_is_advice() {
        chuck(
            "canada",
            "age: over 30 months\n",
            "",
            "beef-spine: { share: rest, use: bone }
#                                     ^^^^ advice[risk-material-not-set-apart] (from memory)",
        );
    }

    #[test]
    fn silent_where_it_is_set_apart_or_the_animal_is_young() {
        chuck("eu-853", "age: over 30 months\n", "    anatomy: [thoracic-vertebrae]\n", "beef-spine: { share: rest, use: risk-material }");
        chuck("eu-853", "age: over 30 months\n", "    anatomy: [thoracic-vertebrae]\n", "beef-backs: { share: rest, use: risk-material }");
        chuck("eu-853", "age: over 30 months\n", "", "beef-spine: { share: rest, use: for-cutting }");
        chuck("eu-853", "age: 12–30 months\n", "    anatomy: [thoracic-vertebrae]\n", "beef-spine: { share: rest, use: bone }");
        chuck("us-plant", "age: under 30 months\n", "", "beef-spine: { share: rest, use: bone }");
        chuck("australia-retail", "age: over 30 months\n", "", "beef-spine: { share: rest, use: bone }");
    }
}
