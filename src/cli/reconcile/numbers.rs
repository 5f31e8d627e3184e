//! How figures of a table are written: in its own unit, with as many digits as it has itself.

use crate::analysis::reconcile::decimal::Decimal;
use crate::analysis::reconcile::sheet::{Column, Sheet};
use crate::model::quantity::MassUnit;

/// The space between a number and its unit, at which no line breaks.
pub(super) const TIE: char = '\u{a0}';

/// Writes figures of one table.
#[derive(Debug, Clone, Copy)]
pub(super) struct Numbers<'a> {
    sheet: &'a Sheet,
}

impl<'a> Numbers<'a> {
    /// In the manner of this table.
    pub(super) const fn of(sheet: &'a Sheet) -> Self {
        Self { sheet }
    }

    /// The digits that the column prints behind the point, as a rule.
    pub(super) fn decimals(self, column: Column) -> u32 {
        let figures = self.sheet.rows.iter().filter_map(|row| row.figure(column));
        figures.map(|figure| figure.step.decimals()).max().unwrap_or(0)
    }

    /// The unit's symbol, tied to what stands before it; empty where the table has none.
    pub(super) fn unit(self, column: Column) -> String {
        match (column, self.sheet.unit) {
            (Column::Share, _) => format!("{TIE}%"),
            (Column::Weight, Some(unit)) => format!("{TIE}{}", unit.symbol()),
            (Column::Weight, None) => String::new(),
        }
    }

    /// A number without its unit, unless it is pounds and ounces: for the cells of a table.
    pub(super) fn cell(self, value: Decimal, column: Column, decimals: u32) -> String {
        self.pounds_and_ounces(value, column).unwrap_or_else(|| value.padded(decimals))
    }

    /// A number with its unit.
    pub(super) fn full(self, value: Decimal, column: Column, decimals: u32) -> String {
        self.pounds_and_ounces(value, column).unwrap_or_else(|| format!("{}{}", value.padded(decimals), self.unit(column)))
    }

    /// The same with a sign before it.
    pub(super) fn signed(self, value: Decimal, column: Column, decimals: u32) -> String {
        let sign = if value > Decimal::ZERO { "+" } else { "" };
        format!("{sign}{}", self.cell(value, column, decimals))
    }

    /// `18 lb 10 oz`, in a table that is kept so and for a value that comes to whole sixteenths of an ounce.
    fn pounds_and_ounces(self, value: Decimal, column: Column) -> Option<String> {
        if column != Column::Weight || !self.sheet.to_the_ounce || self.sheet.unit != Some(MassUnit::Pound) {
            return None;
        }
        let ounces = value.times(Decimal::new(16, 0));
        let sign = if value < Decimal::ZERO { "-" } else { "" };
        let all = ounces.abs().float();
        let pounds = (all / 16.0).floor();
        let rest = Decimal::near(all - pounds * 16.0, 4);
        Some(if pounds == 0.0 { format!("{sign}{rest}{TIE}oz") } else { format!("{sign}{pounds}{TIE}lb{TIE}{rest}{TIE}oz") })
    }
}
