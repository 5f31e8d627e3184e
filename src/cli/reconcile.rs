//! `seamwise reconcile`: whether a table adds up, what rounding explains, and which row is the likely slip.
//!
//! A table that does not close is an answer, exit status 1. A table that cannot be read is a failure with its places.

mod answer;
mod faults;
mod numbers;
mod text;
mod why;

use std::path::Path;

use super::args::ReconcileFormat;
use super::failure::Failure;
use super::inspect::style;
use super::terminal::Terminal;
use crate::analysis::reconcile::lower::{Word, sheet};
use crate::analysis::reconcile::reconcile;
use crate::analysis::reconcile::sheet::Sheet;
use crate::finding::{FileId, Finding, Place, SourceMap, text as finding_text};
use crate::source::{Cell, bytes, table};

/// Larger files hold no table that a person published or weighed.
const MOST_BYTES: u64 = 16 * 1024 * 1024;

/// Holds the table at `path` against itself and prints what is found; gives the exit status.
pub(super) fn run(path: &Path, format: ReconcileFormat, terminal: Terminal) -> Result<u8, Failure> {
    let content = content(path)?;
    let name = path.display().to_string();
    let mut sources = SourceMap::default();
    let sheet = match read(&name, content, &mut sources) {
        Ok(sheet) => sheet,
        Err(findings) => {
            terminal.tell(finding_text::render(&findings, 0, &sources, style(terminal)).trim_end());
            return Err(Failure::new("this table cannot be read").at(path).help("mend what is told above, then run the command again"));
        }
    };
    let found = reconcile(&sheet);
    let printed = match format {
        ReconcileFormat::Text => text::render(&name, &sheet, &found, terminal.columns),
        ReconcileFormat::Json => answer::json(&sheet, &found),
    };
    terminal.print(&printed)?;
    Ok(u8::from(!found.closes()))
}

fn content(path: &Path) -> Result<Vec<u8>, Failure> {
    let unreadable = |error| Failure::of_disk("read this table", path, &error);
    let facts = std::fs::metadata(path).map_err(unreadable)?;
    if facts.is_dir() {
        return Err(Failure::new("this is a folder, and a table is one file").at(path).help("name a CSV file"));
    }
    let size = facts.len();
    if size > MOST_BYTES {
        return Err(Failure::new(format!("this file has {size} bytes, and a table has {MOST_BYTES} at most")).at(path));
    }
    std::fs::read(path).map_err(unreadable)
}

/// The sheet that the bytes hold, or what is wrong with them.
fn read(name: &str, content: Vec<u8>, sources: &mut SourceMap) -> Result<Sheet, Vec<Finding>> {
    let text = match bytes::text_of(content) {
        Ok(text) => text,
        Err(refusal) => {
            let file = sources.add(name, refusal.text);
            return Err(vec![Finding::fault(refusal.check, Place::new(file, refusal.span), refusal.message).help(refusal.help)]);
        }
    };
    let file = sources.add(name, text.clone());
    let (table, findings) = table::read(&text, file);
    let Some(table) = table.filter(|_| findings.is_empty()) else { return Err(findings) };
    lowered(&table, file)
}

fn lowered(table: &table::Table, file: FileId) -> Result<Sheet, Vec<Finding>> {
    let header: Vec<Word<'_>> = table.header.iter().map(word).collect();
    let rows: Vec<Vec<Word<'_>>> = table.rows.iter().map(|row| row.iter().map(word).collect()).collect();
    sheet(&header, &rows).map_err(|faults| faults.iter().map(|fault| faults::finding(fault, file)).collect())
}

fn word(cell: &Cell) -> Word<'_> {
    Word { text: &cell.text, span: cell.span }
}

#[cfg(test)]
mod tests;
