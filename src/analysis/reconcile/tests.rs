//! Small tables, each with what a careful reader says of it.

use super::edits::Slip;
use super::reconcile;
use super::sheet::Column;
use super::testing::sheet;
use super::verdict::{Reconciled, Why};

fn told(text: &str) -> (Reconciled, Vec<String>) {
    let sheet = sheet(text);
    let reconciled = reconcile(&sheet);
    let odd = reconciled.oddities.iter().map(|oddity| {
        let number = |value: Option<super::decimal::Decimal>| value.map_or("nothing".into(), |value| value.to_string());
        format!("{} {}: {} not {}", sheet.rows[oddity.row].item, oddity.column.word(), number(oddity.expected), number(oddity.stated))
    });
    let odd = odd.collect();
    (reconciled, odd)
}

#[test]
fn swapped_digits_are_named() {
    let (found, odd) = told("item,share,kind\nHam,24,\nSide,19,\nLoin,18,\nPicnic,9,\nButt,9,\nRest,12,\nAll,100,total");
    assert!(!found.closes());
    assert_eq!(odd, ["Rest share: 21 not 12"]);
    assert_eq!(found.oddities[0].why, Why::Slip(Slip::Swapped));
    let sum = &found.sums[0];
    assert_eq!((sum.stated.whole(), sum.found.whole(), sum.miss.whole()), (Some(100), Some(91), Some(-9)));
    assert_eq!((sum.bound.to_string().as_str(), sum.is_rounding()), ("3.5", false));
}

/// What is odd, and why.
fn odd(text: &str) -> Vec<(String, Why)> {
    let (found, odd) = told(text);
    odd.into_iter().zip(found.oddities).map(|(told, oddity)| (told, oddity.why)).collect()
}

fn only(text: &str) -> (String, Why) {
    let mut odd = odd(text);
    assert_eq!(odd.len(), 1, "{odd:#?}");
    odd.remove(0)
}

#[test]
fn a_row_twice_and_a_sum_among_the_parts_are_named() {
    let (row, why) = only("item,weight,kind\nLoin,23,\nButt,9,\nHam,28,\nHam,28,\nFeet,3,\nAll,63,total");
    assert_eq!((row.as_str(), why), ("Ham weight: 0 not 28", Why::CountedTwice));
    let (row, why) = only("item,weight,kind\nHam,12,\nLoin,9,\nBacon,10,\nMeat,31,\nLard,15,\nBone,8,\nAll,54,total");
    assert_eq!((row.as_str(), why), ("Meat weight: nothing not 31", Why::SumAmongParts { first: 0 }));
}

#[test]
fn a_total_of_other_rows_is_named() {
    let (row, why) = only("item,weight,kind\nHam,28.4,\nLoin,23.7,\nButt,9.1,\nFat,31.2,\nBone,8.8,\nAll,70.0,total");
    assert_eq!((row.as_str(), why), ("All weight: 101.2 not 70", Why::TotalLeavesOut { row: 3 }));
    let (row, why) = only("item,weight,kind\nHam,28.4,\nLoin,23.7,\nButt,9.1,\nFat,31.2,\nBone,8.8,\nAll,61.2,total");
    assert_eq!((row.as_str(), why), ("All weight: 101.2 not 61.2", Why::TotalOfSome { first: 0, last: 2 }));
    let text = "item,group,weight,kind\nHam,meat,28.4,\nFat,rest,31.2,\nLoin,meat,23.7,\nBone,rest,8.8,\nButt,meat,9.1,\nAll,,61.2,total";
    let (row, why) = only(text);
    assert_eq!((row.as_str(), why), ("All weight: 101.2 not 61.2", Why::TotalOfGroup { group: "meat".into() }));
}

#[test]
fn one_empty_cell_is_filled_and_several_are_not() {
    let (row, why) = only("item,weight,share,kind\nHam,45.0,24,\nLoin,,18,\nRest,105.2,57,\nAll,184.0,100,total");
    assert_eq!((row.as_str(), why), ("Loin weight: 33.8 not nothing", Why::NotStated));
    let (found, named) = told("item,weight,kind\nHam,45.0,\nLoin,,\nSide,,\nRest,71.3,\nAll,184.0,total");
    assert_eq!((found.closes(), named.len(), found.unexplained.len()), (false, 0, 1));
}

#[test]
fn a_share_on_the_base_of_its_group_is_named() {
    let text = "item,group,weight,share,kind\nRibs,loin,50.3,25.0,\nBoneless,loin,150.9,30.0,\nLoin,loin,201.2,40.0,subtotal\n\
                Ham,,301.8,60.0,\nAll,,503.0,100.0,total";
    let (row, why) = odd(text).into_iter().find(|(row, _)| row.starts_with("Ribs")).unwrap();
    assert_eq!((row.as_str(), why), ("Ribs share: 10 not 25", Why::OnOtherBase { row: 2 }));
}

#[test]
fn a_total_that_is_not_marked_is_told() {
    let (row, why) = only("item,weight\nHam,28\nLoin,23\nButt,9\nAll,60");
    assert_eq!((row.as_str(), why), ("All weight: nothing not 60", Why::LooksLikeTotal));
}

/// Without a stated total, shares are held against 100 when every part has both figures and the weights close, only then.
#[test]
fn shares_are_held_against_the_whole_only_when_they_are_of_it() {
    let sums = |text: &str| told(text).0.sums.iter().filter(|sum| sum.plan.column == Column::Share).count();
    assert_eq!(sums("item,weight,share,kind\nHam,30,60,\nLoin,20,40,\nAll,50,,total"), 1);
    assert_eq!(sums("item,weight,share,kind\nHam,30,60,\nLoin,20,,\nAll,50,,total"), 0);
    assert_eq!(sums("item,weight,share,kind\nHam,30,60,\nLoin,,40,\nAll,50,,total"), 0);
    assert_eq!(sums("item,weight,share,kind\nHam,30,60,\nLoin,20,40,\nAll,90,,total"), 0);
    assert_eq!(sums("item,weight,share\nHam,30,60\nLoin,20,40"), 0);
    assert_eq!(sums("item,share\nHam,60\nLoin,30"), 0);
}

/// A group whose parts are silent in a column counts with its subtotal there.
#[test]
fn a_subtotal_stands_for_a_silent_group() {
    let text = "item,group,weight,share,kind\nChops,loin,6,,\nRibs,loin,4,,\nLoin,loin,10,20,subtotal\nHam,,40,80,\nAll,,50,100,total";
    let (found, odd) = told(text);
    assert!(found.closes() && odd.is_empty(), "{odd:?}");
    assert_eq!(found.sums.len(), 3);
    assert!(found.sums.iter().all(super::sums::Sum::is_exact));
}
