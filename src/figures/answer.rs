//! Figures for programs: JSON as the format promises it, and CSV with one row a piece. `tally` prints them, and the
//! site offers them beside each table.
//!
//! Shares are fractions to nine decimals, minutes are as stated, lists stand in the order of first giving, and what is not
//! known is `null` or an empty cell.

use serde::Serialize;
use serde_json::Number;

use crate::analysis::chain::Chain;
use crate::analysis::procedure::ProcedureAnalysis;
use crate::analysis::rounding::nine_decimals;
use crate::analysis::shares::{PieceShare, ShareRange, Shares};
use crate::model::quantity::Minutes;

#[derive(Serialize)]
struct Answer<'a> {
    procedures: Vec<ProcedureAnswer<'a>>,
    chains: Vec<ChainAnswer<'a>>,
}

#[derive(Serialize)]
struct ProcedureAnswer<'a> {
    id: &'a str,
    start: Option<&'a str>,
    pieces: Vec<PieceAnswer<'a>>,
    loss: Bounds,
    uses: Vec<UseAnswer>,
    minutes: Option<MinutesAnswer>,
    cold: Option<Vec<ColdAnswer<'a>>>,
}

#[derive(Serialize)]
struct ChainAnswer<'a> {
    start: &'a str,
    pieces: Vec<ChainPieceAnswer<'a>>,
    loss: Bounds,
    uses: Vec<UseAnswer>,
}

#[derive(Serialize)]
struct PieceAnswer<'a> {
    piece: &'a str,
    #[serde(rename = "final")]
    is_final: bool,
    #[serde(rename = "use")]
    purpose: Option<&'static str>,
    #[serde(flatten)]
    share: Bounds,
}

#[derive(Serialize)]
struct ChainPieceAnswer<'a> {
    piece: &'a str,
    #[serde(rename = "use")]
    purpose: Option<&'static str>,
    #[serde(flatten)]
    share: Bounds,
}

#[derive(Serialize)]
struct UseAnswer {
    #[serde(rename = "use")]
    purpose: &'static str,
    #[serde(flatten)]
    share: Bounds,
}

#[derive(Serialize)]
struct Bounds {
    low: f64,
    typical: f64,
    high: f64,
}

#[derive(Serialize)]
struct MinutesAnswer {
    low: Number,
    high: Number,
}

#[derive(Serialize)]
struct ColdAnswer<'a> {
    piece: &'a str,
    low: Number,
    high: Option<Number>,
}

/// Procedures and chains that have figures, as JSON, indented, with a line break at the end.
#[must_use]
pub fn json(procedures: &[&ProcedureAnalysis], chains: &[&Chain]) -> String {
    let answer = Answer {
        procedures: procedures.iter().filter_map(|figures| procedure(figures)).collect(),
        chains: chains.iter().filter_map(|chain| chain_answer(chain)).collect(),
    };
    // Texts, numbers and lists can always be written as JSON.
    let mut text = serde_json::to_string_pretty(&answer).unwrap_or_default();
    text.push('\n');
    text
}

fn procedure(figures: &ProcedureAnalysis) -> Option<ProcedureAnswer<'_>> {
    let shares = figures.shares.as_ref()?;
    let minutes = figures.minutes.bench.map(|range| MinutesAnswer { low: number(range.low), high: number(range.high) });
    Some(ProcedureAnswer {
        id: &figures.id,
        start: figures.start.as_deref(),
        pieces: shares
            .pieces
            .iter()
            .map(|piece| PieceAnswer { piece: &piece.piece, is_final: piece.is_final, purpose: purpose(piece), share: bounds(piece.share) })
            .collect(),
        loss: bounds(shares.loss),
        uses: uses(shares),
        minutes,
        cold: cold(figures),
    })
}

fn chain_answer(chain: &Chain) -> Option<ChainAnswer<'_>> {
    let shares = chain.shares.as_ref()?;
    let piece = |piece| ChainPieceAnswer::of(piece);
    Some(ChainAnswer {
        start: &chain.start,
        pieces: shares.pieces.iter().map(piece).collect(),
        loss: bounds(shares.loss),
        uses: uses(shares),
    })
}

impl<'a> ChainPieceAnswer<'a> {
    fn of(piece: &'a PieceShare) -> Self {
        Self { piece: &piece.piece, purpose: purpose(piece), share: bounds(piece.share) }
    }
}

fn purpose(piece: &PieceShare) -> Option<&'static str> {
    piece.purpose.map(crate::model::words::Use::word)
}

fn uses(shares: &Shares) -> Vec<UseAnswer> {
    shares.uses.iter().map(|entry| UseAnswer { purpose: entry.purpose.word(), share: bounds(entry.share) }).collect()
}

fn bounds(share: ShareRange) -> Bounds {
    let share = share.map(nine_decimals);
    Bounds { low: share.low, typical: share.typical, high: share.high }
}

/// Minutes as a number: whole ones without a decimal point.
fn number(minutes: Minutes) -> Number {
    let part = if minutes.0 % 1_000 == 0 { None } else { Number::from_f64(minutes.number()) };
    part.unwrap_or_else(|| Number::from(minutes.0 / 1_000))
}

/// The longest stretch out of the cold of each piece that is given.
fn cold(figures: &ProcedureAnalysis) -> Option<Vec<ColdAnswer<'_>>> {
    let clock = figures.cold.as_ref()?;
    let piece = |at: usize| figures.network.pieces.get(at).map(|piece| piece.id.as_str());
    let answer = clock.pieces.iter().filter_map(|entry| {
        Some(ColdAnswer { piece: piece(entry.piece)?, low: number(entry.longest.low), high: entry.longest.high.map(number) })
    });
    Some(answer.collect())
}

/// Likewise as CSV (RFC 4180): a header, a row for each piece and the loss of each procedure, then the chains.
///
/// # Errors
/// When there is no memory for it.
pub fn csv(procedures: &[&ProcedureAnalysis], chains: &[&Chain]) -> Result<String, String> {
    let told = |why: String| format!("cannot write the table: {why}");
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let header = ["table", "id", "start", "piece", "final", "use", "low", "typical", "high", "cold-low", "cold-high"];
    writer.write_record(header).map_err(|error| told(error.to_string()))?;
    let procedures = procedures.iter().filter_map(|figures| {
        let answer = procedure(figures)?;
        let start = answer.start.unwrap_or_default().to_owned();
        let rows =
            answer.pieces.iter().map(|piece| (piece.piece, if piece.is_final { "true" } else { "false" }, piece.purpose, &piece.share));
        Some(table("procedure", answer.id, &start, rows, &answer.loss, answer.cold.as_deref().unwrap_or_default()))
    });
    let chains = chains.iter().filter_map(|chain| {
        let shares = chain.shares.as_ref()?;
        let answer = chain_answer(chain)?;
        let ends = shares.pieces.iter().map(|piece| if piece.is_final { "true" } else { "false" });
        let rows = answer.pieces.iter().zip(ends).map(|(piece, end)| (piece.piece, end, piece.purpose, &piece.share));
        Some(table("chain", &chain.procedures.join(" "), &chain.start, rows, &answer.loss, &[]))
    });
    for row in procedures.chain(chains).flatten() {
        writer.write_record(&row).map_err(|error| told(error.to_string()))?;
    }
    let bytes = writer.into_inner().map_err(|error| told(error.to_string()))?;
    String::from_utf8(bytes).map_err(|error| told(error.to_string()))
}

/// The rows of one procedure or chain.
fn table<'a>(
    kind: &str,
    id: &str,
    start: &str,
    pieces: impl Iterator<Item = (&'a str, &'a str, Option<&'static str>, &'a Bounds)>,
    loss: &'a Bounds,
    cold: &[ColdAnswer],
) -> Vec<[String; 11]> {
    let row = |(piece, end, purpose, share): (&str, &str, Option<&'static str>, &Bounds)| {
        let time = cold.iter().find(|entry| entry.piece == piece);
        [
            kind.to_owned(),
            id.to_owned(),
            start.to_owned(),
            piece.to_owned(),
            end.to_owned(),
            purpose.unwrap_or_default().to_owned(),
            share.low.to_string(),
            share.typical.to_string(),
            share.high.to_string(),
            time.map(|time| time.low.to_string()).unwrap_or_default(),
            time.and_then(|time| time.high.as_ref()).map(|high| high.to_string()).unwrap_or_default(),
        ]
    };
    pieces.chain([("loss", "", None, loss)]).map(row).collect()
}
