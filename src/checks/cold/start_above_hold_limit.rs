//! A start that may arrive warmer than its product is held.

use crate::analysis::cold_limits::{HoldLimit, SetBy, hold};
use crate::analysis::demands::product_of;
use crate::checks::{Check, CheckInfo, Group, Report, Run, Subject};
use crate::finding::{Finding, Level, Place};
use crate::model::Procedure;
use crate::model::quantity::{Temperature, TemperatureUnit};

pub(in crate::checks) static CHECK: Check = Check {
    info: CheckInfo {
        id: "start-above-hold-limit",
        group: Group::Cold,
        level: Level::Fault,
        what: "The high end of `start.temperature` is above the limit at which the profile, or the guidebook under `stricter`, holds this class of product. Equal is fine.",
        why: "The guide would allow work on meat that should have been refused at the door, and every minute on the bench adds to it.",
        example: "# limits: eu-853, poultry is held at 4 °C\nspecies: chicken\nstart: { temperature: 2–7 °C }",
        mend: "Lower the high end, or correct `product` where the class is wrong.",
        source: "The entry of the profile that the finding names; Regulation (EC) 853/2004, Annex III, for eu-853, FDA Food Code 3-501.16(A)(2) for us-food-code.",
    },
    run: Run::Check(run),
};

fn run(subject: &Subject<'_>, report: &mut Report) {
    for procedure in &subject.book.procedures {
        let Some(stated) = procedure.start.temperature.given() else { continue };
        let Some(limit) = hold(subject.book, procedure) else { continue };
        let high = stated.value.high;
        if high > limit.at_most {
            report.add(finding(subject, procedure, stated.place, high, limit));
        }
    }
}

fn finding(subject: &Subject<'_>, procedure: &Procedure, place: Place, high: Temperature, limit: HoldLimit<'_>) -> Finding {
    let product = product_of(subject.book, procedure).map_or("its product", |product| product.word());
    let by = over(high, limit.at_most);
    let (who, source) = match limit.set_by {
        SetBy::Profile(id, entry) => (format!("{id} sets for {product}"), format!(" ({})", entry.citation.rule())),
        SetBy::Guidebook(_) => ("this guidebook sets under `stricter`".to_owned(), String::new()),
    };
    let message = format!("the start may arrive at {high}, {by} above the {} that {who}{source}", limit.at_most);
    let mut finding = CHECK.info.at(place, message);
    if let SetBy::Guidebook(own) = limit.set_by {
        finding = finding.also(own.place, "the limit of the guidebook");
    }
    finding.help(format!("Write {} or less at the high end, or correct `product`.", limit.at_most))
}

/// By how much one temperature is above another, in the unit of the limit: `2 °C`, rounded to a tenth.
fn over(high: Temperature, limit: Temperature) -> String {
    let ninths = high.exact() - limit.exact();
    let (degrees, symbol) = match limit.unit() {
        TemperatureUnit::Celsius => (ninths as f64 / 9_000.0, "\u{b0}C"),
        TemperatureUnit::Fahrenheit => (ninths as f64 / 5_000.0, "\u{b0}F"),
    };
    let text = format!("{degrees:.1}");
    let text = text.strip_suffix(".0").unwrap_or(&text);
    if text == "0" { "a hair".to_owned() } else { format!("{text} {symbol}") }
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    fn guide(guidebook: &str, species: &str, lines: &str) {
        files(&[
            ("guidebook.yaml", guidebook),
            (
                &format!("{species}/whole.yaml"),
                &format!(
                    "title: Whole
species: {species}
revision: {{ number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }}
cautions: [protect-holding-hand, blade-away-from-body, histamine-cold]
tools: [boning-knife]
wear: [mesh-gauntlet]
{lines}
steps:
  - {{ name: Halve, take: {species}-whole, do: Cut., minutes: 1–2, give: {{ {species}-half: {{ share: 98–100 %, pieces: 2, use: retail }} }}, loss: 0–2 % }}
"
                ),
            ),
        ]);
    }

    fn start(limits: &str, species: &str, temperature: &str, finding: &str) {
        let lines = format!("start: {{ piece: {species}-whole, weight: 1.6–2.0 kg, temperature: {temperature} }}{finding}");
        guide(&format!("title: T\nlimits: {limits}\n"), species, &lines);
    }

    /// The high end decides, in the unit of the source: 45 °F is 7.2 °C, so it is above 7 °C.
    #[test]
    fn warmer_than_the_profile_holds_it() {
        let caret = |species: &str, text: &str| format!("\n#{}^ fault[start-above-hold-limit] {text}", " ".repeat(56 + species.len()));
        start(
            "eu-853",
            "chicken",
            "0–7 °C",
            &caret("chicken", "at 7 °C, 3 °C above the 4 °C that eu-853 sets for poultry (Regulation (EC) 853/2004"),
        );
        start("eu-853", "pork", "40–45 °F", &caret("pork", "at 45 °F, 0.2 °C above the 7 °C that eu-853 sets for red-meat"));
        start(
            "us-food-code",
            "pork",
            "2–7 °C",
            &caret("pork", "at 7 °C, 2 °C above the 5 °C that us-food-code sets for red-meat (FDA Food Code, 3-501.16(A)(2)"),
        );
        start("us-food-code", "pork", "42 °F", &caret("pork", "at 42 °F, 0.6 °C above the 5 °C"));
        start("canada", "rabbit", "5 °C", &caret("rabbit", "above the 4 °C that canada sets for rabbit"));
        start("uk-retail", "mackerel", "9 °C", &caret("mackerel", "above the 8 °C that uk-retail sets for fish"));
    }

    /// Equal is fine; a figure that a source does not print, prints as repealed, or prints as text is silent.
    #[test]
    fn silent_at_the_limit_and_where_the_rule_is_silent() {
        start("eu-853", "pork", "2–7 °C", "");
        start("us-food-code", "pork", "38–41 °F", "");
        start("eu-853", "mackerel", "0–9 °C", "");
        start("us-plant", "chicken", "2–9 °C", "");
        start("canada", "mackerel", "2–9 °C", "");
        start("canada", "venison", "2–9 °C", "");
        start("eu-853", "pork", "-20 to -18 °C", "");
    }

    #[test]
    fn the_class_of_product_and_the_guidebook_decide() {
        let minced = "start: { piece: pork-whole, weight: 1.6–2.0 kg, temperature: 0–3 °C }
#                                                            ^ fault[start-above-hold-limit] 1 °C above the 2 °C that eu-853 sets for minced
product: minced";
        guide("title: T\nlimits: eu-853\n", "pork", minced);
        let stricter = "title: T\nlimits: eu-853\nstricter:\n  - { limit: hold, at-most: 3 °C, watch: the learner, every: each piece, if-missed: Chill it. }\n";
        let lines = "start: { piece: pork-whole, weight: 1.6–2.0 kg, temperature: 0–4 °C }
#                                                            ^ fault[start-above-hold-limit] 1 °C above the 3 °C that this guidebook sets under `stricter`";
        guide(stricter, "pork", lines);
    }
}
