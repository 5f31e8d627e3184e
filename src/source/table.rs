//! A table in CSV: its header and its rows, each cell with its place.
//!
//! What the columns mean is the model's. A row of the wrong length is reported and left out.

use csv::{ByteRecord, ReaderBuilder};

use crate::finding::{FileId, Finding, Place, Span};

/// A table as it stands.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Table {
    /// The names of the columns.
    pub header: Vec<Cell>,
    /// The rows; each has as many cells as the header. Rows without any text are left out.
    pub rows: Vec<Vec<Cell>>,
}

/// One cell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// Its text without quotes and without blanks around it.
    pub text: String,
    /// Where it stands, quotes included.
    pub span: Span,
}

/// Reads a table. It is `None` when there is no header to go by.
#[must_use]
pub fn read(text: &str, file: FileId) -> (Option<Table>, Vec<Finding>) {
    let place = |span| Place::new(file, span);
    let mut reader = ReaderBuilder::new().has_headers(false).flexible(true).from_reader(text.as_bytes());
    let mut lines: Vec<Vec<Cell>> = Vec::new();
    let mut record = ByteRecord::new();
    let mut findings = Vec::new();
    loop {
        match reader.read_byte_record(&mut record) {
            Ok(true) => {}
            Ok(false) => break,
            Err(error) => {
                // Reading from a text in memory does not fail; should it, that is a finding and no panic.
                findings.push(Finding::fault("table-malformed", place(Span::new(0, 0)), format!("this table can't be read: {error}")));
                return (None, findings);
            }
        }
        let start = record.position().map_or(0, |position| usize::try_from(position.byte()).unwrap_or(usize::MAX));
        let (cells, unclosed) = cells_of(text, start, &record);
        if let Some(quote) = unclosed {
            findings.push(
                Finding::fault("table-malformed", place(quote), "this quote is not closed, and the rest of the table is lost in it")
                    .help("close the quote, or take it away"),
            );
            break;
        }
        lines.push(cells);
    }
    lines.retain(|cells| cells.iter().any(|cell| !cell.text.is_empty()));
    if lines.is_empty() {
        if findings.is_empty() {
            findings.push(
                Finding::fault("empty-file", place(Span::new(0, 0)), "this table has no header").help("write the names of its columns"),
            );
        }
        return (None, findings);
    }
    let header = lines.remove(0);
    if let Some(finding) = header_mistake(&header, file) {
        findings.insert(0, finding);
        return (None, findings);
    }
    let mut rows = Vec::new();
    for cells in lines {
        if cells.len() == header.len() {
            rows.push(cells);
        } else {
            findings.push(ragged(&cells, header.len(), file));
        }
    }
    findings.sort_by_key(|finding| finding.place.span.start);
    (Some(Table { header, rows }), findings)
}

fn header_mistake(header: &[Cell], file: FileId) -> Option<Finding> {
    let place = |span| Place::new(file, span);
    if let [only] = header {
        let sign = [';', '\t'].into_iter().find(|sign| only.text.contains(*sign))?;
        let name = if sign == ';' { "semicolons" } else { "tabs" };
        let message = format!("the columns of this table are parted by {name}, not by commas");
        return Some(Finding::fault("table-malformed", place(only.span), message).help("save it as CSV with commas and decimal points"));
    }
    for (at, cell) in header.iter().enumerate() {
        if cell.text.is_empty() {
            let message = format!("column {} has no name", at + 1);
            return Some(Finding::fault("table-malformed", place(cell.span), message).help("name the column, or delete it"));
        }
        if let Some(first) = header.iter().take(at).find(|other| other.text == cell.text) {
            let finding = Finding::fault("doubled-key", place(cell.span), format!("column `{}` stands here twice", cell.text));
            return Some(finding.also(place(first.span), "it stands here first").help("name one of the two differently, or delete it"));
        }
    }
    None
}

fn ragged(cells: &[Cell], columns: usize, file: FileId) -> Finding {
    let span = cells
        .first()
        .map_or(Span::new(0, 0), |first| Span::new(first.span.start, cells.last().map_or(first.span.end, |last| last.span.end)));
    let message = format!("this row has {} cells, and the header has {columns}", cells.len());
    let help = if cells.len() > columns {
        "quote a text that holds a comma, and write a decimal point, not a comma"
    } else {
        "leave an empty cell for what was not weighed"
    };
    Finding::fault("table-malformed", Place::new(file, span), message).help(help)
}

/// The cells of the record that starts at `start`, and the quote that is never closed, if there is one.
fn cells_of(text: &str, start: usize, record: &ByteRecord) -> (Vec<Cell>, Option<Span>) {
    // The reader counts a record from the end of the one before, line ends and empty lines included.
    let rest = text.get(start..).unwrap_or("");
    let mut at = start + (rest.len() - rest.trim_start_matches(['\r', '\n']).len());
    let mut cells = Vec::with_capacity(record.len());
    for field in record {
        let (length, closed) = raw_length(text.get(at..).unwrap_or(""));
        let raw = text.get(at..at + length).unwrap_or("");
        let trimmed = raw.trim();
        let from = at + (raw.len() - raw.trim_start().len());
        let span = Span::new(u32::try_from(from).unwrap_or(u32::MAX), u32::try_from(from + trimmed.len()).unwrap_or(u32::MAX));
        if !closed {
            return (cells, Some(Span::new(span.start, span.start + 1)));
        }
        cells.push(Cell { text: String::from_utf8_lossy(field).trim().to_owned(), span });
        at += length + 1;
    }
    (cells, None)
}

/// How many bytes a cell takes up to its comma or line end, and whether its quote is closed.
fn raw_length(rest: &str) -> (usize, bool) {
    let quoted = rest.starts_with('"');
    let mut inside = quoted;
    for (at, byte) in rest.bytes().enumerate() {
        match byte {
            b'"' if quoted => inside = at == 0 || !inside,
            b',' | b'\n' | b'\r' if !inside => return (at, true),
            _ => {}
        }
    }
    (rest.len(), !inside)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::SourceMap;

    fn told(text: &str) -> (Option<Table>, Vec<String>) {
        let mut sources = SourceMap::default();
        let file = sources.add("a.csv", text);
        let (table, findings) = read(text, file);
        let told = findings.iter().map(|finding| {
            let at = sources.line_column(finding.place);
            format!("{} {}:{}", finding.check, at.line, at.column)
        });
        (table, told.collect())
    }

    #[test]
    fn cells_know_their_places() {
        let text = "date,cutter,note\r\n2026-11-02, Ana ,\"cold, \"\"wet\"\"\r\nroom\"\r\n\r\n2026-11-03,,0\n,,\n";
        let (table, told) = told(text);
        assert_eq!(told, [""; 0]);
        let table = table.unwrap();
        let written = |cell: &Cell| (cell.text.clone(), text[cell.span.range()].to_owned());
        assert_eq!(written(&table.header[2]), ("note".into(), "note".into()));
        assert_eq!(written(&table.rows[0][1]), ("Ana".into(), "Ana".into()));
        assert_eq!(written(&table.rows[0][2]), ("cold, \"wet\"\r\nroom".into(), "\"cold, \"\"wet\"\"\r\nroom\"".into()));
        assert_eq!(written(&table.rows[1][0]), ("2026-11-03".into(), "2026-11-03".into()));
        assert_eq!((table.rows[1][1].text.as_str(), table.rows[1][2].text.as_str()), ("", "0"));
        assert_eq!(table.rows.len(), 2);
    }

    #[test]
    fn what_is_no_table_is_told_where() {
        assert_eq!(told("a,b\n1\n1,2\n1,2,3\n").1, ["table-malformed 2:1", "table-malformed 4:1"]);
        assert_eq!(told("a;b\n1;2\n").1, ["table-malformed 1:1"]);
        assert_eq!(told("a,b,a\n").1, ["doubled-key 1:5"]);
        assert_eq!(told("a,,c\n").1, ["table-malformed 1:3"]);
        assert_eq!(told("\n\n").1, ["empty-file 1:1"]);
        assert_eq!(told("a,b\n1,\"x\n2,3\n").1, ["table-malformed 2:3"]);
    }
}
