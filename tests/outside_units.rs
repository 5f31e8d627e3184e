//! Weights of both systems in one table, and what a rounding bound is not.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

#[path = "reconcile/reading.rs"]
mod reading;

use reading::found;

/// The miss and the bound of a table's only sum.
fn sum(text: &str) -> (String, String, bool) {
    let found = found(text);
    let sum = &found.reconciled.sums[0];
    (sum.miss.to_string(), sum.bound.to_string(), sum.closes())
}

/// NIST Special Publication 811, appendix B.8 (long digits from memory; read to seven digits in a printer manual's table
/// that repeats them): 1 lb is exactly 0.45359237 kg, and an ounce, its sixteenth, exactly 28.349523125 g.
#[test]
fn pounds_and_ounces_are_exact_in_kilograms() {
    assert_eq!(sum("item,weight,kind\nLean,1 lb,\nFat,546.40763 g,\nAll,1 kg,total\n").0, "0");
    assert_eq!(sum("item,weight,kind\nLean,28.349523125 g,\nAll,1 oz,total\n").0, "0");
    assert_eq!(sum("item,weight,kind\nLean,1 lb,\nAll,453.59237 g,total\n").0, "0");
    // The last of the long digits counts: a kilogram short of a nanogram is told as so much.
    assert_eq!(sum("item,weight,kind\nLean,1 lb,\nFat,546.407630001 g,\nAll,1 kg,total\n").0, "0.000000000001");
}

/// The same: sixteen ounces are a pound, and a table in pounds and ounces is printed to the ounce.
#[test]
fn pounds_and_ounces_add_up_by_sixteenths() {
    let (miss, bound, closes) = sum("item,weight,kind\nFat,6 lb 8 oz,\nBone,4 lb,\nLoss,4 oz,\nAll,10 lb 12 oz,total\n");
    // Four figures to the ounce: 4 · 1/2 oz = 2 oz.
    assert_eq!((miss.as_str(), bound.as_str(), closes), ("0", "0.125", true));
    let (miss, _, closes) = sum("item,weight,kind\nFat,6 lb 8 oz,\nBone,4 lb 4 oz,\nAll,10 lb 15 oz,total\n");
    assert_eq!((miss.as_str(), closes), ("-0.1875", false));
}

/// The national database for standard reference uses 453.6 g and 453.0 g for a pound in one file (USDA ARS, Release 28,
/// 2015, WEIGHT.txt, read). Neither is the exact pound, and a table to a tenth of a gram tells the second apart.
#[test]
fn a_rough_pound_is_told_apart_when_the_digits_allow() {
    assert!(sum("item,weight,kind\nAs bought,1.0000 lb,\nAll,453.6 g,total\n").2);
    assert!(!sum("item,weight,kind\nAs bought,1.0000 lb,\nAll,453.0 g,total\n").2);
}

/// NIST Handbook 44, section 2.20, table 6, class III (values from memory, cross-checked with a scale maker's handbook of
/// 1999): on 15 kg by 5 g, six pieces of 2 kg may be out by 30 g together and the 12 kg whole by 15 g. A rounding bound
/// is not a scale's tolerance: 20 g is within the one and far beyond the other, and this command speaks of rounding only.
#[test]
fn the_rounding_bound_is_not_the_tolerance_of_a_scale() {
    let rows = "a,2.005,\nb,2.000,\nc,2.005,\nd,2.000,\ne,2.005,\nf,2.005,\n";
    let (miss, bound, closes) = sum(&format!("item,weight,kind\n{rows}All,12.000,total\n"));
    assert_eq!((miss.as_str(), bound.as_str(), closes), ("0.02", "0.0035", false));
}

/// Loin rows of "Typical Market Pig Today" (National Pork Board, 2016, read): six rows to a tenth bound 0.35, miss 0.2.
#[test]
fn six_rows_to_a_tenth_reach_a_third_of_a_pound() {
    let rows = "Backribs,3.7,\nBoneless,17.0,\nSirloin,6.6,\nTenderloin,2.1,\nTrimmings,13.8,\nFat and bone,5.6,\n";
    let (miss, bound, closes) = sum(&format!("item,weight,kind\n{rows}Loin,49.0,total\n"));
    assert_eq!((miss.as_str(), bound.as_str(), closes), ("-0.2", "0.35", true));
}
