//! The commonest slips of the pen, and what a newcomer reads on the terminal: what, where, by how much, what to type.
#![allow(clippy::unwrap_used, clippy::panic, clippy::print_stdout, reason = "a test may fail")]

use seamwise::finding::text::{Style, render};
use seamwise::source::{Entry, Files};

/// A guide without a mistake.
const GUIDE: &str = "\
title: Pork loin off the bone
species: pork
revision:
  number: 2
  date: 2026-10-05
  author: course lead
  approved-by: head butcher
  review-by: 2027-10-05
  change: The ribs are counted before the loin is lifted.
start:
  piece: pork-loin
  weight: 6.5–8.0 kg
  typical: 7.2 kg
  temperature: 0–4 °C
cautions: [keep-cold]
steps:
  - name: Lift the loin
    take: pork-loin
    do: Cut along the feather bones. Then follow the ribs.
    tools: [boning-knife]
    cautions: [protect-holding-hand, blade-away-from-body]
    wear: [mesh-gauntlet]
    minutes: 5–12
    give:
      pork-eye-rough: 66–72 %
      pork-frame: { share: 27.6–33.6 %, counts: { ribs: 11 } }
    loss: 0–0.5 %
  - name: Saw the ribs off
    take: pork-frame
    do: Take off every glove. Feed the frame with the pusher.
    tools: [band-saw]
    cautions: [no-glove-at-moving-blade, saw-guard-and-pusher, isolate-before-cleaning, bone-splinters]
    wear: [eye-protection]
    minutes: 3–4
    give:
      pork-ribs: { share: 40–48 %, counts: { ribs: 11 }, use: retail }
      pork-bone: { share: 50.5–59 %, use: bone }
    loss: 0.5–2 %
  - name: Trim the loin
    take: pork-eye-rough
    do: Plane the fat to 3 mm.
    tools: [slicing-knife]
    cautions: [protect-holding-hand]
    wear: [mesh-gauntlet]
    minutes: 5–10
    give:
      pork-eye: { share: 84–90 %, use: retail }
      pork-lean: { share: 5–9 %, use: lean-trim }
      pork-fat: { share: 4–8 %, use: fat-trim }
    loss: 0–0.5 %
";

/// Everything the terminal shows of the guide.
fn shown(guide: Vec<u8>) -> String {
    let mut files = Files::new();
    files.insert("guidebook.yaml".to_owned(), Entry::File(b"title: Cutting guides\nlimits: eu-853\n".to_vec()));
    files.insert("pork/loin.yaml".to_owned(), Entry::File(guide));
    let inspection = seamwise::inspect(files);
    render(&inspection.findings, inspection.accepted.len(), &inspection.sources, Style::default())
}

/// What is shown of the guide with one slip, which must be one fault in eight lines of eighty columns at most.
#[track_caller]
fn slip(from: &str, to: &str) -> String {
    assert_eq!(GUIDE.matches(from).count(), 1, "`{from}` must stand in the guide once");
    held(shown(GUIDE.replace(from, to).into_bytes()))
}

#[track_caller]
fn held(shown: String) -> String {
    let (finding, summary) = shown.trim_end().rsplit_once("\n\n").unwrap_or_else(|| panic!("{shown}"));
    assert_eq!(summary, "1 fault in 1 file", "{shown}");
    assert!(finding.lines().count() <= 8, "more than eight lines:\n{finding}");
    assert!(finding.lines().all(|line| line.chars().count() <= 80), "wider than eighty columns:\n{finding}");
    assert!(finding.contains(" = help: "), "nothing to type:\n{finding}");
    finding.to_owned()
}

#[test]
fn the_guide_without_a_slip_is_sound() {
    assert_eq!(shown(GUIDE.as_bytes().to_vec()), "no faults\n");
}

#[test]
fn a_weight_without_a_unit() {
    insta::assert_snapshot!(slip("weight: 6.5–8.0 kg", "weight: 6.5–8.0"), @r#"
    fault[unit-missing]: a weight without a unit: `6.5–8.0`
      --> pork/loin.yaml:12:11
       |
    12 |   weight: 6.5–8.0
       |           ^^^^^^^
       = help: Add kg, g, lb or oz, as in `6.5–8.0 kg`.
    "#);
}

#[test]
fn a_range_upside_down() {
    insta::assert_snapshot!(slip("pork-eye-rough: 66–72 %", "pork-eye-rough: 72–66 %"), @r#"
    fault[range-inverted]: the range is upside down: 72 is above 66 %
      --> pork/loin.yaml:25:23
       |
    25 |       pork-eye-rough: 72–66 %
       |                       ^^^^^^^
       = help: Write `66–72 %`.
    "#);
}

#[test]
fn a_key_written_twice() {
    insta::assert_snapshot!(slip("    minutes: 5–12\n", "    minutes: 5–12\n    minutes: 6–12\n"), @r#"
    fault[doubled-key]: `minutes` stands here twice
      --> pork/loin.yaml:24:5
       |
    23 |     minutes: 5–12
       |     ------- it stands here first
    24 |     minutes: 6–12
       |     ^^^^^^^
       = help: Keep one of the two, or give one another name.
    "#);
}

#[test]
fn a_misspelt_piece() {
    insta::assert_snapshot!(slip("take: pork-frame", "take: pork-farme"), @r#"
    fault[piece-unknown]: no step gives `pork-farme`, and the work does not start
        from it
      --> pork/loin.yaml:29:11
       |
    29 |     take: pork-farme
       |           ^^^^^^^^^^
       = help: Write `pork-frame`.
    "#);
}

#[test]
fn over_the_whole() {
    insta::assert_snapshot!(slip("pork-eye-rough: 66–72 %", "pork-eye-rough: 76–80 %"), @r#"
    fault[shares-exceed-whole]: the low ends of `Lift the loin` add up to 103.6 %,
        3.6 points over what the step takes (0.259 kg of a 7.2 kg start)
      --> pork/loin.yaml:24:5
       |
    24 |     give:
       |     ^^^^
       = help: Lower a low end: `pork-eye-rough: 72.4–80 %` would fit.
    "#);
}

#[test]
fn short_of_the_whole() {
    insta::assert_snapshot!(slip("pork-eye: { share: 84–90 %", "pork-eye: { share: 74–80 %"), @r#"
    fault[shares-fall-short]: the high ends of `Trim the loin` add up to 97.5 %, 2.5
        points short of what the step takes (0.124 kg of a 7.2 kg start)
      --> pork/loin.yaml:46:5
       |
    46 |     give:
       |     ^^^^
       = help: Raise a high end: `pork-eye: 74–82.5 %` would fit.
    "#);
}

#[test]
fn a_use_left_out() {
    insta::assert_snapshot!(slip(" counts: { ribs: 11 }, use: retail }", " counts: { ribs: 11 } }"), @r#"
    fault[final-piece-without-use]: no step takes `pork-ribs`, and it has no use
      --> pork/loin.yaml:36:18
       |
    36 |       pork-ribs: { share: 40–48 %, counts: { ribs: 11 } }
       |                  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
       = help: Add `use:` with one of retail, for-cutting, lean-trim, fat-trim,
               bone, skin, offal, inedible, risk-material.
    "#);
}

#[test]
fn a_tab_in_the_indentation() {
    insta::assert_snapshot!(slip("    take: pork-frame", "\ttake: pork-frame"), @r#"
    fault[tab-indent]: a tab stands in the indentation, where YAML takes spaces only
      --> pork/loin.yaml:29:1
       |
    29 |     take: pork-frame
       | ^^^^
       = help: Put spaces in its place.
    "#);
}

#[test]
fn a_date_in_another_order() {
    insta::assert_snapshot!(slip("date: 2026-10-05", "date: 13.10.2026"), @r#"
    fault[date-malformed]: expected a date as year-month-day, found `13.10.2026`
     --> pork/loin.yaml:5:9
      |
    5 |   date: 13.10.2026
      |         ^^^^^^^^^^
      = help: Write `2026-10-13`.
    "#);
}

#[test]
fn a_rib_too_many() {
    insta::assert_snapshot!(slip("counts: { ribs: 11 }, use", "counts: { ribs: 12 }, use"), @r#"
    fault[counts-not-conserved]: `Saw the ribs off` takes 11 ribs and gives 12: 1
        too many
      --> pork/loin.yaml:35:5
       |
    35 |     give:
       |     ^^^^
       = help: Make the ribs add up to 11, or write `rest` for one output.
    "#);
}

#[test]
fn a_line_out_of_line() {
    insta::assert_snapshot!(slip("    take: pork-frame", "   take: pork-frame"), @r#"
    fault[indent]: `take` does not line up with the keys around it
      --> pork/loin.yaml:29:4
       |
    29 |    take: pork-frame
       |    ^^^^
       = help: Begin it in the same column as the keys that it belongs with.
    "#);
}

#[test]
fn a_key_left_out() {
    insta::assert_snapshot!(slip("    do: Plane the fat to 3 mm.\n", ""), @r#"
    fault[missing-key]: `do` is missing from a step
      --> pork/loin.yaml:39:5
       |
    39 |   - name: Trim the loin
       |     ^^^^
       = help: Add `do:` here.
    "#);
}

#[test]
fn another_encoding() {
    let mut bytes = GUIDE.replace("title: Pork loin", "title: Pork ca").into_bytes();
    bytes.splice(14..14, *b"f\xe9 loin");
    insta::assert_snapshot!(held(shown(bytes)), @r#"
    fault[not-utf-8]: the byte 0xE9 here is not UTF-8; in Latin-1 or Windows-1252 it
        would be `é`
     --> pork/loin.yaml:1:16
      |
    1 | title: Pork caf� loin off the bone
      |                ^
      = help: Save the file again with the encoding UTF-8.
    "#);
}
