//! The tally for people: a table for each procedure and each chain, with its basis named.
//!
//! Only the typical column adds up, and it is rounded so that it does; low and high are bounds, and the table says so.

use super::Tally;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::rounding::{tenths_of_percent, weights_in_units};
use crate::analysis::shares::{PieceShare, ShareRange, Shares};
use crate::cli::layout::{width, wrap};
use crate::cli::table::{Align, Table};
use crate::model::quantity::{Mass, MassUnit, Range};
use crate::model::words::{Units, Use};
use crate::model::{Guidebook, Procedure};

/// All tables, with an empty line between two.
pub(super) fn render(tally: &Tally, columns: usize) -> String {
    let mut parts: Vec<String> =
        tally.procedures.iter().map(|(procedure, figures)| of_procedure(tally.book, procedure, figures, columns)).collect();
    for chain in &tally.chains {
        let Some(shares) = &chain.shares else { continue };
        // A chain of one procedure says again what its procedure says.
        if chain.procedures.len() < 2 {
            continue;
        }
        let start = tally.book.piece_name(&chain.start);
        let first = chain.procedures.first().and_then(|id| tally.book.procedure(id));
        let scale = first.and_then(|first| Scale::of(first, tally.book));
        let mut part = heading(&format!("Chain from {start}: {}", chain.procedures.join(", then ")), columns);
        part.push_str(&basis(&start, scale.as_ref(), columns));
        part.push_str(&table(tally.book, shares, scale.as_ref()).render(columns));
        parts.push(part);
    }
    if parts.is_empty() {
        return "No procedure has figures.\n".to_owned();
    }
    parts.push(paragraph(
        "Low and high are bounds: they do not add up, because when one piece is heavy another must be light. Typical adds up.",
        columns,
    ));
    parts.join("\n")
}

fn of_procedure(book: &Guidebook, procedure: &Procedure, figures: &ProcedureAnalysis, columns: usize) -> String {
    let title = procedure.title.value().map_or(procedure.id.as_str(), String::as_str);
    let mut text = heading(&format!("{title} ({})", procedure.id), columns);
    let start = figures.start.as_deref().map_or_else(|| "the start".to_owned(), |piece| book.piece_name(piece));
    let scale = Scale::of(procedure, book);
    text.push_str(&basis(&start, scale.as_ref(), columns));
    if let Some(shares) = &figures.shares {
        text.push_str(&table(book, shares, scale.as_ref()).render(columns));
    }
    text.push_str(&times(book, figures, columns));
    text
}

fn heading(text: &str, columns: usize) -> String {
    let lines = wrap(text, columns);
    let under = lines.iter().map(|line| width(line)).max().unwrap_or(0);
    format!("{}\n{}\n", lines.join("\n"), "=".repeat(under))
}

fn basis(start: &str, scale: Option<&Scale>, columns: usize) -> String {
    let weight = scale.map(|scale| format!(", worked at {}", scale.shown)).unwrap_or_default();
    format!("{}\n", paragraph(&format!("Share of the start ({start}){weight}."), columns))
}

fn paragraph(text: &str, columns: usize) -> String {
    wrap(text, columns).join("\n") + "\n"
}

/// The weight at which a table is worked.
struct Scale {
    /// As it stands in the guidebook.
    shown: String,
    symbol: &'static str,
    /// The start in units of the symbol.
    start: f64,
    decimals: usize,
}

impl Scale {
    fn of(procedure: &Procedure, book: &Guidebook) -> Option<Self> {
        let mass: Mass = procedure.start.typical_mass()?;
        let unit = match book.units() {
            Units::Metric => MassUnit::Kilogram,
            Units::Imperial => MassUnit::Pound,
        };
        let start = mass.picograms() as f64 / unit.picograms() as f64;
        // Ten grams are much of a quail and nothing of a side of beef.
        let decimals = if start < 5.0 { 3 } else { 2 };
        Some(Self { shown: mass.to_string(), symbol: unit.symbol(), start, decimals })
    }

    /// Typical weights in units of the last printed digit, adding up to the start as it is printed.
    fn units(&self, shares: &[f64]) -> Vec<u64> {
        weights_in_units(shares, self.start, self.unit())
    }

    fn unit(&self) -> f64 {
        0.1_f64.powi(i32::try_from(self.decimals).unwrap_or(0))
    }
}

/// A typical value as it is printed, in whole units of the last digit, so that sums of printed values are exact.
#[derive(Debug, Clone, Copy, Default)]
struct Typical {
    tenths: u64,
    units: u64,
}

impl std::iter::Sum for Typical {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::default(), |sum, one| Self { tenths: sum.tenths + one.tenths, units: sum.units + one.units })
    }
}

/// The typical values of final pieces and, last, the loss, rounded together.
fn typicals(finals: &[&PieceShare], loss: ShareRange, scale: Option<&Scale>) -> Vec<Typical> {
    let shares: Vec<f64> = finals.iter().map(|piece| piece.share.typical).chain([loss.typical]).collect();
    let units = scale.map_or_else(|| vec![0; shares.len()], |scale| scale.units(&shares));
    tenths_of_percent(&shares).into_iter().zip(units).map(|(tenths, units)| Typical { tenths, units }).collect()
}

fn table(book: &Guidebook, shares: &Shares, scale: Option<&Scale>) -> Table {
    let numbers = if scale.is_some() { 6 } else { 3 };
    let aligns = [Align::Left, Align::Left].into_iter().chain(std::iter::repeat_n(Align::Right, numbers));
    let mut table = Table::new(aligns);
    let unit = scale.map_or("", |scale| scale.symbol);
    table.row(["", "", "", "%", "", "", unit].into_iter().take(2 + numbers));
    table.row(["Piece", "Use"].into_iter().chain(["low", "typical", "high"].into_iter().cycle().take(numbers)));
    table.line();
    let finals: Vec<&PieceShare> = shares.pieces.iter().filter(|piece| piece.is_final).collect();
    let typicals = typicals(&finals, shares.loss, scale);
    for (piece, typical) in finals.iter().zip(&typicals) {
        table.row(row(&book.piece_name(&piece.piece), &use_words(piece.purpose), piece.share, scale, Some(*typical)));
    }
    table.row(row("Loss", "", shares.loss, scale, typicals.last().copied()));
    table.line();
    let whole = Some(typicals.iter().copied().sum());
    let all = ShareRange { low: 1.0, typical: 1.0, high: 1.0 };
    table.row(
        row("All together", "", all, scale, whole)
            .into_iter()
            .enumerate()
            .map(|(at, cell)| if matches!(at, 2 | 4 | 5 | 7) { String::new() } else { cell }),
    );
    table.line();
    for entry in &shares.uses {
        let of_use = finals.iter().zip(&typicals).filter(|(piece, _)| piece.purpose == Some(entry.purpose)).map(|(_, typical)| *typical);
        table.row(row(&format!("All {}", use_words(Some(entry.purpose))), "", entry.share, scale, Some(of_use.sum())));
    }
    let taken: Vec<&PieceShare> = shares.pieces.iter().filter(|piece| !piece.is_final).collect();
    if !taken.is_empty() {
        table.line();
    }
    for piece in taken {
        table.row(row(&book.piece_name(&piece.piece), "cut further", piece.share, scale, None));
    }
    table
}

fn use_words(purpose: Option<Use>) -> String {
    purpose.map(|purpose| purpose.word().replace('-', " ")).unwrap_or_default()
}

/// One row; `typical` where typical values are rounded together with others.
fn row(name: &str, purpose: &str, share: ShareRange, scale: Option<&Scale>, typical: Option<Typical>) -> Vec<String> {
    let percent = |share: f64| format!("{:.1}", share * 100.0);
    let typical_percent = typical.map_or_else(|| percent(share.typical), |typical| format!("{:.1}", typical.tenths as f64 / 10.0));
    let mut cells = vec![capital(name), purpose.to_owned(), percent(share.low), typical_percent, percent(share.high)];
    if let Some(scale) = scale {
        let weight = typical.map_or(share.typical * scale.start, |typical| typical.units as f64 * scale.unit());
        cells.extend([share.low * scale.start, weight, share.high * scale.start].map(|weight| format!("{weight:.0$}", scale.decimals)));
    }
    cells
}

/// With a capital at the beginning; a piece that no cut list names has none of its own.
fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

fn times(book: &Guidebook, figures: &ProcedureAnalysis, columns: usize) -> String {
    let mut text = String::new();
    if let Some(minutes) = figures.minutes.bench {
        text.push_str(&format!("Time for all steps: {minutes} minutes. "));
    }
    if let Some(clock) = figures.cold.as_ref().filter(|clock| clock.steps_without_minutes.is_empty()) {
        let times =
            clock.pieces.iter().filter_map(|entry| Some((entry.piece, Range { low: entry.longest.low, high: entry.longest.high? })));
        let longest = times.reduce(|one, other| if other.1.high > one.1.high { other } else { one });
        if let Some((piece, time)) = longest
            && let Some(piece) = figures.network.pieces.get(piece)
        {
            text.push_str(&format!("Longest out of the cold: {}, {time} minutes.", capital(&book.piece_name(&piece.id))));
        }
    }
    if text.is_empty() { text } else { paragraph(&text, columns) }
}
