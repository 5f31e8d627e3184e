//! Broken and sound documents, and what is said of them where.

use super::decode;
use crate::finding::{Finding, SourceMap};
use crate::source::documents::others::{Cut, Prices};
use crate::source::documents::procedure::{Output, Procedure};
use crate::source::documents::shared::{OneOrMany, ToolChoice};
use crate::source::field::Entries;
use crate::source::yaml::parse;

const SOUND: &str = "\
title: Whole chicken into legs and crown
species: chicken
house-cut: true                 # the usual way
revision: { number: 3, date: 2026-10-12, author: course lead }
start:
  piece: chicken-whole
  weight: 1.6–2.0 kg
  as: without giblets, drained
steps:
  - name: Take off the legs
    take: chicken-whole         # one piece
    do: |
      Fold each leg back # until it opens.
    tools: [boning-knife, { any-of: [band-saw, hand-saw] }]
    minutes: 1–3                # from a trained cutter
    give:
      chicken-legs: { share: 31–35 %, pieces: 2 }
      chicken-crown: rest
    loss: 0–0.3 %
";

/// `check line:column` of each finding, after reading as `T`.
fn found<T: for<'de> serde::Deserialize<'de>>(text: &str) -> (Option<T>, Vec<Finding>, Vec<String>) {
    let mut sources = SourceMap::default();
    let file = sources.add("a.yaml", text);
    let (node, mut findings) = parse(text, file);
    let value = node.and_then(|node| {
        let (value, more) = decode::<T>(&node, file);
        findings.extend(more);
        value
    });
    let told = findings.iter().map(|finding| {
        let at = sources.line_column(finding.place);
        format!("{} {}:{}", finding.check, at.line, at.column)
    });
    let told = told.collect();
    (value, findings, told)
}

fn told(text: &str) -> Vec<String> {
    found::<Procedure>(text).2
}

/// The sound document with one thing changed.
fn changed(from: &str, to: &str) -> String {
    assert!(SOUND.contains(from), "the sample holds `{from}`");
    SOUND.replacen(from, to, 1)
}

#[test]
fn a_sound_procedure_is_read_with_places() {
    let (value, findings, _) = found::<Procedure>(SOUND);
    assert_eq!(findings, []);
    let procedure = value.unwrap();
    assert_eq!(procedure.title.value().unwrap().0, "Whole chicken into legs and crown");
    assert_eq!(procedure.house_cut.value(), Some(&true));
    assert!(procedure.yields.is_absent());
    let step = procedure.steps.value().unwrap()[0].value().unwrap();
    assert!(matches!(step.take.value(), Some(OneOrMany::One(id)) if id.0 == "chicken-whole"));
    assert_eq!(step.instruction.value().unwrap().0, "Fold each leg back # until it opens.\n");
    assert_eq!(&SOUND[step.instruction.span.range()], "|\n      Fold each leg back # until it opens.");
    assert_eq!(&SOUND[step.instruction.key.range()], "do");
    assert!(matches!(step.tools.value().unwrap()[1].value(), Some(ToolChoice::Any(_))));
    let give = step.give.value().unwrap();
    assert_eq!(give.entries.iter().map(|entry| entry.name.as_str()).collect::<Vec<_>>(), ["chicken-legs", "chicken-crown"]);
    let Some(Output::Long(legs)) = give.entries[0].value.value() else { panic!("the long form") };
    assert_eq!(&SOUND[legs.share.span.range()], "31–35 %");
    assert_eq!(&SOUND[legs.share.key.range()], "share");
    // What is absent stands at the first key of the mapping that lacks it, or at its brace.
    assert_eq!(&SOUND[step.hold.key.range()], "name");
    assert_eq!(&SOUND[legs.typical.key.range()], "{");
}

#[test]
fn every_mistake_of_a_file_is_told_in_order() {
    let text = "\
title: Chicken
titel: Again
species:
house-cut: yes
revision: { number: 3, number: 4, date: 2026-10-12 }
start: chicken-whole
purpose: Cut #3 of the side
steps:
  - name: Take off the legs
    takes: chicken-whole
    tool: [boning-knife]
    minutes: [1, 3]
    give: rest
  - nothing here
  -
yields: [a]
needs: pork/loin
";
    let (value, _, told) = found::<Procedure>(text);
    let expected = [
        "unknown-key 2:1",
        "empty-value 3:1",
        "not-true-or-false 4:12",
        "missing-key 5:11",
        "doubled-key 5:24",
        "wrong-kind 6:8",
        "hash-cuts-text 7:10",
        "missing-key 9:5",
        "unknown-key 10:5",
        "unknown-key 11:5",
        "wrong-kind 12:14",
        "wrong-kind 13:11",
        "wrong-kind 14:5",
        "empty-value 15:3",
        "wrong-kind 16:9",
        "wrong-kind 17:8",
    ];
    assert_eq!(told, expected);
    let procedure = value.unwrap();
    assert!(procedure.title.value().is_some(), "what is sound is kept");
    assert!(procedure.species.is_broken());
    let step = procedure.steps.value().unwrap()[0].value().unwrap();
    assert!(step.take.is_broken(), "meant by `takes`, so not missing");
    assert!(step.tools.is_broken());
    assert!(procedure.steps.value().unwrap()[1].is_broken());
}

#[test]
fn an_unknown_key_offers_the_likely_one() {
    let help =
        |from: &str, to: &str| found::<Procedure>(&changed(from, to)).1.iter().map(|finding| finding.help.clone()).collect::<Vec<_>>();
    assert_eq!(help("    give:", "    outputs:"), ["Write `give`."]);
    assert_eq!(help("house-cut", "House_Cut"), ["Write `house-cut`."]);
    assert_eq!(help("    minutes:", "    minute:"), ["Write `minutes`."]);
    assert_eq!(help("    tools:", "    knife:"), ["Write `tools`."]);
    assert_eq!(help("    minutes: 1–3 ", "    warnings: [a]"), ["Write `cautions`."]);
    assert_eq!(help("    minutes: 1–3 ", "    ppe: [a]"), ["Write `wear`."]);
    assert_eq!(help("title:", "yield: {}\ntitle:"), ["Write `yields`."]);
    let all = "Keys that go here: `temperature`, `typical`, `sources`, `weight`, `piece`, `side`, `as`.";
    assert!(help("  as:", "  colour-of-the-label:")[0].len() == all.len());
    let far = help("    take:", "    colour-of-the-label: x\n    take:");
    assert!(far[0].ends_with(" and 17 more."), "{far:?}");
}

#[test]
fn a_key_in_another_dress_is_refused_but_read() {
    let (value, findings, _) = found::<Procedure>(&changed("house-cut", "House_Cut"));
    assert_eq!(findings.len(), 1);
    assert_eq!(value.unwrap().house_cut.value(), Some(&true));
}

#[test]
fn each_wrong_value_is_told_where_it_stands() {
    let cases: &[(&str, &str, &[&str])] = &[
        ("title: Whole", "title: Loin # 3 Whole", &["hash-cuts-text 1:8"]),
        ("title: Whole chicken", "title: Whole # chicken", &["hash-cuts-text 1:8"]),
        ("title: Whole chicken", "title: Whole  # chicken", &[]),
        ("title: Whole chicken", "title: Whole  #chicken", &[]),
        ("title: Whole chicken", "title: Whole  #2 chicken", &["hash-after-text 1:8"]),
        ("title: Whole chicken", "title: Whole #chicken", &["hash-cuts-text 1:8"]),
        ("title: Whole chicken", "title: Whole#chicken", &[]),
        ("as: without giblets, drained", "as: without giblets # drained", &["hash-cuts-text 8:7"]),
        ("piece: chicken-whole", "piece: [chicken-whole]", &["wrong-kind 6:10"]),
        ("tools: [boning-knife,", "tools: [!!str boning-knife,", &["yaml-tag 14:13"]),
        ("house-cut: true ", "house-cut: \"true\" ", &[]),
        ("weight: 1.6–2.0 kg", "weight: \"\"", &["empty-value 7:11"]),
        ("weight: 1.6–2.0 kg", "weight: ~", &[]),
        ("pieces: 2", "piece, s", &["unknown-key 17:39", "unknown-key 17:46"]),
        ("pieces: 2", "pieces:2", &["space-missing 17:39"]),
        ("as: without giblets, drained", "as:\"without: giblets\"", &["space-missing 8:3"]),
        ("{ share: 31–35 %, pieces: 2 }", "[31, 35]", &["wrong-kind 17:21"]),
        ("chicken-crown: rest", "chicken-legs: rest", &["doubled-key 18:7"]),
        ("tools: [boning-knife,", "tools:\n      -boning-knife\n    wear: [", &["space-missing 15:7", "wrong-kind 16:13"]),
        ("    loss: 0–0.3 %", "    sources:\n      - Handbook: chapter 3", &["colon-in-text 20:9"]),
        ("    loss: 0–0.3 %", "    ask: [{ question: Why, really so, answer: So }]", &["comma-in-text 19:28"]),
        ("    loss: 0–0.3 %", "    pictures:\n      - { file: a.png, alt: Leg folded, joint open }", &["comma-in-text 20:41"]),
        ("    loss: 0–0.3 %", "    ? [a, b]\n    : c", &["wrong-kind 19:7"]),
    ];
    for (from, to, expected) in cases {
        let text = changed(from, to);
        assert_eq!(told(&text), *expected, "{to}");
    }
}

#[test]
fn a_cut_is_a_fault_after_one_blank_and_advice_after_more() {
    let level = |to: &str| found::<Procedure>(&changed("title: Whole", to)).1[0].level.word();
    assert_eq!(level("title: Whole # of"), "fault");
    assert_eq!(level("title: Whole  # 3 of"), "advice");
}

#[test]
fn a_merge_key_is_refused_without_a_trail_of_missing_keys() {
    let text = "a: &base\n  name: One\n  region: loin\nb:\n  <<: *base\n";
    assert_eq!(found::<Entries<Cut>>(text).2, ["anchor-or-alias 1:4", "anchor-or-alias 5:7"]);
}

#[test]
fn a_document_of_another_kind_is_one_finding() {
    for text in ["just words\n", "- a\n- b\n"] {
        let (value, _, told) = found::<Procedure>(text);
        assert!(value.is_none());
        assert_eq!(told, ["wrong-kind 1:1"], "{text}");
        assert_eq!(found::<Entries<Cut>>(text).2, ["wrong-kind 1:1"]);
    }
}

#[test]
fn other_documents_are_read() {
    let (prices, findings, _) =
        found::<Prices>("currency: EUR\ndate: 2026-11-02\nbuy:    { pork-side: 3.40 / kg }\ncooked: { boneless-loin: 70–75 % }\n");
    assert_eq!(findings, []);
    assert_eq!(prices.unwrap().buy.value().unwrap().entries[0].value.value().unwrap().0, "3.40 / kg");
    let (cuts, findings, _) = found::<Entries<Cut>>(
        "pork-tenderloin:\n  name: Tenderloin\n  also: [fillet, { psoas: uk }]\n  codes: { imps: \"0415\" }\n  per-animal: 2\n",
    );
    assert_eq!(findings, []);
    let cut = cuts.unwrap().entries.remove(0).value;
    assert_eq!(cut.value().unwrap().codes.value().unwrap().entries[0].value.value().unwrap().0, "0415");
}
