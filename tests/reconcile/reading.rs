//! From the text of a table to what is found of it, as the program does it, for the tests of tables.

use seamwise::analysis::reconcile::decimal::Decimal;
use seamwise::analysis::reconcile::lower::{Word, sheet};
use seamwise::analysis::reconcile::reconcile;
use seamwise::analysis::reconcile::sheet::Sheet;
use seamwise::analysis::reconcile::verdict::{Oddity, Reconciled};
use seamwise::finding::SourceMap;
use seamwise::source::{Cell, table};

/// A table that was read, and what was found.
pub(crate) struct Found {
    /// The table.
    pub(crate) sheet: Sheet,
    /// What was found.
    pub(crate) reconciled: Reconciled,
}

/// Reads a table and holds it against itself.
#[allow(dead_code, reason = "not every test that includes this file needs it")]
pub(crate) fn found(text: &str) -> Found {
    found_if_read(text).unwrap_or_else(|why| panic!("{why}\n{text}"))
}

/// The same, or why the table cannot be read.
pub(crate) fn found_if_read(text: &str) -> Result<Found, String> {
    let file = SourceMap::default().add("table.csv", text);
    let (table, findings) = table::read(text, file);
    let table = table.filter(|_| findings.is_empty()).ok_or_else(|| format!("{findings:?}"))?;
    let header: Vec<Word<'_>> = table.header.iter().map(word).collect();
    let rows: Vec<Vec<Word<'_>>> = table.rows.iter().map(|row| row.iter().map(word).collect()).collect();
    let sheet = sheet(&header, &rows).map_err(|faults| format!("{faults:?}"))?;
    let reconciled = reconcile(&sheet);
    Ok(Found { sheet, reconciled })
}

fn word(cell: &Cell) -> Word<'_> {
    Word { text: &cell.text, span: cell.span }
}

impl Found {
    /// The item that an oddity is about.
    #[allow(dead_code, reason = "not every test that includes this file needs it")]
    pub(crate) fn item(&self, oddity: &Oddity) -> &str {
        self.sheet.rows.get(oddity.row).map_or("", |row| row.item.as_str())
    }

    #[allow(dead_code, reason = "not every test that includes this file needs it")]
    /// All oddities, as `item column: stated -> expected`.
    pub(crate) fn odd(&self) -> Vec<String> {
        let number = |value: Option<Decimal>| value.map_or_else(|| "nothing".to_owned(), |value| value.to_string());
        let one = |oddity: &Oddity| {
            format!("{} {}: {} -> {}", self.item(oddity), oddity.column.word(), number(oddity.stated), number(oddity.expected))
        };
        self.reconciled.oddities.iter().map(one).collect()
    }
}
