//! A table of words and numbers for a terminal: columns as wide as they must be, the first one wrapped to fit.

use super::layout::{width, wrap};

/// What stands between two columns.
const GAP: usize = 2;

/// The first column is never narrower.
const LEAST_FIRST: usize = 12;

/// Where a column's text stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Align {
    /// Words.
    Left,
    /// Numbers.
    Right,
}

/// A table that is being filled.
#[derive(Debug)]
pub(super) struct Table {
    aligns: Vec<Align>,
    rows: Vec<Row>,
}

#[derive(Debug)]
enum Row {
    Cells(Vec<String>),
    Line,
}

impl Table {
    /// An empty table with these columns.
    pub(super) fn new(aligns: impl IntoIterator<Item = Align>) -> Self {
        Self { aligns: aligns.into_iter().collect(), rows: Vec::new() }
    }

    /// Adds a row; missing cells at its end are empty.
    pub(super) fn row(&mut self, cells: impl IntoIterator<Item = impl Into<String>>) {
        self.rows.push(Row::Cells(cells.into_iter().map(Into::into).collect()));
    }

    /// Adds a line from edge to edge.
    pub(super) fn line(&mut self) {
        self.rows.push(Row::Line);
    }

    /// The table in at most `columns` columns, unless its numbers alone need more. Lines end without spaces.
    pub(super) fn render(&self, columns: usize) -> String {
        let widths = self.widths(columns);
        let whole = widths.iter().sum::<usize>() + GAP * widths.len().saturating_sub(1);
        let mut text = String::new();
        for row in &self.rows {
            match row {
                Row::Line => text.push_str(&"\u{2500}".repeat(whole)),
                Row::Cells(cells) => self.push_row(&mut text, cells, &widths),
            }
            text.push('\n');
        }
        text
    }

    fn widths(&self, columns: usize) -> Vec<usize> {
        let cells = |at: usize| {
            self.rows.iter().filter_map(move |row| match row {
                Row::Cells(cells) => cells.get(at),
                Row::Line => None,
            })
        };
        let mut widths: Vec<usize> = (0..self.aligns.len()).map(|at| cells(at).map(|cell| width(cell)).max().unwrap_or(0)).collect();
        let others: usize = widths.iter().skip(1).map(|width| width + GAP).sum();
        if let Some(first) = widths.first_mut() {
            *first = (*first).min(columns.saturating_sub(others).max(LEAST_FIRST));
        }
        widths
    }

    fn push_row(&self, text: &mut String, cells: &[String], widths: &[usize]) {
        let first_width = widths.first().copied().unwrap_or(0);
        let mut lines = wrap(cells.first().map_or("", String::as_str), first_width).into_iter();
        let mut line = padded(&lines.next().unwrap_or_default(), first_width, Align::Left);
        let rest = lines.collect::<Vec<_>>().join(" ");
        for ((cell, cell_width), align) in cells.iter().zip(widths).zip(&self.aligns).skip(1) {
            line.push_str(&" ".repeat(GAP));
            line.push_str(&padded(cell, *cell_width, *align));
        }
        text.push_str(line.trim_end());
        for more in wrap(&rest, first_width.saturating_sub(2)).iter().filter(|line| !line.is_empty()) {
            text.push_str("\n  ");
            text.push_str(more);
        }
    }
}

fn padded(text: &str, columns: usize, align: Align) -> String {
    let space = " ".repeat(columns.saturating_sub(width(text)));
    match align {
        Align::Left => format!("{text}{space}"),
        Align::Right => format!("{space}{text}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn aligns_words_left_and_numbers_right_and_wraps_the_first_column() {
        let mut table = Table::new([Align::Left, Align::Left, Align::Right]);
        table.row(["Piece", "Use", "kg"]);
        table.line();
        table.row(["Boneless loin, chine and back fat off", "retail", "10.50"]);
        table.row(["Bein \u{9aa8}", "bone", "0.75"]);
        table.row(["Alone"]);
        let lines = [
            "Piece               Use        kg",
            "\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}\u{2500}",
            "Boneless loin,      retail  10.50",
            "  chine and back",
            "  fat off",
            "Bein \u{9aa8}             bone     0.75",
            "Alone",
        ];
        assert_eq!(table.render(33), lines.join("\n") + "\n");
    }
}
