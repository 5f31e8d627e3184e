//! What holds for every table: rounding is told as rounding, sums are exact, and nothing that stands in a file ends the
//! program otherwise than by an answer.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

#[path = "reconcile/reading.rs"]
mod reading;

use proptest::collection::vec;
use proptest::prelude::{ProptestConfig, Strategy, any, prop_assert, prop_assert_eq, proptest};
use proptest::test_runner::FileFailurePersistence;
use reading::{found, found_if_read};
use seamwise::analysis::reconcile::decimal::Decimal;

/// A number of thousandths rounded to a tenth, as printed; half goes up.
fn to_a_tenth(thousandths: u64) -> String {
    let tenths = (thousandths + 50) / 100;
    format!("{}.{}", tenths / 10, tenths % 10)
}

/// Weights in thousandths, a row each, and the group of each.
fn weighed() -> impl Strategy<Value = Vec<(u64, u8)>> {
    vec((1_000_u64..400_000, 0_u8..3), 2..20)
}

/// A table whose every figure is rounded by itself from the same true weights.
fn rounded(rows: &[(u64, u8)], share_decimals: u32) -> String {
    let total: u64 = rows.iter().map(|(weight, _)| weight).sum();
    let unit = 10_u64.pow(share_decimals);
    let share = |weight: u64| {
        let steps = (200 * unit * weight + total) / (2 * total);
        if share_decimals == 0 { steps.to_string() } else { format!("{}.{}", steps / unit, steps % unit) }
    };
    let mut text = "item,group,weight,share,kind\n".to_owned();
    for (at, (weight, group)) in rows.iter().enumerate() {
        text.push_str(&format!("piece {at},group {group},{},{},\n", to_a_tenth(*weight), share(*weight)));
    }
    for group in 0..3 {
        let weights: Vec<u64> = rows.iter().filter(|(_, of)| *of == group).map(|(weight, _)| *weight).collect();
        if !weights.is_empty() {
            let sum = weights.iter().sum();
            text.push_str(&format!("group {group},group {group},{},{},subtotal\n", to_a_tenth(sum), share(sum)));
        }
    }
    text.push_str(&format!("all,,{},100,total\n", to_a_tenth(total)));
    text
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: Some(Box::new(FileFailurePersistence::Direct("tests/seeds/reconcile.txt"))), ..ProptestConfig::default() })]

    /// The miss of rows that are rounded by themselves is never called anything but rounding, and no row is blamed.
    #[test]
    fn tables_that_are_only_rounded_close(rows in weighed(), share_decimals in 0_u32..2) {
        let text = rounded(&rows, share_decimals);
        let found = found(&text);
        prop_assert!(found.reconciled.closes(), "{}", text);
        prop_assert_eq!(found.odd(), Vec::<String>::new(), "{}", text);
    }

    /// Against whole numbers: sums, misses and bounds of decimals with any number of digits are exact.
    #[test]
    fn sums_are_exact(rows in vec((0_i128..1_000_000, 0_u32..6), 1..30), total in (0_i128..30_000_000, 0_u32..6)) {
        let printed = |(digits, decimals): (i128, u32)| Decimal::new(digits, decimals).padded(decimals);
        let mut text = "item,weight,kind\n".to_owned();
        for (at, row) in rows.iter().enumerate() {
            text.push_str(&format!("piece {at},{},\n", printed(*row)));
        }
        text.push_str(&format!("all,{},total\n", printed(total)));
        let sum = found(&text).reconciled.sums.remove(0);
        let millionths = |(digits, decimals): (i128, u32)| digits * 10_i128.pow(6 - decimals);
        let added: i128 = rows.iter().map(|row| millionths(*row)).sum();
        prop_assert_eq!(sum.found, Decimal::new(added, 6));
        prop_assert_eq!(sum.miss, Decimal::new(added - millionths(total), 6));
        let halves: i128 = rows.iter().chain([&total]).map(|(_, decimals)| millionths((1, *decimals))).sum();
        prop_assert_eq!(sum.bound, Decimal::new(5 * halves, 7));
        // The float that goes into JSON prints as the decimal does: no dust behind the last digit.
        for number in [sum.found, sum.miss, sum.bound] {
            prop_assert_eq!(number.float().to_string(), number.to_string());
        }
    }

    /// n rows printed to q: n·q/2 + q/2.
    #[test]
    fn equal_last_digits_give_the_plain_bound(count in 1_usize..40, decimals in 0_u32..4) {
        let figure = Decimal::new(7, decimals).padded(decimals);
        let rows: String = (0..count).map(|at| format!("piece {at},{figure},\n")).collect();
        let sum = found(&format!("item,weight,kind\n{rows}all,{figure},total\n")).reconciled.sums.remove(0);
        let steps = i128::try_from(count).unwrap() + 1;
        prop_assert_eq!(sum.bound, Decimal::new(5 * steps, decimals + 1));
    }

    /// The order of rows changes neither what closes nor by how much.
    #[test]
    fn the_order_of_rows_does_not_matter(rows in weighed(), wrong in 0_u64..500) {
        let text = rounded(&rows, 1);
        let (header, body) = text.split_once('\n').unwrap();
        let mut lines: Vec<String> = body.lines().map(str::to_owned).collect();
        lines[0] = lines[0].replacen(&to_a_tenth(rows[0].0), &to_a_tenth(rows[0].0 + wrong * 1000), 1);
        let misses = |lines: &[String]| {
            let found = found(&format!("{header}\n{}\n", lines.join("\n")));
            let mut misses: Vec<(Option<String>, Decimal, Decimal)> =
                found.reconciled.sums.iter().map(|sum| (sum.group.clone(), sum.miss, sum.bound)).collect();
            misses.sort();
            misses
        };
        let forward = misses(&lines);
        lines.reverse();
        prop_assert_eq!(forward, misses(&lines));
    }

    /// Whatever stands in the cells, there is an answer or a fault.
    #[test]
    fn any_cells_give_an_answer(cells in vec(vec(cell(), 5), 0..12)) {
        let rows: String = cells.iter().map(|row| row.join(",") + "\n").collect();
        let _ = found_if_read(&format!("item,group,weight,share,kind\n{rows}"));
    }

    /// Whatever stands in the file, too.
    #[test]
    fn any_text_gives_an_answer(text in "\\PC{0,200}", lines in vec(any::<String>(), 0..5)) {
        let _ = found_if_read(&text);
        let _ = found_if_read(&lines.join("\n"));
    }
}

/// Cells as people write them, sound and not.
fn cell() -> impl Strategy<Value = String> {
    proptest::prop_oneof![
        "[0-9]{0,10}\\.?[0-9]{0,4}",
        "-?[0-9]{1,3} (lb|oz|kg|g|%)",
        "[0-9]{1,2} lb [0-9]{1,2} oz",
        "(part|subtotal|total|ham|loin|)",
        "[ -+\\--~]{0,6}".prop_map(|text| text.replace(['"', ','], "")),
    ]
}
