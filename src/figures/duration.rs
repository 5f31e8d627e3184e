//! Minutes as they are read: `22–45 min`, `1 h 50 min to 2 h 40 min`.

use crate::model::quantity::{Minutes, Range};

use super::numbers::{NO_BREAK, coordinate, range};

/// Up to here minutes are read as minutes; above, as hours and minutes.
const LONGEST_IN_MINUTES: f64 = 120.0;

/// A range of minutes.
#[must_use]
pub fn minutes(minutes: Range<Minutes>) -> String {
    let (low, high) = (minutes.low.number(), minutes.high.number());
    if high <= LONGEST_IN_MINUTES {
        return format!("{}{NO_BREAK}min", range(low, high, 1));
    }
    if minutes.is_single() { hours(high) } else { format!("{} to {}", hours(low), hours(high)) }
}

/// The numbers of a range of minutes, without the unit: `22–45`.
#[must_use]
pub fn numbers(minutes: Range<Minutes>) -> String {
    range(minutes.low.number(), minutes.high.number(), 1)
}

/// A length of time for machines: `PT1H50M` (ISO 8601-1, ISO, 2019, section 5.5.2), to the second.
#[must_use]
pub fn iso(minutes: Minutes) -> String {
    let seconds = (minutes.0.max(0) * 60 + 500) / 1000;
    let parts = [(seconds / 3600, 'H'), (seconds / 60 % 60, 'M'), (seconds % 60, 'S')];
    let text: String = parts.iter().filter(|(number, _)| *number > 0).map(|(number, unit)| format!("{number}{unit}")).collect();
    if text.is_empty() { "PT0S".to_owned() } else { format!("PT{text}") }
}

fn hours(minutes: f64) -> String {
    // Half a minute is not read in hours.
    let minutes = (minutes + 0.5).floor();
    let whole = (minutes / 60.0).floor();
    let rest = minutes - whole * 60.0;
    let rest = (rest > 0.0).then(|| format!("{}{NO_BREAK}min", coordinate(rest)));
    let whole = (whole > 0.0).then(|| format!("{}{NO_BREAK}h", coordinate(whole)));
    match (whole, rest) {
        (Some(whole), Some(rest)) => format!("{whole} {rest}"),
        (Some(only), None) | (None, Some(only)) => only,
        (None, None) => format!("0{NO_BREAK}min"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn show(low: i64, high: i64) -> String {
        minutes(Range { low: Minutes(low), high: Minutes(high) }).replace(NO_BREAK, " ")
    }

    #[test]
    fn long_times_are_read_in_hours() {
        assert_eq!(show(22_000, 45_000), "22\u{2013}45 min");
        assert_eq!(show(500, 1_000), "0.5\u{2013}1.0 min");
        assert_eq!(show(3_000, 3_000), "3 min");
        assert_eq!(show(110_000, 160_000), "1 h 50 min to 2 h 40 min");
        assert_eq!(show(45_000, 120_500), "45 min to 2 h 1 min");
        assert_eq!(show(180_000, 180_000), "3 h");
    }

    #[test]
    fn times_for_machines_follow_the_standard() {
        // ISO 8601-1 (ISO, 2019), section 5.5.2: designators P, T, H, M, S; a component that is zero may be left out.
        for (minutes, text) in [(45_000, "PT45M"), (110_000, "PT1H50M"), (180_000, "PT3H"), (500, "PT30S"), (1_500, "PT1M30S"), (0, "PT0S")]
        {
            assert_eq!(iso(Minutes(minutes)), text);
        }
    }
}
