//! What the shares are shares of, and which of them do not follow from their weights.
//!
//! A share may differ from 100·w/T by half its own last digit and by what half the last digits of w and T can move it.
//! These are derived ranges, so floating point is fine here; sums are not made here.

use super::decimal::Decimal;
use super::figure::Figure;
use super::sheet::{Column, Kind, Sheet};
use super::sums::{Plan, Stated, leaves};

/// Room for the last bits of a float, so that a share at the very edge of its range lies in it.
const DUST: f64 = 1e-9;

/// Where a base comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BaseOrigin {
    /// The weight of this total.
    Total(usize),
    /// The weight of this total, which is itself only a share of the whole.
    ShareOfTotal(usize),
    /// The weight of this subtotal.
    Subtotal(usize),
    /// The weights of the rows added up.
    Rows,
    /// No weight of the table: the rows agree on it.
    Agreed,
}

/// The weight that counts as 100 %.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Base {
    /// The weight, in the unit of the column.
    pub weight: f64,
    /// Half its last digit.
    pub half: f64,
    /// Where it comes from.
    pub origin: BaseOrigin,
    /// The total on which the shares ought to be worked and are not.
    pub instead_of: Option<usize>,
}

impl Base {
    const fn new(weight: f64, half: f64, origin: BaseOrigin) -> Self {
        Self { weight, half, origin, instead_of: None }
    }

    /// What share of it a weight is, in percent.
    #[must_use]
    pub fn share_of(&self, weight: f64) -> f64 {
        100.0 * weight / self.weight
    }

    /// True when the share can be that of the weight.
    #[must_use]
    pub fn fits(&self, weight: &Figure, share: &Figure) -> bool {
        let (w, half_w) = (weight.value.float(), weight.step.float() / 2.0);
        let (s, half_s) = (share.value.float(), share.step.float() / 2.0);
        let corners = [
            (w - half_w, self.weight - self.half),
            (w - half_w, self.weight + self.half),
            (w + half_w, self.weight - self.half),
            (w + half_w, self.weight + self.half),
        ];
        if corners.iter().any(|(_, base)| *base <= 0.0) {
            return true;
        }
        let shares = corners.map(|(weight, base)| 100.0 * weight / base);
        let low = shares.iter().copied().fold(f64::INFINITY, f64::min) - half_s;
        let high = shares.iter().copied().fold(f64::NEG_INFINITY, f64::max) + half_s;
        s >= low - DUST && s <= high + DUST
    }
}

/// Rows below the totals that have both a weight and a share.
pub(super) fn pairs(sheet: &Sheet) -> impl Iterator<Item = (usize, &Figure, &Figure)> {
    let below = sheet.rows.iter().enumerate().filter(|(_, row)| row.kind != Kind::Total);
    below.filter_map(|(at, row)| Some((at, row.weight.as_ref()?, row.share.as_ref()?)))
}

/// The base of the shares, when the table has one.
///
/// It is the stated total. Where most rows speak against that and nearly all agree on another, it is the other, and
/// `instead_of` names the total. Without a stated total it is what the rows come to, when they are all of the whole, or
/// what most of them agree on.
#[must_use]
pub fn base(sheet: &Sheet, plans: &[Plan]) -> Option<Base> {
    let count = pairs(sheet).count();
    if count == 0 {
        return None;
    }
    let fitting = |base: &Base| pairs(sheet).filter(|(_, weight, share)| base.fits(weight, share)).count();
    let Some(stated) = stated_base(sheet, plans) else {
        let agreed = || agreed(sheet).filter(|base| fitting(base) >= 3 && 3 * fitting(base) >= 2 * count);
        return sum_of_rows(sheet, true).or_else(agreed);
    };
    if count < 2 || 2 * fitting(&stated) >= count {
        return Some(stated);
    }
    let BaseOrigin::Total(total) = stated.origin else { return Some(stated) };
    let subtotals = sheet.of_kind(Kind::Subtotal).filter_map(|(at, row)| of_figure(row.weight.as_ref()?, BaseOrigin::Subtotal(at)));
    let agreed = agreed(sheet).filter(|base| fitting(base) >= 3);
    let others = share_of_total(sheet, total).into_iter().chain(sum_of_rows(sheet, false)).chain(subtotals).chain(agreed);
    let better = others.into_iter().find(|base| 5 * fitting(base) >= 4 * count);
    Some(better.map_or(stated, |base| match base.origin {
        BaseOrigin::ShareOfTotal(_) => base,
        _ => Base { instead_of: Some(total), ..base },
    }))
}

fn of_figure(figure: &Figure, origin: BaseOrigin) -> Option<Base> {
    (figure.value > Decimal::ZERO).then(|| Base::new(figure.value.float(), figure.step.float() / 2.0, origin))
}

/// The first stated total that closes, else the largest.
fn stated_base(sheet: &Sheet, plans: &[Plan]) -> Option<Base> {
    let totals = || sheet.of_kind(Kind::Total).filter_map(|(at, row)| Some((at, row.weight.as_ref()?)));
    let closes = |at: usize| {
        let plan = plans.iter().find(|plan| plan.column == Column::Weight && plan.stated == Stated::Row(at));
        plan.and_then(|plan| plan.sum(sheet)).is_some_and(|sum| sum.closes())
    };
    let chosen = totals().find(|(at, _)| closes(*at)).or_else(|| totals().max_by_key(|(_, figure)| figure.value));
    chosen.and_then(|(at, figure)| of_figure(figure, BaseOrigin::Total(at)))
}

/// Where the total is printed as 69 %, the whole is its weight over 0.69.
fn share_of_total(sheet: &Sheet, total: usize) -> Option<Base> {
    let row = sheet.rows.get(total)?;
    let (weight, share) = (row.weight.as_ref()?, row.share.as_ref()?);
    if share.value <= Decimal::ZERO || share.value == Decimal::HUNDRED {
        return None;
    }
    let (w, s) = (weight.value.float(), share.value.float());
    let half = 100.0 / s * (weight.step.float() / 2.0 + w / s * share.step.float() / 2.0);
    Some(Base::new(100.0 * w / s, half, BaseOrigin::ShareOfTotal(total)))
}

/// The rows added up; `whole` asks that their shares come to 100 within rounding.
fn sum_of_rows(sheet: &Sheet, whole: bool) -> Option<Base> {
    let (weighed, unweighed) = leaves(sheet, Column::Weight);
    if !unweighed.is_empty() || weighed.is_empty() {
        return None;
    }
    if whole {
        let (members, unstated) = leaves(sheet, Column::Share);
        let plan = Plan { stated: Stated::Whole, column: Column::Share, members, unstated };
        if plan.members != weighed || !plan.sum(sheet)?.closes() {
            return None;
        }
    }
    let figures = || weighed.iter().filter_map(|at| sheet.figure(*at, Column::Weight));
    let sum: Decimal = figures().map(|figure| figure.value).sum();
    let steps: Decimal = figures().map(|figure| figure.step).sum();
    (sum > Decimal::ZERO).then(|| Base::new(sum.float(), steps.float() / 2.0, BaseOrigin::Rows))
}

/// The weight that the most rows can be shares of: the roundest number where most of their ranges overlap.
fn agreed(sheet: &Sheet) -> Option<Base> {
    let mut ends: Vec<(f64, i32)> = Vec::new();
    for (_, weight, share) in pairs(sheet) {
        let (w, half_w) = (weight.value.float(), weight.step.float() / 2.0);
        let (s, half_s) = (share.value.float(), share.step.float() / 2.0);
        if s - half_s > 0.0 && w - half_w > 0.0 {
            ends.push((100.0 * (w - half_w) / (s + half_s), 1));
            ends.push((100.0 * (w + half_w) / (s - half_s), -1));
        }
    }
    ends.sort_by(|left, right| left.0.total_cmp(&right.0).then(right.1.cmp(&left.1)));
    let (mut open, mut most, mut range) = (0, 0, None);
    for (at, (value, change)) in ends.iter().enumerate() {
        open += change;
        if open > most {
            most = open;
            range = ends.get(at + 1).map(|(next, _)| (*value, *next));
        }
    }
    range.map(|(low, high)| Base::new(roundest(low, high), 0.0, BaseOrigin::Agreed))
}

/// The number between these two that takes the fewest digits to write.
fn roundest(low: f64, high: f64) -> f64 {
    let middle = f64::midpoint(low, high);
    let top = high.log10().ceil() as i32;
    let tries = (0..12).map(|down| 10_f64.powi(top - down)).map(|unit| (middle / unit).round() * unit);
    tries.into_iter().find(|value| (low..=high).contains(value)).unwrap_or(middle)
}

#[cfg(test)]
mod tests {
    use super::super::sums::plans;
    use super::super::testing::sheet;
    use super::*;

    fn base_of(text: &str) -> Option<Base> {
        let sheet = sheet(text);
        base(&sheet, &plans(&sheet))
    }

    #[test]
    fn the_stated_total_is_the_base() {
        let base = base_of("item,weight,share,kind\nLean,45,60,\nFat,30,40,\nAll,75,100,total").unwrap();
        assert_eq!((base.weight, base.origin, base.instead_of), (75.0, BaseOrigin::Total(2), None));
    }

    /// Lamb cutout of "Lamb Processing Options for Consumers", Kansas State University: the printed rows are shares of
    /// a 75 lb carcass that the readable part of the table does not state.
    #[test]
    fn rows_agree_on_a_base_that_is_not_stated() {
        let base = base_of("item,weight,share\nLeg,16.8,22.4\nLoin,6.5,8.7\nRib,9.5,12.7\nShoulder,10.5,14.0\nBreast,4.4,5.8").unwrap();
        assert_eq!((base.weight, base.origin), (75.0, BaseOrigin::Agreed));
    }

    #[test]
    fn shares_worked_on_what_came_out_are_told() {
        let text = "item,weight,share,kind\nSteak,30.0,50,\nTrim,18.0,30,\nBone,12.0,20,\nReceived,75.0,,total";
        let base = base_of(text).unwrap();
        assert_eq!((base.weight, base.origin, base.instead_of), (60.0, BaseOrigin::Rows, Some(3)));
    }

    #[test]
    fn a_total_may_itself_be_a_share() {
        let base = base_of("item,weight,share,kind\nHam,12,16,\nLoin,9,12,\nBacon,10,13,\nMeat,31,41,total").unwrap();
        assert!(matches!(base.origin, BaseOrigin::ShareOfTotal(3)) && base.instead_of.is_none());
        assert!((base.weight - 75.6).abs() < 0.1);
    }

    #[test]
    fn a_share_at_the_edge_of_rounding_fits() {
        let sheet = sheet("item,weight,share\nA,45.5,46\nB,45.5,45\nC,45.5,47");
        let base = Base::new(100.0, 0.0, BaseOrigin::Rows);
        let fits: Vec<bool> = pairs(&sheet).map(|(_, weight, share)| base.fits(weight, share)).collect();
        assert_eq!(fits, [true, true, false]);
    }
}
