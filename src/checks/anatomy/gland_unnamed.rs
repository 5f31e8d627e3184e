//! Glands of the region that is cut up, of which the guide says nothing.

use std::collections::{BTreeMap, BTreeSet};

use crate::analysis::anatomy::{Anatomy, Part};
use crate::analysis::regions::Regions;
use crate::analysis::risk_material::named;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::PartKind;
use crate::model::{Guidebook, Procedure};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "gland-unnamed",
        group: Group::Anatomy,
        level: Level::Advice,
        what: "A step cuts up a piece of a region in which a gland or node lies, and neither this guide nor one before it names the gland. Regions are those of the cut list.",
        why: "\"What is this lump?\" is the question of every second week. A node that the guide does not mention stays in the silverside.",
        example: "# cuts/lamb.yaml: lamb-leg lies in the region leg\nsteps:\n  - { take: lamb-leg, anatomy: [topside-muscle] }    # the popliteal node lies in the leg too",
        mend: "Name the gland in the step that takes it out, under `anatomy` and under `holds` of an inedible piece.",
        source: "common practice",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let book = subject.book;
    let givers = givers(book);
    for (_, procedure, analysis) in subject.procedures() {
        let Some(anatomy) = Anatomy::of_procedure(book, procedure) else { continue };
        let glands: Vec<Part<'_>> = anatomy.of_kind(PartKind::Gland).filter_map(|id| anatomy.find(id)).collect();
        let regions = Regions::of(book, procedure, &analysis.network, &anatomy);
        let mut known: Option<BTreeSet<&str>> = None;
        let mut told: BTreeSet<&str> = BTreeSet::new();
        for (step, ends) in procedure.steps.iter().zip(&analysis.network.steps) {
            for (name, piece) in step.take.iter().zip(&ends.takes) {
                let Some(lies) = piece.and_then(|piece| regions.lies(piece)) else { continue };
                for part in glands.iter().filter(|part| part.regions.iter().any(|region| lies.contains(region))) {
                    let known = known.get_or_insert_with(|| named_so_far(&givers, &anatomy, procedure));
                    if known.contains(part.id) || !told.insert(part.id) {
                        continue;
                    }
                    let where_it_lies: Vec<&str> = part.regions.iter().copied().filter(|region| lies.contains(region)).collect();
                    let message = format!(
                        "`{}` lies in the {} and is named nowhere, while `{}` is cut up",
                        part.id,
                        where_it_lies.join(" and the "),
                        name.value
                    );
                    let help = format!("Name `{}` where it is taken out, and give it to a piece with `use: inedible`.", part.id);
                    report.add(CHECK.info.at(name.place, message).help(help));
                }
            }
        }
    }
}

/// Which guides give a piece, by the piece.
type Givers<'a> = BTreeMap<&'a str, Vec<&'a Procedure>>;

fn givers(book: &Guidebook) -> Givers<'_> {
    let mut givers = Givers::new();
    for procedure in &book.procedures {
        for output in procedure.steps.iter().flat_map(|step| &step.give) {
            givers.entry(output.piece.value.as_str()).or_default().push(procedure);
        }
    }
    givers
}

/// What a guide and all guides before it name: those that give its start, and so on.
fn named_so_far<'a>(givers: &Givers<'_>, anatomy: &Anatomy<'a>, procedure: &Procedure) -> BTreeSet<&'a str> {
    let mut names = named(procedure, anatomy);
    let mut seen = BTreeSet::from([procedure.id.as_str()]);
    let mut open: Vec<&str> = procedure.start.piece.value().map(String::as_str).into_iter().collect();
    while let Some(piece) = open.pop() {
        for giver in givers.get(piece).into_iter().flatten() {
            if seen.insert(&giver.id) {
                names.extend(named(giver, anatomy));
                open.extend(giver.start.piece.value().map(String::as_str));
            }
        }
    }
    names
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    const CUTS: &str = "lamb-leg: { name: Leg, region: leg }\n";

    fn leg(cuts: &str, take: &str) {
        let guide = format!(
            "title: Lamb leg
species: lamb
age: under 12 months
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: lamb-leg, weight: 2–3 kg, temperature: 2–4 °C }}
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Part the leg
    do: Cut.
    minutes: 1–2
{take}
    loss: 0
"
        );
        files(&[("cuts/lamb.yaml", cuts), ("lamb/leg.yaml", &guide)]);
    }

    const GIVE: &str = "    give: { lamb-meat: { share: 80–82 %, use: retail }, lamb-fat: { share: rest, use: fat-trim } }";

    #[test]
    fn a_leg_without_its_node() {
        leg(
            CUTS,
            &format!(
                "    take: lamb-leg\n#         ^^^^^^^^ advice[gland-unnamed] `popliteal-node` lies in the leg and is named nowhere, while `lamb-leg` is cut up\n{GIVE}"
            ),
        );
    }

    /// A piece that only comes off is not cut up, and an unknown region is silent.
    #[test]
    fn silent_where_it_is_named_or_no_region_is_known() {
        leg(
            CUTS,
            "    take: lamb-leg\n    anatomy: [popliteal-node]\n    give: { lamb-meat: { share: 80–82 %, use: retail }, lamb-node: { share: rest, use: inedible } }",
        );
        leg("lamb-leg: { name: Leg }\nlamb-meat: { name: Meat, region: leg }\n", &format!("    take: lamb-leg\n{GIVE}"));
    }
}
