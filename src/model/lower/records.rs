//! Courses, prices, cutting tests and free pages.

use super::context::{Context, Gathered, date};
use super::words::word;
use super::{output, top};
use crate::finding::{Finding, Place, Span};
use crate::model::guidebook::{Course, CuttingTest, DeclaredCooked, Guidebook, Lesson, Page, PiecePrice, Price, Prices, Run};
use crate::model::quantity::parse::{self, Slip, SlipKind};
use crate::model::quantity::{Mass, MassUnit};
use crate::model::stated::{Spanned, Stated};
use crate::model::words::Tax;
use crate::source::documents::others as doc;
use crate::source::documents::texts::PriceText;
use crate::source::field::{Entries, Field};
use crate::source::{Cell, Documents, Table};

/// Lowers all records into `book`.
pub(super) fn lower(documents: &Documents, book: &mut Guidebook, gathered: &mut Gathered<'_>) {
    for document in &documents.courses {
        let mut context = Context::new(document.file, gathered);
        let id = document.id.trim_start_matches("courses/").to_owned();
        book.courses.push(course(id, &document.value, &mut context));
    }
    if let Some(document) = &documents.prices {
        let mut context = Context::new(document.file, gathered);
        book.prices = Some(prices(&document.value, &mut context));
    }
    for document in &documents.cutting_tests {
        let mut context = Context::new(document.file, gathered);
        let procedure = document.id.trim_start_matches("cutting-tests/").to_owned();
        book.cutting_tests.push(cutting_test(procedure, &document.value, &mut context));
    }
    for document in &documents.pages {
        let id = document.id.trim_start_matches("pages/").to_owned();
        let whole = Span::new(0, u32::try_from(document.value.len()).unwrap_or(u32::MAX));
        Context::new(document.file, gathered).free_text(&document.value, whole);
        book.pages.push(Page { id, file: document.file, text: document.value.clone() });
    }
}

fn course(id: String, stated: &doc::Course, context: &mut Context<'_>) -> Course {
    let lessons = stated.lessons.value().map_or_else(Vec::new, |items| {
        items
            .iter()
            .filter_map(|item| item.value())
            .map(|lesson| Lesson {
                name: context.text(&lesson.name),
                procedures: context.list(&lesson.procedures),
                aims: context.markdown(&lesson.aims),
            })
            .collect()
    });
    Course {
        id,
        place: context.at(stated.title.key),
        title: context.text(&stated.title),
        class_size: context.whole(&stated.class_size, 1),
        lessons,
    }
}

fn prices(stated: &doc::Prices, context: &mut Context<'_>) -> Prices {
    let cooked = stated.cooked.value().map_or_else(Vec::new, |entries| {
        context
            .entries(entries)
            .into_iter()
            .map(|(piece, field)| DeclaredCooked { piece, share: context.read(field, |text| parse::share(text)) })
            .collect()
    });
    Prices {
        currency: context.read(&stated.currency, |text| currency(text)),
        date: context.date(&stated.date),
        tax: word(context, &stated.tax, "`with` or `without` tax", Tax::ALL, Tax::word),
        buy: piece_prices(&stated.buy, context),
        credit: piece_prices(&stated.credit, context),
        sell: piece_prices(&stated.sell, context),
        labour: context.read(&stated.labour, |text| {
            let (millionths, per) = parse::money(text)?;
            if per == "h" {
                return Ok(millionths);
            }
            Err(Slip::new(SlipKind::UnitWrong, format!("work is paid by the hour, but `{per}` stands here"), "Write it as `24.00 / h`."))
        }),
        cooked,
    }
}

/// Three capital letters, as in ISO 4217; which of them are a currency is not looked up.
fn currency(text: &str) -> Result<String, Slip> {
    let text = text.trim();
    if text.len() == 3 && text.bytes().all(|byte| byte.is_ascii_uppercase()) {
        return Ok(text.to_owned());
    }
    let letters = text.len() == 3 && text.bytes().all(|byte| byte.is_ascii_alphabetic());
    let known = match text.to_lowercase().as_str() {
        "\u{20ac}" | "euro" | "euros" => Some("EUR".to_owned()),
        _ => letters.then(|| text.to_uppercase()),
    };
    let help = known.map_or_else(|| "Write its three letters, as in `EUR`.".to_owned(), |code| format!("Write `{code}`."));
    Err(Slip::new(SlipKind::Malformed, format!("`{text}` is not the code of a currency"), help))
}

fn piece_prices(field: &Field<Entries<PriceText>>, context: &mut Context<'_>) -> Vec<PiecePrice> {
    let Some(entries) = field.value() else { return Vec::new() };
    context
        .entries(entries)
        .into_iter()
        .map(|(piece, field)| {
            let price = context.read(field, |text| {
                let (millionths, per) = parse::money(text)?;
                let weight =
                    if per.starts_with(|c: char| c.is_ascii_digit()) { parse::mass(per)? } else { parse::mass(&format!("1 {per}"))? };
                Ok(Price { millionths, per: weight.low })
            });
            PiecePrice { piece, price }
        })
        .collect()
}

/// Columns of a cutting test that hold no weight of a piece.
const FIXED: &[&str] = &["date", "cutter", "lot", "unit", "start", "shop", "revision", "minutes", "received", "note"];
/// Columns that must be there.
const NEEDED: &[&str] = &["date", "cutter", "lot", "unit", "start"];

fn cutting_test(procedure: String, table: &Table, context: &mut Context<'_>) -> CuttingTest {
    let place = top(context.file);
    for needed in NEEDED {
        if !table.header.iter().any(|cell| cell.text.trim() == *needed) {
            let head = table.header.first().map_or(place, |cell| context.at(cell.span));
            let finding = Finding::fault("missing-key", head, format!("the column `{needed}` is missing"));
            context.report(finding.help(format!("Add a column `{needed}`.")));
        }
    }
    let mut pieces: Vec<(usize, Spanned<String>)> = Vec::new();
    for (at, cell) in table.header.iter().enumerate() {
        let piece = Spanned::new(cell.text.trim().to_owned(), context.at(cell.span));
        let weighed = !FIXED.contains(&piece.value.as_str());
        if weighed && (piece.value == "loss" || output::piece_is_sound(&piece, context)) {
            pieces.push((at, piece));
        }
    }
    let runs = table.rows.iter().map(|row| run(table, row, &pieces, context)).collect();
    CuttingTest { procedure, file: context.file, place, columns: pieces.into_iter().map(|(_, piece)| piece).collect(), runs }
}

fn run(table: &Table, row: &[Cell], pieces: &[(usize, Spanned<String>)], context: &mut Context<'_>) -> Run {
    let column = |name: &str| table.header.iter().position(|cell| cell.text.trim() == name).and_then(|at| row.get(at));
    let place: Place = row.first().map_or_else(|| top(context.file), |cell| context.at(cell.span));
    let text = |cell: Option<&Cell>| cell.map_or_else(String::new, |cell| cell.text.trim().to_owned());
    let unit = column("unit").and_then(|cell| unit(cell, context));
    let mut weighed = |cell: Option<&Cell>| cell.map_or(Stated::Absent, |cell| weight(cell, unit, context));
    let start = weighed(column("start"));
    let weights = pieces.iter().map(|(at, _)| weighed(row.get(*at))).collect();
    Run {
        place,
        date: column("date").map_or(Stated::Absent, |cell| run_date(cell, context)),
        cutter: text(column("cutter")),
        lot: text(column("lot")),
        start,
        weights,
    }
}

/// The unit of a row, told once: the weights of a row without one are silent.
fn unit(cell: &Cell, context: &mut Context<'_>) -> Option<MassUnit> {
    match parse::mass(&format!("1 {}", cell.text.trim())) {
        Ok(one) => Some(one.low.unit()),
        Err(slip) if slip.kind == SlipKind::UnitMissing => {
            context.slip(
                context.at(cell.span),
                Slip { message: "this run has no unit".to_owned(), help: "Write kg, g, lb or oz.".to_owned(), ..slip },
            );
            None
        }
        Err(slip) => {
            context.slip(context.at(cell.span), Slip { help: "Write kg, g, lb or oz.".to_owned(), ..slip });
            None
        }
    }
}

fn run_date(cell: &Cell, context: &mut Context<'_>) -> Stated<jiff::civil::Date> {
    let place = context.at(cell.span);
    if cell.text.trim().is_empty() {
        return Stated::Absent;
    }
    match date(&cell.text) {
        Ok(date) => Stated::Given(Spanned::new(date, place)),
        Err((message, help)) => {
            context.report(Finding::fault("date-malformed", place, message).help(help));
            Stated::Broken
        }
    }
}

/// A weighed cell: a number in the row's unit; empty was not weighed.
fn weight(cell: &Cell, unit: Option<MassUnit>, context: &mut Context<'_>) -> Stated<Mass> {
    let text = cell.text.trim();
    if text.is_empty() {
        return Stated::Absent;
    }
    let Some(unit) = unit else { return Stated::Broken };
    let place = context.at(cell.span);
    let bare = text.strip_suffix(unit.symbol()).map_or(text, str::trim_end);
    let read = parse::mass(&format!("{bare} {}", unit.symbol())).and_then(|range| {
        if bare.len() < text.len() {
            let message = format!("the unit stands in its own column, and in `{text}` too");
            return Err(Slip::new(SlipKind::UnitUnexpected, message, format!("Write `{bare}`.")));
        }
        if range.is_single() {
            return Ok(range.low);
        }
        Err(Slip::new(SlipKind::Malformed, format!("a scale shows one weight, and here stands `{text}`"), "Write what was weighed."))
    });
    match read {
        Ok(mass) => Stated::Given(Spanned::new(mass, place)),
        Err(slip) => {
            // The unit was put behind the number to read it, and does not stand in the cell.
            let shown = |text: &str| text.replace(&format!(" {}`", unit.symbol()), "`");
            context.slip(place, Slip { message: shown(&slip.message), help: shown(&slip.help), ..slip });
            Stated::Broken
        }
    }
}
