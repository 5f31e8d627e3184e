//! Fish for raw service without a word on its parasites.

use crate::analysis::cold_limits::profile_of;
use crate::analysis::demands::product_of;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::Guidebook;
use crate::model::words::{Product, Stage, Verified};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "parasites-unstated",
        group: Group::Caution,
        level: Level::Advice,
        what: "A guide is for fish that is eaten raw, and does not say whether the fish was frozen against parasites or farmed with a supplier's letter.",
        why: "Live worms are not seen in the flesh and are not cut out. Whoever cuts the fish must know which way was taken, and the inspector asks for the record.",
        example: "served-raw: true\n# parasites: frozen",
        mend: "Add `parasites: frozen` or `parasites: farmed-with-letter` beside `served-raw`.",
        source: "FDA Food Code, 3-402.11 and 3-402.12, read in Washington Administrative Code 246-215-03425, 2022; UK Food Standards Agency, Freezing fish and fishery products, 2024.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(raw) = procedure.served_raw.given().filter(|raw| raw.value) else { continue };
        if product_of(subject.book, procedure) != Some(Product::Fish) || !procedure.parasites.is_absent() {
            continue;
        }
        let message = format!("fish that is eaten raw, and no word on its parasites{}", freezing(subject.book));
        report.add(CHECK.info.at(raw.place, message).help("Add `parasites: frozen` or `parasites: farmed-with-letter`."));
    }
}

/// How the profile wants fish frozen: `; us-food-code freezes it to −20 °C for 168 h, …`.
fn freezing(book: &Guidebook) -> String {
    let Some((id, profile)) = profile_of(book) else { return String::new() };
    let ways: Vec<String> = profile
        .limits
        .iter()
        .filter(|limit| limit.stage == Stage::ParasiteFreezing)
        .filter_map(|limit| {
            let from_memory = if limit.verified == Verified::Memory { " (from memory)" } else { "" };
            Some(format!("{} for {}{from_memory}", limit.at_most.as_ref()?.printed, limit.duration.as_ref()?.printed))
        })
        .collect();
    if ways.is_empty() { String::new() } else { format!("; the ways of {id}: {}", ways.join(", or ")) }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn salmon(lines: &str) {
        files(&[
            ("guidebook.yaml", "title: T\nlimits: us-food-code\n"),
            (
                "salmon/sashimi.yaml",
                &format!(
                    "title: Salmon in blocks
species: salmon
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
start: {{ piece: salmon-side, weight: 1–2 kg, temperature: 0–2 °C }}
cautions: [protect-holding-hand, parasite-freezing]
tools: [slicing-knife]
wear: [mesh-gauntlet]
{lines}steps:
  - {{ name: Cut the blocks, take: salmon-side, do: Cut., minutes: 1–2, give: {{ salmon-block: {{ share: 80–90 %, use: retail }}, salmon-lean-trim: {{ share: rest, use: lean-trim }} }}, loss: 0 }}
"
                ),
            ),
        ]);
    }

    #[test]
    fn raw_fish_without_a_word() {
        salmon(
            "served-raw: true\n#           ^^^^ advice[parasites-unstated] the ways of us-food-code: -20 °C for 168 h, or -35 °C for 15 h, or -20 °C for 24 h\n",
        );
    }

    #[test]
    fn silent_where_it_is_said_or_cooked() {
        salmon("served-raw: true\nparasites: frozen\n");
        salmon("served-raw: true\nparasites: farmed-with-letter\n");
        salmon("");
    }
}
