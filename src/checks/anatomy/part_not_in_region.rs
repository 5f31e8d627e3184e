//! Parts of the right animal in the wrong piece: a thigh bone in the shoulder.

use std::collections::BTreeSet;

use crate::analysis::anatomy::Anatomy;
use crate::analysis::anatomy::named_parts;
use crate::analysis::regions::Regions;
use crate::checks::hazard_words::{and, or};
use crate::checks::named_parts::{kinds, of_kind};
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "part-not-in-region",
        group: Group::Anatomy,
        level: Level::Fault,
        what: "A step names a part that lies in none of the regions that its piece, or anything cut from it, reaches into. Regions are those of the cut list; where it names none, nothing is said.",
        why: "The part is not in the piece, so the landmark cannot be found and the cut goes by guess.",
        example: "# cuts/lamb.yaml\nlamb-shoulder: { name: Shoulder, region: shoulder }\n# lamb/shoulder.yaml\nsteps:\n  - { take: lamb-shoulder, anatomy: [femur] }      # that is the leg",
        mend: "Name a part of the region, or correct `region` in the cut list.",
        source: "Built-in anatomy, common practice where an entry names no source; regions of the guidebook's own cut list.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for (_, procedure, analysis) in subject.procedures() {
        let Some(anatomy) = Anatomy::of_procedure(subject.book, procedure) else { continue };
        let regions = Regions::of(subject.book, procedure, &analysis.network, &anatomy);
        let mut told: BTreeSet<&str> = BTreeSet::new();
        for (at, step) in procedure.steps.iter().enumerate() {
            let Some(reached) = regions.of_step(&analysis.network, at) else { continue };
            for name in named_parts(step) {
                let Some(part) = anatomy.find(&name.value) else { continue };
                let lies = |region: &&str| reached.contains(region);
                if part.regions.is_empty() || part.regions.iter().any(&lies) || !told.insert(part.id) {
                    continue;
                }
                let taken = and(step.take.iter().map(|piece| piece.value.as_str()));
                let message = format!(
                    "`{}` lies in the {}, and {taken} is of the {}",
                    name.value,
                    part.regions.join(" and the "),
                    reached.iter().copied().collect::<Vec<_>>().join(" and the ")
                );
                let here = of_kind(&anatomy, part.kind, |other| other.regions.iter().any(&lies));
                let help = if here.is_empty() {
                    format!("Correct the name, or the region of {taken} in the cut list.")
                } else {
                    format!("Name one of the {} there: {}.", kinds(part.kind), or(here))
                };
                report.add(CHECK.info.at(name.place, message).help(help));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    const CUTS: &str = "lamb-shoulder: { name: Shoulder, region: shoulder }\nlamb-shank: { name: Shank, region: shank }\n";

    fn shoulder(cuts: &str, anatomy: &str) {
        let guide = format!(
            "title: Lamb shoulder
species: lamb
age: under 12 months
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: lamb-shoulder, weight: 2–3 kg, temperature: 2–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Take off the shank
    take: lamb-shoulder
    do: Cut.
    minutes: 1–2
    give: {{ lamb-shank: {{ share: 20–22 %, use: retail }}, lamb-shoulder-rest: rest }}
    loss: 0
  - name: Bone the rest
    take: lamb-shoulder-rest
    do: Cut.
    anatomy: {anatomy}
    minutes: 1–2
    give: {{ lamb-shoulder-meat: {{ share: 80–82 %, use: retail }}, lamb-bones: {{ share: rest, holds: [prescapular-node], use: inedible }} }}
    loss: 0
"
        );
        files(&[("cuts/lamb.yaml", cuts), ("lamb/shoulder.yaml", &guide)]);
    }

    /// What was cut from a shoulder lies in the shoulder.
    #[test]
    fn a_thigh_bone_in_the_shoulder() {
        shoulder(
            CUTS,
            "[blade-bone, femur]\n#                         ^^^^^ fault[part-not-in-region] `femur` lies in the leg, and `lamb-shoulder-rest` is of the shoulder",
        );
    }

    #[test]
    fn silent_in_the_region_and_where_no_region_is_known() {
        shoulder(CUTS, "[blade-bone, shoulder-joint]");
        shoulder("lamb-shoulder: { name: Shoulder }\n", "[blade-bone, femur]");
        shoulder("lamb-shoulder: { name: Shoulder, region: front-end }\n", "[blade-bone, femur]");
    }
}
