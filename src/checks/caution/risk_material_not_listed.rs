//! A use of risk material for a species of which the profile lists none.

use crate::analysis::cold_limits::profile_of;
use crate::analysis::risk_material::entries;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::{Stage, Use};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "risk-material-not-listed",
        group: Group::Caution,
        level: Level::Advice,
        what: "A piece has the use `risk-material`, and the profile lists no risk material for this species.",
        why: "The marked bin is emptied and recorded apart, and what is in it is paid for twice. Glands and bruises of a pig go to the inedible tub.",
        example: "species: pork\nsteps:\n  - give: { pork-glands: { share: 0–0.2 %, use: risk-material } }   # inedible",
        mend: "Write `use: inedible`, or keep it if the shop wants it so.",
        source: "Regulation (EC) 999/2001, Annex V, point 1, version of 1 January 2018; 9 CFR 310.22, edition of 1 January 2007: both lists name cattle, and the first sheep and goats.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let Some((id, profile)) = profile_of(subject.book) else { return };
    // A profile without any list is silent.
    if !profile.limits.iter().any(|limit| limit.stage == Stage::RiskMaterial) {
        return;
    }
    for procedure in &subject.book.procedures {
        let Some(species) = procedure.species.value().filter(|species| subject.book.builtin.species.contains_key(*species)) else {
            continue;
        };
        if entries(subject.book, species).next().is_some() {
            continue;
        }
        let outputs = procedure.steps.iter().flat_map(|step| &step.give);
        for output in outputs {
            let Some(purpose) = output.purpose.given().filter(|purpose| purpose.value == Use::RiskMaterial) else { continue };
            let message = format!("`{}` ends as risk material, and {id} lists none for `{species}`", output.piece.value);
            report.add(CHECK.info.at(purpose.place, message).help("Write `inedible`, or keep it if the shop wants it so."));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    const LEGS: &str = "steps:
  - name: Take off the legs
    take: chicken-whole
    do: Cut.
    minutes: 1–2
    give:
      chicken-legs: { share: 31–35 %, use: retail }
      chicken-body: { share: rest, use: risk-material }
";

    #[test]
    fn risk_material_of_a_chicken() {
        steps(&format!(
            "{LEGS}#                                       ^^^^^^^^^^^^^ advice[risk-material-not-listed] eu-853 lists none for `chicken`\n    loss: 0\n"
        ));
    }

    #[test]
    fn silent_where_the_profile_is_silent() {
        files(&[
            ("guidebook.yaml", "title: T\nlimits: australia-retail\n"),
            ("chicken/whole.yaml", &format!("{}{LEGS}    loss: 0\n", crate::checks::testing::HEAD)),
        ]);
    }
}
