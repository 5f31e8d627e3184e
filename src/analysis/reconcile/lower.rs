//! From the cells of a table to a sheet: which column is which, and what each cell says.
//!
//! Every cell that cannot be read is a fault with its place; the words for it are the caller's.

use crate::finding::Span;

use super::figure::{FigureFault, Reading, common_unit, share, weight};
use super::sheet::{Column, Kind, Row, Sheet};

/// The names of the columns.
pub const COLUMNS: [&str; 5] = ["item", "group", "weight", "share", "kind"];
/// The kinds of rows; the first when left out.
pub const KINDS: [&str; 3] = ["part", "subtotal", "total"];

/// The text of a cell and where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Word<'a> {
    /// The text, without blanks around it.
    pub text: &'a str,
    /// Where it stands.
    pub span: Span,
}

/// Why a table is no sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TableFaultKind {
    /// A column with a name that no column has.
    UnknownColumn,
    /// There is no column `item`.
    NoItemColumn,
    /// No row has a weight or a share.
    NoFigures,
    /// No row is a part or a subtotal, so nothing adds up.
    NoParts,
    /// A part without a name.
    PartWithoutItem,
    /// A kind that there is not.
    UnknownKind,
    /// A cell that holds no figure.
    NoFigure(Column, FigureFault),
    /// A bare number in a column where others have a unit.
    BareAmongUnits,
}

/// A fault and the cell that has it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableFault {
    /// What is wrong.
    pub kind: TableFaultKind,
    /// Where.
    pub span: Span,
    /// The text of the cell.
    pub text: String,
}

impl TableFault {
    fn new(kind: TableFaultKind, word: Word<'_>) -> Self {
        Self { kind, span: word.span, text: word.text.to_owned() }
    }
}

/// A row whose figures have no unit yet.
struct Draft {
    item: String,
    group: Option<String>,
    kind: Kind,
    weight: Option<(Reading, Span)>,
    share: Option<Reading>,
    span: Span,
}

/// The sheet that these cells make; each row has as many cells as the header.
///
/// # Errors
/// All faults, in the order of their places.
pub fn sheet(header: &[Word<'_>], rows: &[Vec<Word<'_>>]) -> Result<Sheet, Vec<TableFault>> {
    let mut faults = Vec::new();
    for word in header.iter().filter(|word| !COLUMNS.contains(&word.text)) {
        faults.push(TableFault::new(TableFaultKind::UnknownColumn, *word));
    }
    let start = header.first().copied().unwrap_or(Word { text: "", span: Span::default() });
    let column = |name: &str| header.iter().position(|word| word.text == name);
    if column("item").is_none() {
        faults.push(TableFault::new(TableFaultKind::NoItemColumn, start));
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let drafts: Vec<Draft> = rows.iter().map(|row| draft(row, &column, &mut faults)).collect();
    let mixed = drafts.iter().filter_map(|draft| draft.weight.as_ref()).any(|(reading, _)| !reading.is_bare());
    for (reading, span) in drafts.iter().filter_map(|draft| draft.weight.as_ref()).filter(|(reading, _)| mixed && reading.is_bare()) {
        faults.push(TableFault { kind: TableFaultKind::BareAmongUnits, span: *span, text: reading.text().to_owned() });
    }
    if faults.is_empty() {
        let kind = if drafts.iter().all(|draft| draft.weight.is_none() && draft.share.is_none()) {
            Some(TableFaultKind::NoFigures)
        } else if drafts.iter().all(|draft| draft.kind == Kind::Total) {
            Some(TableFaultKind::NoParts)
        } else {
            None
        };
        faults.extend(kind.map(|kind| TableFault::new(kind, start)));
    }
    if faults.is_empty() {
        return Ok(finished(drafts));
    }
    faults.sort_by_key(|fault| fault.span.start);
    Err(faults)
}

fn draft(row: &[Word<'_>], column: &impl Fn(&str) -> Option<usize>, faults: &mut Vec<TableFault>) -> Draft {
    let start = row.first().copied().unwrap_or(Word { text: "", span: Span::default() });
    let cell = |name: &str| column(name).and_then(|at| row.get(at)).copied().unwrap_or(Word { text: "", ..start });
    let word = cell("kind");
    let kind = match word.text {
        "" | "part" => Kind::Part,
        "subtotal" => Kind::Subtotal,
        "total" => Kind::Total,
        _ => {
            faults.push(TableFault::new(TableFaultKind::UnknownKind, word));
            Kind::Part
        }
    };
    let item = cell("item");
    if item.text.is_empty() && kind == Kind::Part {
        faults.push(TableFault::new(TableFaultKind::PartWithoutItem, item));
    }
    let mut read = |column: Column, reader: fn(&str) -> Result<Reading, FigureFault>| {
        let word = cell(column.word());
        if word.text.is_empty() {
            return None;
        }
        match reader(word.text) {
            Ok(reading) => Some((reading, word.span)),
            Err(fault) => {
                faults.push(TableFault::new(TableFaultKind::NoFigure(column, fault), word));
                None
            }
        }
    };
    let weight = read(Column::Weight, weight);
    let share = read(Column::Share, share).map(|(reading, _)| reading);
    let group = cell("group").text;
    let group = (!group.is_empty()).then(|| group.to_owned());
    Draft { item: item.text.to_owned(), group, kind, weight, share, span: start.span }
}

fn finished(drafts: Vec<Draft>) -> Sheet {
    let weights = || drafts.iter().filter_map(|draft| draft.weight.as_ref()).map(|(reading, _)| reading);
    let unit = common_unit(weights().flat_map(Reading::units));
    let to_the_ounce = weights().any(Reading::is_to_the_ounce);
    let rows = drafts.into_iter().map(|draft| Row {
        item: draft.item,
        group: draft.group,
        kind: draft.kind,
        weight: draft.weight.map(|(reading, _)| reading.figure(unit, to_the_ounce)),
        share: draft.share.map(|reading| reading.figure(None, false)),
        span: draft.span,
    });
    Sheet { rows: rows.collect(), unit, to_the_ounce }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Cells of a text with plain commas; each span begins at the cell's number in the text.
    pub(crate) fn told(text: &str) -> Result<Sheet, Vec<(TableFaultKind, u32)>> {
        let mut at = 0;
        let mut lines = text.lines().map(|line| {
            let word = |text| {
                at += 1;
                Word { text, span: Span::new(at, at) }
            };
            line.split(',').map(word).collect::<Vec<_>>()
        });
        let header = lines.next().unwrap();
        let rows: Vec<_> = lines.collect();
        sheet(&header, &rows).map_err(|faults| faults.iter().map(|fault| (fault.kind, fault.span.start)).collect())
    }

    #[test]
    fn columns_may_stand_in_any_order_and_be_left_out() {
        let sheet = told("share,item,kind\n24,Ham,\n,Loin,part\n100,,total").unwrap();
        assert_eq!(sheet.rows.len(), 3);
        assert_eq!(sheet.rows[0].share.as_ref().unwrap().text, "24");
        assert_eq!((sheet.rows[1].share.clone(), sheet.rows[1].group.clone()), (None, None));
        assert_eq!(sheet.rows[2].kind, Kind::Total);
        assert!(!sheet.has(Column::Weight));
    }

    #[test]
    fn whole_pounds_are_read_to_the_ounce_beside_ounces() {
        let sheet = told("item,weight\nFat,6 lb 8 oz\nBone,4 lb\nLoss,4 oz").unwrap();
        assert!(sheet.to_the_ounce);
        assert_eq!(sheet.rows[1].weight.as_ref().unwrap().step.to_string(), "0.0625");
        let decimal = told("item,weight\nFat,6 lb\nBone,4.5 lb").unwrap();
        assert!(!decimal.to_the_ounce);
        assert_eq!(decimal.rows[0].weight.as_ref().unwrap().step.to_string(), "1");
    }

    #[test]
    fn every_fault_has_its_cell() {
        use TableFaultKind as Fault;
        assert_eq!(told("items,weight\nHam,3"), Err(vec![(Fault::UnknownColumn, 1), (Fault::NoItemColumn, 1)]));
        assert_eq!(told("item,kind\nHam,"), Err(vec![(Fault::NoFigures, 1)]));
        assert_eq!(told("item,weight,kind\nHam,3,total"), Err(vec![(Fault::NoParts, 1)]));
        assert_eq!(
            told("item,weight,kind\n,3,\nHam,x,sum"),
            Err(vec![(Fault::PartWithoutItem, 4), (Fault::NoFigure(Column::Weight, FigureFault::NoNumber), 8), (Fault::UnknownKind, 9),])
        );
        assert_eq!(told("item,weight\nHam,3 lb\nLoin,2"), Err(vec![(Fault::BareAmongUnits, 6)]));
    }
}
