//! Every single slip that could stand behind sums that do not close, each with the correction that it asks for.
//!
//! A suspect is thought up for a reason: a digit, a row, a group. How well it explains the whole table is a score, the
//! logarithm of odds against "nothing that can be told"; the search that compares them is in `search`.

use super::base::{Base, BaseOrigin, pairs};
use super::decimal::Decimal;
use super::edits::{Slip, edits};
use super::evidence::{Shares, Weighed};
use super::figure::Figure;
use super::sheet::{Column, Kind, Sheet};
use super::sums::Stated;
use super::verdict::Why;

/// A slip that would explain a sum, and its correction.
#[derive(Debug, Clone)]
pub(super) struct Suspect {
    /// The row whose figure is to be corrected.
    pub(super) row: usize,
    /// What should stand there; none when the row should not be counted at all.
    pub(super) figure: Option<Figure>,
    /// The slip.
    pub(super) why: Why,
    /// How well it explains the table.
    pub(super) score: f64,
    /// Which sums it closes, by their positions in `Court::sums`.
    pub(super) closes: Vec<usize>,
    /// How many sums that close now would not any more.
    pub(super) breaks: usize,
}

/// A column with its sums, before which suspects are brought.
pub(super) struct Court<'a> {
    /// The table.
    pub(super) sheet: &'a Sheet,
    /// The column.
    pub(super) column: Column,
    /// Its sums.
    pub(super) sums: Vec<Weighed>,
    /// Which sums each row takes part in.
    pub(super) sums_of: Vec<Vec<usize>>,
    /// How shares and weights hang together, where they do.
    pub(super) shares: Option<Shares>,
    /// How many figures the column has.
    pub(super) figures: f64,
    /// Digits behind the point, at most.
    pub(super) decimals: u32,
}

/// How often each slip happens, among all slips in tables: own judgement.
const fn odds(slip: Slip) -> f64 {
    match slip {
        Slip::Swapped => 0.20,
        Slip::Point => 0.12,
        Slip::Lost => 0.12,
        Slip::Doubled => 0.10,
        Slip::Extra => 0.04,
        Slip::Misread => 0.25,
    }
}
/// How often a figure is simply another one.
const OTHER_FIGURE: f64 = 0.05;
/// How often a row with the name and the figure of another was entered twice.
const SAME_ROW_TWICE: f64 = 0.6;
/// How often a row with the figure of another, but a name of its own, is the same row.
const SAME_FIGURE_TWICE: f64 = 0.02;
/// How often a row that equals the sum of the rows above it is their subtotal.
const SUM_AMONG_PARTS: f64 = 0.5;
/// How often a total leaves out a row, or counts it twice.
const TOTAL_SKIPS: f64 = 0.06;
/// How often a total belongs to some of the rows only.
const TOTAL_OF_SOME: f64 = 0.08;
/// The score of an empty cell that would close the sum.
const EMPTY_CELL: f64 = 1.5;

impl Court<'_> {
    /// All suspects for these sums, which do not close.
    pub(super) fn suspects(&self, open: &[usize]) -> Vec<Suspect> {
        let mut rows: Vec<usize> = Vec::new();
        for sum in open.iter().filter_map(|at| self.sums.get(*at)) {
            rows.extend(&sum.plan.members);
            if let Stated::Row(row) = sum.plan.stated {
                rows.push(row);
            }
        }
        rows.sort_unstable();
        rows.dedup();
        rows.retain(|row| !self.is_hundred(*row));
        let mut suspects = Vec::new();
        let mut is_open = vec![false; self.sums.len()];
        for at in open {
            is_open.iter_mut().skip(*at).take(1).for_each(|open| *open = true);
        }
        for row in rows {
            self.changed_figures(row, &is_open, &mut suspects);
        }
        for at in open.iter().copied() {
            self.wrong_rows(at, &mut suspects);
            self.wrong_total(at, &mut suspects);
            self.empty_cell(at, &mut suspects);
        }
        suspects
    }

    /// True for a total of shares that is 100: it is so by definition, and no slip.
    fn is_hundred(&self, row: usize) -> bool {
        let is_total = self.sheet.rows.get(row).is_some_and(|row| row.kind == Kind::Total);
        is_total && self.column == Column::Share && self.sheet.value(row, Column::Share) == Some(Decimal::HUNDRED)
    }

    /// A slip in the digits of this row, or another figure altogether.
    fn changed_figures(&self, row: usize, is_open: &[bool], suspects: &mut Vec<Suspect>) {
        let Some(figure) = self.sheet.figure(row, self.column) else { return };
        let old = figure.value.float();
        let is_open = |at: &&usize| is_open.get(**at) == Some(&true);
        let mine = || self.sums_of.get(row).into_iter().flatten().filter(is_open).filter_map(|at| self.sums.get(*at));
        for edit in edits(figure, self.decimals) {
            let change = edit.value.float() - old;
            if mine().any(|sum| sum.allows(sum.after(row, change))) {
                let corrected = Figure { step: edit.step, ..figure.corrected(edit.value) };
                let prior = odds(edit.slip) / f64::from(edit.ways) / self.figures;
                suspects.extend(self.suspect(row, Some(corrected), Why::Slip(edit.slip), prior));
            }
        }
        for sum in mine() {
            let value = if sum.plan.stated == Stated::Row(row) { figure.value + sum.exact_miss } else { figure.value - sum.exact_miss };
            let size = sum.stated.abs().max(sum.found.abs());
            let prior = OTHER_FIGURE / self.figures * (figure.step.float() / size).min(1.0);
            suspects.extend(self.suspect(row, Some(figure.corrected(value)), Why::OtherFigure, prior));
        }
    }

    /// A row that is counted and should not be.
    fn wrong_rows(&self, at: usize, suspects: &mut Vec<Suspect>) {
        let Some(sum) = self.sums.get(at) else { return };
        let mut before = Vec::new();
        for row in &sum.plan.members {
            let Some(figure) = self.sheet.figure(*row, self.column) else { continue };
            if sum.allows(sum.miss - figure.value.float()) {
                if let Some(odds) = self.twin(&before, *row) {
                    suspects.extend(self.suspect(*row, None, Why::CountedTwice, odds / self.figures));
                }
                if let Some(first) = self.run_that_makes(&before, figure) {
                    suspects.extend(self.suspect(*row, None, Why::SumAmongParts { first }, SUM_AMONG_PARTS / self.figures));
                }
            }
            before.push(*row);
        }
    }

    /// How likely it is that a row among `before` is the same as this one; none when no figure is the same.
    fn twin(&self, before: &[usize], row: usize) -> Option<f64> {
        let name = |row: usize| self.sheet.rows.get(row).map(|row| row.item.to_lowercase());
        let value = self.sheet.value(row, self.column)?;
        let same = || before.iter().filter(|other| self.sheet.value(**other, self.column) == Some(value));
        same().next()?;
        Some(if same().any(|other| name(*other) == name(row)) { SAME_ROW_TWICE } else { SAME_FIGURE_TWICE })
    }

    /// Where the run of rows begins that ends at the last of `before` and comes to this figure within rounding.
    fn run_that_makes(&self, before: &[usize], figure: &Figure) -> Option<usize> {
        let mut sum = Decimal::ZERO;
        let mut steps = figure.step;
        for (count, row) in before.iter().rev().enumerate() {
            let part = self.sheet.figure(*row, self.column)?;
            sum = sum + part.value;
            steps = steps + part.step;
            if count > 0 && (sum - figure.value).abs() <= steps.half() {
                return Some(*row);
            }
        }
        None
    }

    /// A total that is right for other rows than those it stands for.
    fn wrong_total(&self, at: usize, suspects: &mut Vec<Suspect>) {
        let Some(sum) = self.sums.get(at) else { return };
        let Stated::Row(total) = sum.plan.stated else { return };
        let Some(figure) = self.sheet.figure(total, self.column).filter(|_| !self.is_hundred(total)) else { return };
        let found: Decimal = sum.plan.members.iter().filter_map(|row| self.sheet.value(*row, self.column)).sum();
        let corrected = figure.corrected(found);
        let members: Vec<(usize, f64)> =
            sum.plan.members.iter().filter_map(|row| Some((*row, self.sheet.value(*row, self.column)?.float()))).collect();
        let mut add = |rest: f64, why: Why, prior: f64| {
            if sum.allows(rest) {
                suspects.extend(self.suspect(total, Some(corrected.clone()), why, prior).map(|suspect| {
                    // The stated figure is compared with other rows than `found`: what still misses there counts.
                    Suspect { score: suspect.score - sum.log(0.0) + sum.log(rest), ..suspect }
                }));
            }
        };
        for (row, value) in &members {
            add(sum.miss - value, Why::TotalLeavesOut { row: *row }, TOTAL_SKIPS / self.figures);
            add(sum.miss + value, Why::TotalCountsTwice { row: *row }, TOTAL_SKIPS / self.figures);
        }
        let some = TOTAL_OF_SOME / (2.0 * self.figures);
        let mut head = 0.0;
        for (count, (row, value)) in (1..).zip(&members) {
            head += value;
            let first = members.first().map_or(*row, |(row, _)| *row);
            if count > 1 && count + 1 < members.len() {
                add(head - sum.stated, Why::TotalOfSome { first, last: *row }, some);
            }
            if let (Some((next, _)), Some((last, _))) = (members.get(count), members.last())
                && count > 1
                && count + 1 < members.len()
            {
                add(sum.found - head - sum.stated, Why::TotalOfSome { first: *next, last: *last }, some);
            }
        }
        for (name, value) in self.groups(&sum.plan.members) {
            add(value - sum.stated, Why::TotalOfGroup { group: name.clone() }, some);
        }
    }

    /// The groups that these rows belong to, each with what it comes to.
    fn groups(&self, members: &[usize]) -> Vec<(String, f64)> {
        let mut groups: std::collections::BTreeMap<&str, f64> = std::collections::BTreeMap::new();
        for row in members.iter().filter_map(|row| self.sheet.rows.get(*row)) {
            if let (Some(group), Some(figure)) = (&row.group, row.figure(self.column)) {
                *groups.entry(group).or_default() += figure.value.float();
            }
        }
        if groups.len() < 2 {
            return Vec::new();
        }
        groups.into_iter().map(|(name, value)| (name.to_owned(), value)).collect()
    }

    /// A single part whose cell is empty.
    fn empty_cell(&self, at: usize, suspects: &mut Vec<Suspect>) {
        let Some(sum) = self.sums.get(at) else { return };
        let ([row], true) = (sum.plan.unstated.as_slice(), sum.miss < 0.0) else { return };
        let Some(like) = sum.plan.members.first().and_then(|row| self.sheet.figure(*row, self.column)) else { return };
        let figure = like.corrected(-sum.exact_miss);
        let fits = self.shares.as_ref().map_or(0.0, |shares| self.shares_speak(shares, *row, &figure));
        suspects.push(Suspect {
            row: *row,
            figure: Some(figure),
            why: Why::NotStated,
            score: EMPTY_CELL + fits,
            closes: vec![at],
            breaks: 0,
        });
    }

    /// The suspect with its score, when it closes any sum: its prior chance, and what the rest of the table says to it.
    fn suspect(&self, row: usize, figure: Option<Figure>, why: Why, prior: f64) -> Option<Suspect> {
        let old = self.sheet.value(row, self.column)?.float();
        if old >= 0.0 && figure.as_ref().is_some_and(|figure| figure.value < Decimal::ZERO) {
            return None;
        }
        let change = figure.as_ref().map_or(0.0, |figure| figure.value.float()) - old;
        let mut score = prior.ln();
        let (mut closes, mut breaks) = (Vec::new(), 0);
        for at in self.sums_of.get(row)? {
            let sum = self.sums.get(*at)?;
            let miss = sum.after(row, change);
            score += sum.log(miss) - sum.log(sum.miss);
            if !sum.closes && sum.allows(miss) {
                closes.push(*at);
            }
            breaks += usize::from(sum.closes && !sum.allows(miss));
        }
        if let (Some(shares), Some(figure)) = (&self.shares, &figure) {
            score += self.shares_speak(shares, row, figure);
        }
        (!closes.is_empty()).then_some(Suspect { row, figure, why, score, closes, breaks })
    }

    /// What the shares say to another figure in this row.
    fn shares_speak(&self, shares: &Shares, row: usize, figure: &Figure) -> f64 {
        let base = shares.base;
        let is_base = base.origin == BaseOrigin::Total(row) || base.instead_of == Some(row);
        if self.column == Column::Weight && is_base {
            return Shares::heard(self.shares_speak_to_total(shares, row, figure));
        }
        let Some(now) = self.sheet.rows.get(row) else { return 0.0 };
        let log = |weight: Option<&Figure>, share: Option<&Figure>| {
            weight.zip(share).map_or(0.0, |(weight, share)| shares.log(weight, share, &base))
        };
        let (weight, share) = (now.weight.as_ref(), now.share.as_ref());
        let before = log(weight, share);
        match self.column {
            Column::Weight if weight.is_some() => Shares::heard(log(Some(figure), share) - before),
            Column::Weight => log(Some(figure), share) - before,
            Column::Share => log(weight, Some(figure)) - before,
        }
    }

    /// What the shares say to another total, on which they would be worked.
    fn shares_speak_to_total(&self, shares: &Shares, row: usize, figure: &Figure) -> f64 {
        let on = |figure: &Figure| Base {
            weight: figure.value.float(),
            half: figure.step.float() / 2.0,
            origin: BaseOrigin::Total(row),
            instead_of: None,
        };
        let (Some(own), after) = (self.sheet.figure(row, Column::Weight), on(figure)) else { return 0.0 };
        if after.weight <= 0.0 {
            return 0.0;
        }
        let before = on(own);
        let change = |weight, share| shares.log(weight, share, &after) - shares.log(weight, share, &before);
        pairs(self.sheet).map(|(_, weight, share)| change(weight, share)).sum()
    }
}
