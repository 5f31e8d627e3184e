//! Prices of pieces that no guide knows.

use crate::checks::known;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::names::nearest;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "price-for-unknown-piece",
        group: Group::Reference,
        level: Level::Fault,
        what: "`prices.yaml` has a price for a piece that no procedure gives or starts from.",
        why: "Its price would be counted nowhere, and the piece that was meant would have none.",
        example: "sell: { pork-tenderlion: 15.90 / kg }      # refused\nsell: { pork-tenderloin: 15.90 / kg }",
        mend: "Write the id of a piece that some guide gives or starts from.",
        source: "Guidebook format, version 1, \"Other documents\".",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    let (Some(prices), Some(pieces)) = (&subject.book.prices, known::pieces(subject.book)) else { return };
    for price in prices.buy.iter().chain(&prices.credit).chain(&prices.sell) {
        let piece = &price.piece;
        if !pieces.contains(piece.value.as_str()) {
            let help = nearest(&piece.value, pieces.iter().copied()).map_or_else(
                || "Write the id of a piece of some guide, or take the price out.".to_owned(),
                |near| format!("Write `{near}`."),
            );
            report.add(CHECK.info.at(piece.place, format!("no guide gives `{}` or starts from it", piece.value)).help(help));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    #[test]
    fn a_misspelt_piece() {
        files(&[(
            "prices.yaml",
            "currency: EUR
date: 2026-03-02
tax: without
buy: { chicken-hole: 4.20 / kg }
#      ^^^^^^^^^^^^ fault[price-for-unknown-piece] `chicken-hole`
sell: { chicken-half: 7.90 / kg }
",
        )]);
    }

    #[test]
    fn silent_while_a_guide_can_not_be_read() {
        files(&[
            ("chicken/other.yaml", "title: \"Other
#      ^ fault[unclosed-quote]
"),
            ("chicken/whole.yaml", "title: Half
species: chicken
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: chicken-whole, weight: 1.6–2.0 kg, typical: 1.8 kg, temperature: 0–4 °C }
cautions: [protect-holding-hand, blade-away-from-body]
steps:
  - { name: Halve, take: chicken-whole, do: Cut along the keel., minutes: 1–2, give: { chicken-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
"),
            ("prices.yaml", "currency: EUR
date: 2026-03-02
tax: without
sell: { chicken-wings: 7.90 / kg }
"),
        ]);
    }
}
