//! Tables from the bytes on: what is refused with its place, what is said in words and in JSON.

use super::{answer, read, text};
use crate::analysis::reconcile::reconcile;
use crate::finding::SourceMap;

fn words(table: &str) -> String {
    let mut sources = SourceMap::default();
    let sheet = read("table.csv", table.as_bytes().to_vec(), &mut sources).unwrap();
    text::render("table.csv", &sheet, &reconcile(&sheet), 80)
}

fn json(table: &str) -> String {
    let mut sources = SourceMap::default();
    let sheet = read("table.csv", table.as_bytes().to_vec(), &mut sources).unwrap();
    answer::json(&sheet, &reconcile(&sheet))
}

/// All that is wrong with a table: line, column, message, help.
fn refused(table: &[u8]) -> Vec<String> {
    let mut sources = SourceMap::default();
    let findings = read("table.csv", table.to_vec(), &mut sources).unwrap_err();
    let told = findings.iter().map(|finding| {
        let at = sources.line_column(finding.place);
        format!("{}:{} {}; {}", at.line, at.column, finding.message, finding.help)
    });
    told.collect()
}

/// Shares of the National Pork Producers Council sheet with the digits of the last one swapped back and forth.
const SWAPPED: &str =
    "item,weight,share,kind\nHam,45.0,24,\nSide,34.9,19,\nLoin,33.8,18,\nPicnic,16.6,9,\nButt,14.7,8,\nRest,39.2,12,\nAll,184,100,total\n";

#[test]
fn json_is_as_the_format_promises() {
    let expected = r#"{
  "closes": false,
  "sums": [
    {
      "group": null,
      "column": "weight",
      "stated": 184,
      "found": 184.2,
      "miss": 0.2,
      "bound": 0.8,
      "rounding": true
    },
    {
      "group": null,
      "column": "share",
      "stated": 100,
      "found": 90,
      "miss": -10,
      "bound": 3.5,
      "rounding": false
    }
  ],
  "rows": [
    {
      "item": "Rest",
      "column": "share",
      "stated": 12,
      "expected": 21.3,
      "why": "two digits look swapped: 39.2 of 184 is 21.3 %"
    }
  ]
}
"#;
    assert_eq!(json(SWAPPED), expected);
}

#[test]
fn numbers_have_no_dust() {
    let answer = json("item,weight,kind\na,0.1,\nb,0.2,\nc,0.7,\nall,1.1,total\n");
    assert!(answer.contains("\"found\": 1,\n") && answer.contains("\"miss\": -0.1,") && answer.contains("\"bound\": 0.2,"), "{answer}");
    let ounces = json("item,weight,kind\na,6 lb 9 oz,\nb,4 lb 4 oz,\nall,10 lb 12 oz,total\n");
    assert!(ounces.contains("\"found\": 10.8125,") && ounces.contains("\"miss\": 0.0625,"), "{ounces}");
}

#[test]
fn words_say_verdict_base_bound_and_row() {
    let expected = "\
table.csv: it does not add up; 1 of 2 sums misses by more than rounding
explains.

Weight  stated  rows come to  miss  rounding
──────────────────────────────────────────────────────
All        184         184.2  +0.2      ±0.8  rounding

Share, %  stated  rows come to  miss  rounding
──────────────────────────────────────────────────────────────
All          100            90   -10      ±3.5  does not close

Rounding reaches half the last printed digit of every row, and of what is
stated.
Shares are of 184, the stated weight of `All`.

Worth a look
  `Rest`, share: 12 %, expected 21.3 %
    two digits look swapped: 39.2 of 184 is 21.3 %.
";
    assert_eq!(words(SWAPPED), expected);
}

#[test]
fn words_fit_their_columns_and_keep_a_number_with_its_unit() {
    let long = "Boneless country-style end of the loin with the false lean left on";
    let told = words(&format!(
        "item,group,weight,kind\n{long},A very long name of a group of pieces,3 lb 4 oz,\n{long},A very long name of a group of pieces,13 lb 4 oz,\nAll,A very long name of a group of pieces,17 lb 15 oz,subtotal\n"
    ));
    assert!(told.lines().all(|line| line.chars().count() <= 80), "{told}");
    assert!(told.contains("does not close") && !told.contains('\u{a0}'), "{told}");
    assert!(told.lines().all(|line| !line.trim_start().starts_with("lb") && !line.trim_start().starts_with("oz")), "{told}");
}

#[test]
fn what_rounding_explains_is_said_calmly() {
    let told = words("item,weight,kind\na,3.7,\nb,17.0,\nc,6.6,\nd,2.1,\ne,13.8,\nf,5.6,\nLoin,49.0,total\n");
    assert!(told.starts_with("table.csv: it adds up; its one sum misses by no more than rounding explains.\n"), "{told}");
    assert!(!told.contains("Worth a look"), "{told}");
}

#[test]
fn a_part_of_the_whole_is_called_that() {
    let told = words("item,share\nChuck,11\nRib,5\nRound,12\n");
    assert!(told.contains("add up to 28 %, a part of the whole. The\nother 72 % is in no row"), "{told}");
    let more = words("item,share\nShoulder,36\nBreast,17\nRack,8\nLoin,13\nLeg,34\n");
    assert!(more.contains("add up to 108 %, 8 % more than a whole"), "{more}");
}

#[test]
fn a_table_that_cannot_be_read_is_told_with_its_places() {
    assert_eq!(refused(b"item,weigth,kind\nHam,3,\n"), ["1:6 `weigth` is no column of such a table; Write `weight`."]);
    assert_eq!(
        refused(b"item,weight,kind\nHam,\"12,5\",\nLoin,3-4 kg,\nButt,3,totl\n"),
        [
            "2:5 expected a weight, found `12,5`; Write a decimal point, or thousands without a comma: `12.5` or `125`.",
            "3:6 expected a weight, found `3-4 kg`; Write one figure: a range does not add up.",
            "4:8 `totl` is no kind of row; Write `total`.",
        ]
    );
    assert_eq!(refused(b"item;weight\nHam;3\n").len(), 1);
    assert_eq!(
        refused(b"item,weight\nHam,3 lb\nLoin,4\n"),
        [
            "3:6 `4` has no unit, and other weights of this table have one; Write the unit here too, as in `4 lb`, or leave it out everywhere."
        ]
    );
    assert_eq!(refused(b"item,weight\nCaf\xe9,3\n").len(), 1);
    assert_eq!(refused(b"").len(), 1);
    assert_eq!(refused(b"item,weight\n").len(), 1);
    assert_eq!(refused(b"item,weight\n,3\n"), ["2:1 this row has no item; Write what was weighed."]);
}

#[test]
fn marks_of_other_programs_do_not_matter() {
    let plain = json("item,weight,kind\nHam,3,\nLoin,4,\nAll,7,total\n");
    let marked = "\u{feff}item,weight,kind\r\nHam,3,\r\nLoin,4,\r\n,,\r\nAll,7,total\r\n";
    assert_eq!(json(marked), plain);
}
