//! Amounts as findings tell them: a share in points and in the guidebook's unit of weight.
//!
//! Words only. What a step typically takes is computed in `analysis::takes`.

use crate::analysis::takes::typical_take;
use crate::checks::Subject;
use crate::model::quantity::{Mass, MassUnit, Range, Share};
use crate::model::words::Units;
use crate::model::{Guidebook, Step};

/// What a share of a step weighs at the typical start weight: ` (0.054 kg of a 1.8 kg start)`.
///
/// Empty where the start weight is not known, or something before the step is not sound. `procedure` and `step`
/// are positions in the guidebook and in the procedure.
pub(super) fn of(subject: &Subject<'_>, procedure: usize, step: usize, share: Share) -> String {
    let known = || {
        let stated = subject.book.procedures.get(procedure)?;
        let analysis = subject.analysis.procedures.get(procedure)?;
        let start = stated.start.typical_mass().filter(|_| !stated.start.typical.is_broken())?;
        let taken = typical_take(&analysis.network, &analysis.balances, step)?;
        Some((start, start.kilograms() * taken * share.fraction()))
    };
    known().map_or_else(String::new, |(start, kilograms)| {
        format!(" ({} of a {} start)", figure(subject.book, kilograms), figure(subject.book, start.kilograms()))
    })
}

/// A share of the start as a weight: ` (0.2 kg of a 7.5 kg start)`; empty where the start weight is not known.
pub(super) fn of_start(subject: &Subject<'_>, procedure: usize, fraction: f64) -> String {
    let stated = subject.book.procedures.get(procedure);
    let start = stated.and_then(|stated| stated.start.typical_mass().filter(|_| !stated.start.typical.is_broken()));
    start.map_or_else(String::new, |start| {
        let (part, whole) = (figure(subject.book, start.kilograms() * fraction), figure(subject.book, start.kilograms()));
        format!(" ({part} of a {whole} start)")
    })
}

/// A share as points of a percentage: `1 point`, `3.6 points`.
pub(super) fn points(share: Share) -> String {
    if share == Share::from_billionths(10_000_000) { format!("{share} point") } else { format!("{share} points") }
}

/// A computed fraction of 1 as points, to two decimals.
pub(super) fn points_of(fraction: f64) -> String {
    points(hundredths(fraction))
}

/// A computed range of fractions of 1 in percent, to two decimals: `39.58–50.63 %`.
pub(super) fn percent(range: Range<f64>) -> String {
    format!("{} %", range.map(hundredths))
}

/// A computed fraction to hundredths of a percent.
fn hundredths(fraction: f64) -> Share {
    Share::from_billionths((fraction * 1e4).round() as i64 * 100_000)
}

/// Kilograms in the guidebook's unit of weight, to three figures or so.
pub(super) fn figure(book: &Guidebook, kilograms: f64) -> String {
    let (value, unit) = in_unit(book, kilograms);
    format!("{} {}", short(value), unit.symbol())
}

/// A range of kilograms in the guidebook's unit of weight: `0.24–0.35 kg`.
pub(super) fn range(book: &Guidebook, kilograms: Range<f64>) -> String {
    let ((low, unit), (high, _)) = (in_unit(book, kilograms.low), in_unit(book, kilograms.high));
    let (low, high) = (short(low), short(high));
    if low == high { format!("{low} {}", unit.symbol()) } else { format!("{low}\u{2013}{high} {}", unit.symbol()) }
}

/// An authored range as it would be written: the unit once where both ends share it.
pub(super) fn stated(range: Range<Mass>) -> String {
    let (low, high) = (range.low.to_string(), range.high.to_string());
    if range.is_single() {
        return low;
    }
    let symbol = format!(" {}", range.high.unit().symbol());
    match low.strip_suffix(&symbol) {
        Some(number) => format!("{number}\u{2013}{high}"),
        None => format!("{low} \u{2013} {high}"),
    }
}

fn in_unit(book: &Guidebook, kilograms: f64) -> (f64, MassUnit) {
    let unit = match book.units() {
        Units::Metric => MassUnit::Kilogram,
        Units::Imperial => MassUnit::Pound,
    };
    (kilograms / Mass::from_picograms(unit.picograms(), unit).kilograms(), unit)
}

/// A number with as many decimals as make sense on a scale.
fn short(value: f64) -> String {
    let decimals = match value.abs() {
        size if size >= 100.0 => 0,
        size if size >= 10.0 => 1,
        size if size >= 1.0 => 2,
        _ => 3,
    };
    let text = format!("{value:.decimals$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// What a step is called in a finding: its name, else its id.
pub(super) fn step_name(step: &Step) -> &str {
    step.name.value().map_or(step.id.as_str(), String::as_str)
}

#[cfg(test)]
mod tests {
    use crate::checks::testing::files;

    /// Three hundredths of what the second step takes, and that is 66 % of 25 lb: 0.495 lb.
    #[test]
    fn pounds_where_the_guidebook_counts_in_pounds() {
        files(&[
            ("guidebook.yaml", "title: A guidebook for tests\nunits: imperial\nlimits: eu-853\n"),
            (
                "pork/loin.yaml",
                "title: Pork loin
species: pork
revision: { number: 1, date: 2026-03-02, author: course lead, approved-by: head butcher, review-by: 2027-03-02 }
start: { piece: pork-loin, weight: 20–30 lb, temperature: 36–38 °F }
cautions: [protect-holding-hand, blade-away-from-body]
tools: [boning-knife]
wear: [mesh-gauntlet]
steps:
  - name: Take off the end
    take: pork-loin
    do: Cut.
    minutes: 1–2
    give:
      pork-loin-end: { share: 34 %, use: retail }
      pork-loin-centre: 66 %
    loss: 0
  - name: Halve the centre
    take: pork-loin-centre
    do: Cut.
    minutes: 1–2
    give:
#   ^^^^ fault[shares-exceed-whole] 3 points over what the step takes (0.495 lb of a 25 lb start)
      pork-loin-rib: { share: 51–55 %, use: retail }
      pork-loin-back: { share: 52 %, use: retail }
    loss: 0
",
            ),
        ]);
    }
}
