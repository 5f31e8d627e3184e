//! What a table says its rows come to, held against what they do come to, and how far rounding reaches.
//!
//! With n rows printed to q a miss of at most n·q/2 + q/2 is rounding. Rows and total may end in different digits; then
//! each brings half its own last digit, Σ qᵢ/2 + q/2 of the total, which is the same where all are equal. All of it is
//! exact. No row is suspected of anything here.

use std::collections::{BTreeMap, BTreeSet};

use super::decimal::Decimal;
use super::sheet::{Column, Kind, Sheet};

/// Where the figure stands that a sum is held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stated {
    /// In this row, a subtotal or a total.
    Row(usize),
    /// Nowhere: shares of all parts, held against 100.
    Whole,
}

/// Which rows add up to what.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// The figure that they are held against.
    pub stated: Stated,
    /// The column.
    pub column: Column,
    /// The rows that are added up, in the order of the table.
    pub members: Vec<usize>,
    /// Parts among them whose cell is empty.
    pub unstated: Vec<usize>,
}

/// One sum.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sum {
    /// Which rows are added up.
    pub plan: Plan,
    /// The group, for a subtotal that has one.
    pub group: Option<String>,
    /// What the table says.
    pub stated: Decimal,
    /// What the rows come to.
    pub found: Decimal,
    /// The rows less what is stated.
    pub miss: Decimal,
    /// The largest miss, up or down, that rounding can make.
    pub bound: Decimal,
}

impl Sum {
    /// True when there is no miss at all.
    #[must_use]
    pub fn is_exact(&self) -> bool {
        self.miss == Decimal::ZERO
    }

    /// True when there is a miss that rounding can make.
    #[must_use]
    pub fn is_rounding(&self) -> bool {
        !self.is_exact() && self.closes()
    }

    /// True when the miss is more than three times what rounding makes as a rule, the standard deviation of rows that
    /// are each rounded by themselves.
    #[must_use]
    pub fn is_unlikely(&self, sheet: &Sheet) -> bool {
        let stated = match self.plan.stated {
            Stated::Row(row) => Some(row),
            Stated::Whole => None,
        };
        let steps = self.plan.members.iter().copied().chain(stated).filter_map(|row| sheet.figure(row, self.plan.column));
        let squares: f64 = steps.map(|figure| figure.step.float().powi(2)).sum();
        self.miss.float().powi(2) > 9.0 * squares / 12.0
    }

    /// True when it is exact, or rounding can make the miss.
    #[must_use]
    pub fn closes(&self) -> bool {
        self.miss.abs() <= self.bound
    }
}

impl Plan {
    /// The sum as the figures stand in `sheet`; none when the stated figure or every member is gone.
    #[must_use]
    pub fn sum(&self, sheet: &Sheet) -> Option<Sum> {
        let figures = || self.members.iter().filter_map(|row| sheet.figure(*row, self.column));
        let finest = figures().map(|figure| figure.step).min()?;
        let (stated, step, group) = match self.stated {
            Stated::Whole => (Decimal::HUNDRED, finest, None),
            Stated::Row(at) => {
                let row = sheet.rows.get(at)?;
                let figure = row.figure(self.column)?;
                let group = row.group.clone().filter(|_| row.kind == Kind::Subtotal);
                (figure.value, figure.step, group)
            }
        };
        let found: Decimal = figures().map(|figure| figure.value).sum();
        let steps: Decimal = figures().map(|figure| figure.step).sum();
        Some(Sum { plan: self.clone(), group, stated, found, miss: found - stated, bound: (steps + step).half() })
    }

    /// True when the figure at this row is added up, or is what the sum is held against.
    #[must_use]
    pub fn touches(&self, row: usize) -> bool {
        self.stated == Stated::Row(row) || self.members.binary_search(&row).is_ok()
    }
}

/// The rows that make up the whole of a column, and the parts that have no figure in it.
///
/// Where no part of a group has a figure, its subtotal stands for the group.
pub(super) fn leaves(sheet: &Sheet, column: Column) -> (Vec<usize>, Vec<usize>) {
    let spoken: BTreeSet<Option<&String>> =
        sheet.of_kind(Kind::Part).filter(|(_, row)| row.figure(column).is_some()).map(|(_, row)| row.group.as_ref()).collect();
    let mut stand_ins: BTreeMap<Option<&String>, usize> = BTreeMap::new();
    for (at, row) in sheet.of_kind(Kind::Subtotal) {
        if row.figure(column).is_some() && !spoken.contains(&row.group.as_ref()) {
            stand_ins.entry(row.group.as_ref()).or_insert(at);
        }
    }
    let mut members: Vec<usize> = stand_ins.values().copied().collect();
    let mut unstated = Vec::new();
    for (at, row) in sheet.of_kind(Kind::Part) {
        if row.figure(column).is_some() {
            members.push(at);
        } else if !stand_ins.contains_key(&row.group.as_ref()) {
            unstated.push(at);
        }
    }
    members.sort_unstable();
    (members, unstated)
}

/// All sums of a table, in the order in which they are stated; shares held against an unstated 100 come last.
#[must_use]
pub fn plans(sheet: &Sheet) -> Vec<Plan> {
    let mut plans = Vec::new();
    let whole = Column::ALL.map(|column| leaves(sheet, column));
    for (at, row) in sheet.rows.iter().enumerate() {
        for (column, (all, gaps)) in Column::ALL.into_iter().zip(&whole) {
            if row.kind == Kind::Part || row.figure(column).is_none() {
                continue;
            }
            let (members, unstated) = match row.kind {
                Kind::Total => (all.clone(), gaps.clone()),
                _ => parts_of(sheet, column, row.group.as_ref()),
            };
            if !members.is_empty() {
                plans.push(Plan { stated: Stated::Row(at), column, members, unstated });
            }
        }
    }
    plans.extend(unstated_whole(sheet, &plans));
    plans
}

fn parts_of(sheet: &Sheet, column: Column, group: Option<&String>) -> (Vec<usize>, Vec<usize>) {
    let parts = sheet.of_kind(Kind::Part).filter(|(_, row)| row.group.as_ref() == group).map(|(at, _)| at);
    parts.partition(|at| sheet.figure(*at, column).is_some())
}

/// Shares without a stated total are of the whole only when every part has both figures and the weights close.
fn unstated_whole(sheet: &Sheet, plans: &[Plan]) -> Option<Plan> {
    let totals = |column| sheet.of_kind(Kind::Total).any(|(_, row)| row.figure(column).is_some());
    let (members, unstated) = leaves(sheet, Column::Share);
    let complete = unstated.is_empty() && !members.is_empty() && members.iter().all(|at| sheet.figure(*at, Column::Weight).is_some());
    if totals(Column::Share) || !totals(Column::Weight) || !complete {
        return None;
    }
    let of_total = |plan: &&Plan| {
        plan.column == Column::Weight
            && matches!(plan.stated, Stated::Row(at) if sheet.rows.get(at).is_some_and(|row| row.kind == Kind::Total))
    };
    let weights_close = plans.iter().filter(of_total).filter_map(|plan| plan.sum(sheet)).all(|sum| sum.closes());
    weights_close.then_some(Plan { stated: Stated::Whole, column: Column::Share, members, unstated })
}
