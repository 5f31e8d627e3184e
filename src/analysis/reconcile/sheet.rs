//! A table as rows of figures: what each row is called, what it is a part of, and what stands in it.
//!
//! It is made in `lower` and never judged here. Rows keep the order of the file.

use crate::finding::Span;
use crate::model::quantity::MassUnit;

use super::decimal::Decimal;
use super::figure::Figure;

/// What a row is to the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A part of the whole.
    Part,
    /// What the parts of its group come to.
    Subtotal,
    /// What all parts come to.
    Total,
}

/// A column of figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Column {
    /// Weights.
    Weight,
    /// Shares, in percent.
    Share,
}

impl Column {
    /// Both, in the order in which they are told.
    pub const ALL: [Self; 2] = [Self::Weight, Self::Share];

    /// Its name in the header.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Weight => "weight",
            Self::Share => "share",
        }
    }
}

/// One row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// What was weighed; for a total it may be empty.
    pub item: String,
    /// The group; none when the cell is empty or there is no such column.
    pub group: Option<String>,
    /// Part, subtotal or total.
    pub kind: Kind,
    /// Its weight; none when it was not stated.
    pub weight: Option<Figure>,
    /// Its share; none when it was not stated.
    pub share: Option<Figure>,
    /// Where the row begins.
    pub span: Span,
}

impl Row {
    /// The figure in a column.
    #[must_use]
    pub const fn figure(&self, column: Column) -> Option<&Figure> {
        match column {
            Column::Weight => self.weight.as_ref(),
            Column::Share => self.share.as_ref(),
        }
    }

    /// Puts another figure there, or none.
    pub(super) fn set(&mut self, column: Column, figure: Option<Figure>) {
        match column {
            Column::Weight => self.weight = figure,
            Column::Share => self.share = figure,
        }
    }
}

/// A table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sheet {
    /// The rows in the order of the file.
    pub rows: Vec<Row>,
    /// The unit of the weights; none when they are bare numbers.
    pub unit: Option<MassUnit>,
    /// True when the weights are in whole pounds and ounces.
    pub to_the_ounce: bool,
}

impl Sheet {
    /// The figure at a row and column.
    #[must_use]
    pub fn figure(&self, row: usize, column: Column) -> Option<&Figure> {
        self.rows.get(row)?.figure(column)
    }

    /// The value at a row and column.
    #[must_use]
    pub fn value(&self, row: usize, column: Column) -> Option<Decimal> {
        self.figure(row, column).map(|figure| figure.value)
    }

    /// True when the column holds a figure anywhere.
    #[must_use]
    pub fn has(&self, column: Column) -> bool {
        self.rows.iter().any(|row| row.figure(column).is_some())
    }

    /// The rows of a kind, by their positions.
    pub fn of_kind(&self, kind: Kind) -> impl Iterator<Item = (usize, &Row)> {
        self.rows.iter().enumerate().filter(move |(_, row)| row.kind == kind)
    }

    /// Puts another figure there, or none.
    pub(super) fn set(&mut self, row: usize, column: Column, figure: Option<Figure>) {
        if let Some(row) = self.rows.get_mut(row) {
            row.set(column, figure);
        }
    }
}
