//! A class of product that the species cannot be, so that the wrong limits hold.

use crate::checks::hazard_words::inside;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::Level;
use crate::model::words::Product;

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "product-not-of-species",
        group: Group::Cold,
        level: Level::Fault,
        what: "`product` names a class that the species is never of: fish as red meat, poultry as fish.",
        why: "The class decides which temperature holds. Poultry that is held as red meat may be three degrees too warm and still pass.",
        example: "species: chicken\nproduct: red-meat           # poultry, held colder",
        mend: "Leave `product` out, or name the class that the species is of; offal, minced and preparation are open to all.",
        source: "Guidebook format, \"A procedure\"; classes after Regulation (EC) 853/2004, Annex I and Annex III.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let (Some(stated), Some(species)) = (procedure.product.given(), procedure.species.value()) else { continue };
        let Some(builtin) = subject.book.builtin.species.get(species) else { continue };
        if can_be(species, builtin.product, stated.value) {
            continue;
        }
        let (own, class) = (stated.value.word(), builtin.product.word());
        let message = format!("{} is `{class}`, never `{own}`, so another limit would hold", inside(&builtin.name));
        report.add(CHECK.info.at(stated.place, message).help(format!("Leave `product` out, or write `{class}`.")));
    }
}

/// Wild duck, goose and rabbit are game, farmed deer are held as red meat, and all of them can be minced.
fn can_be(species: &str, class: Product, stated: Product) -> bool {
    match stated {
        Product::Offal | Product::Minced | Product::Preparation => true,
        Product::Game => class == Product::Game || matches!(species, "duck" | "goose" | "rabbit"),
        Product::RedMeat => matches!(class, Product::RedMeat | Product::Game),
        Product::Poultry | Product::Rabbit | Product::Fish => class == stated,
    }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::{files, steps};

    fn beside(text: &str) {
        steps(&format!(
            "{text}steps:
  - {{ name: Halve, take: chicken-whole, do: Cut., minutes: 1–2, give: {{ chicken-half: {{ share: 98–100 %, pieces: 2, use: retail }} }}, loss: 0–2 % }}
"
        ));
    }

    #[test]
    fn a_chicken_as_red_meat() {
        beside("product: red-meat\n#        ^^^^^^^^ fault[product-not-of-species] chicken is `poultry`, never `red-meat`\n");
        beside("product: fish\n#        ^^^^ fault[product-not-of-species] chicken is `poultry`, never `fish`\n");
    }

    #[test]
    fn silent_for_classes_that_can_be() {
        beside("product: poultry\n");
        beside("product: preparation\n");
        let duck = "title: Duck
species: duck
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: duck-whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }
product: game
steps:
  - { name: Halve, take: duck-whole, do: Cut., minutes: 1–2, give: { duck-half: { share: 98–100 %, pieces: 2, use: retail } }, loss: 0–2 % }
";
        files(&[("duck/whole.yaml", duck)]);
    }
}
