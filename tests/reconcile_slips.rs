//! One slip in a table that adds up exactly: how often the slip is named, by kind of slip and shape of table.
//!
//! The rates are measured on made tables with fixed seeds, printed with `--nocapture`, and held here a little below what
//! they are. A slip that stays within the rounding bound can't be seen and is counted apart. Where rows stand alone with
//! their total, one misread digit is often one of many that would close the table: then silence is right.
#![allow(clippy::ptr_arg, reason = "all injections have one signature")]
#![allow(clippy::print_stdout, reason = "the measured rates are what this file is for")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, reason = "a test may fail")]

#[path = "reconcile/making.rs"]
mod making;
#[path = "reconcile/reading.rs"]
mod reading;

use making::{Random, Row, SLIPS, Shape, Slip, csv, printed, slipped, table, tenths};
use reading::{Found, found};

const TABLES: u64 = 400;

/// What became of many slips.
#[derive(Debug, Default, Clone, Copy)]
struct Rate {
    /// Slips that moved a sum past its bound.
    seen: u32,
    /// Named alone with the right correction.
    alone: u32,
    /// Named beside others, said to be about as likely.
    among: u32,
    /// Nothing named.
    silent: u32,
    /// Something else named.
    wrong: u32,
    /// Slips within the rounding bound.
    unseen: u32,
}

impl Rate {
    fn count(&mut self, found: &Found, right: impl Fn(&str) -> bool) {
        if found.reconciled.closes() {
            self.unseen += 1;
            return;
        }
        self.seen += 1;
        let odd = found.odd();
        let at = odd.iter().position(|told| right(told));
        match (at, found.reconciled.oddities.first().map(|first| first.rivals)) {
            (Some(0), Some(1)) => self.alone += 1,
            (Some(_), _) => self.among += 1,
            (None, None) => self.silent += 1,
            (None, Some(_)) => self.wrong += 1,
        }
    }

    fn named(self) -> f64 {
        f64::from(self.alone + self.among) / f64::from(self.seen.max(1))
    }

    fn share(self, count: u32) -> f64 {
        f64::from(count) / f64::from(self.seen.max(1))
    }
}

fn told(name: &str, rate: Rate) {
    let percent = |count| 100.0 * rate.share(count);
    println!(
        "{name:<28} named {:>5.1} % (alone {:>5.1}, among equals {:>5.1}), silent {:>5.1}, wrong {:>5.1}; {} seen, {} within rounding",
        100.0 * rate.named(),
        percent(rate.alone),
        percent(rate.among),
        percent(rate.silent),
        percent(rate.wrong),
        rate.seen,
        rate.unseen
    );
}

fn part(rows: &[Row], random: &mut Random) -> usize {
    let parts: Vec<usize> = (0..rows.len()).filter(|at| rows[*at].kind.is_empty()).collect();
    parts[usize::try_from(random.between(0, parts.len() as u64 - 1)).unwrap()]
}

fn digit_slips(shape: Shape, slip: Slip) -> Rate {
    let mut rate = Rate::default();
    for seed in 0..TABLES {
        let mut random = Random::of(seed);
        let mut rows = table(&mut random, shape);
        let at = part(&rows, &mut random);
        let right = rows[at].weight.clone();
        let Some(wrong) = slipped(&right, slip, &mut random) else { continue };
        rows[at].weight = wrong;
        let name = format!("{} weight:", rows[at].item);
        let truth = right.trim_end_matches(".0").to_owned();
        rate.count(&found(&csv(&rows)), |told| told.starts_with(&name) && told.ends_with(&format!("-> {truth}")));
    }
    rate
}

/// Fails when fewer are named than `least` percent, or more get a wrong name alone or beside others than `most_wrong`.
fn hold(name: &str, rate: Rate, least: f64, most_wrong: f64) {
    told(name, rate);
    assert!(rate.seen >= 100, "{name}: too few slips were seen to measure anything");
    assert!(100.0 * rate.named() >= least, "{name}: too few were named");
    assert!(100.0 * rate.share(rate.wrong) <= most_wrong, "{name}: too many were named wrongly");
}

#[test]
fn slips_among_the_digits_are_named() {
    // Percent that must be named, for `Bare`, `Grouped`, `Shared`.
    let least = |slip| match slip {
        Slip::Swapped => [99.0, 99.0, 99.0],
        Slip::Lost => [60.0, 99.0, 99.0],
        Slip::Doubled | Slip::Point => [99.0, 99.0, 99.0],
        Slip::Misread => [60.0, 98.0, 98.0],
    };
    for (at, shape) in [Shape::Bare, Shape::Grouped, Shape::Shared].into_iter().enumerate() {
        for slip in SLIPS {
            hold(&format!("{shape:?}, {slip:?}"), digit_slips(shape, slip), least(slip)[at], 5.0);
        }
    }
}

/// A change to the rows, and the correction that mends it as `item column: … -> expected`.
type Injection = fn(&mut Vec<Row>, &mut Random) -> Option<(String, String)>;

fn twice(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let at = part(rows, random);
    let row = rows[at].clone();
    rows.insert(at + 1, row.clone());
    Some((format!("{} weight:", row.item), "-> 0".into()))
}

fn total_of(rows: &mut [Row], tenths: u64) -> Option<(String, String)> {
    let last = rows.len() - 1;
    let right = rows[last].weight.trim_end_matches(".0").to_owned();
    rows[last].weight = printed(tenths);
    Some(("all weight:".into(), format!("-> {right}")))
}

fn total_leaves_out(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let at = part(rows, random);
    let left = tenths(&rows[rows.len() - 1].weight) - tenths(&rows[at].weight);
    total_of(rows, left)
}

fn total_counts_twice(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let at = part(rows, random);
    let more = tenths(&rows[rows.len() - 1].weight) + tenths(&rows[at].weight);
    total_of(rows, more)
}

fn total_of_first_rows(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let parts: Vec<u64> = rows.iter().filter(|row| row.kind.is_empty()).map(|row| tenths(&row.weight)).collect();
    let count = usize::try_from(random.between(2, parts.len() as u64 - 2)).unwrap();
    total_of(rows, parts[..count].iter().sum())
}

fn subtotal_slips(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let subtotals: Vec<usize> = (0..rows.len()).filter(|at| rows[*at].kind == "subtotal").collect();
    let at = *subtotals.first()?;
    let right = rows[at].weight.clone();
    let slip = SLIPS[usize::try_from(random.between(0, 4)).unwrap()];
    rows[at].weight = slipped(&right, slip, random)?;
    Some((format!("{} weight:", rows[at].item), format!("-> {}", right.trim_end_matches(".0"))))
}

fn subtotal_among_parts(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let parts: Vec<u64> = rows.iter().filter(|row| row.kind.is_empty()).map(|row| tenths(&row.weight)).collect();
    let count = usize::try_from(random.between(2, parts.len() as u64 - 1)).unwrap();
    let row = Row { item: "so far".into(), weight: printed(parts[..count].iter().sum()), share: String::new(), ..rows[0].clone() };
    rows.insert(count, row);
    Some(("so far weight:".into(), "-> nothing".into()))
}

fn share_slips(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    let at = part(rows, random);
    let slip = SLIPS[usize::try_from(random.between(0, 4)).unwrap()];
    rows[at].share = slipped(&rows[at].share, slip, random)?;
    Some((format!("{} share:", rows[at].item), String::new()))
}

fn shares_of_another_base(rows: &mut Vec<Row>, random: &mut Random) -> Option<(String, String)> {
    // The total is what was bought; a tenth or more of it was lost before weighing, and the shares are of the rest.
    let last = rows.len() - 1;
    let rest = tenths(&rows[last].weight);
    rows[last].weight = printed(rest + rest * random.between(10, 30) / 100);
    Some(("all weight:".into(), format!("-> {}", printed(rest).trim_end_matches(".0"))))
}

fn injected(shape: Shape, inject: Injection) -> Rate {
    let mut rate = Rate::default();
    for seed in 0..TABLES {
        let mut random = Random::of(seed);
        let mut rows = table(&mut random, shape);
        let Some((name, correction)) = inject(&mut rows, &mut random) else { continue };
        rate.count(&found(&csv(&rows)), |told| told.starts_with(&name) && told.ends_with(&correction));
    }
    rate
}

#[test]
fn slips_of_whole_rows_and_totals_are_named() {
    let cases: [(&str, Shape, Injection); 10] = [
        ("a row twice", Shape::Bare, twice),
        ("a row twice, grouped", Shape::Grouped, twice),
        ("total leaves out a row", Shape::Bare, total_leaves_out),
        ("total counts a row twice", Shape::Bare, total_counts_twice),
        ("total of the first rows", Shape::Bare, total_of_first_rows),
        ("total leaves out, shared", Shape::Shared, total_leaves_out),
        ("subtotal slips", Shape::Grouped, subtotal_slips),
        ("subtotal among the parts", Shape::Bare, subtotal_among_parts),
        ("share slips", Shape::Shared, share_slips),
        ("shares of another base", Shape::Shared, shares_of_another_base),
    ];
    for (name, shape, inject) in cases {
        hold(name, injected(shape, inject), 97.0, 2.0);
    }
}
