//! What may have stood where a figure stands, had one slip of the pen not happened.
//!
//! Each edit undoes one slip among the printed digits. How likely a slip is, and whether the table closes with it, is
//! judged elsewhere.

use super::decimal::Decimal;
use super::figure::{Figure, Printed};

/// A slip of the pen in one figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Slip {
    /// Two neighbouring digits changed places: 12 for 21.
    Swapped,
    /// The decimal point stands in the wrong place, or is gone: 216 for 21.6.
    Point,
    /// A digit was left out: 4.0 for 45.0.
    Lost,
    /// A digit was written twice: 455 for 45.
    Doubled,
    /// A digit stands there that does not belong: 19 for 9.
    Extra,
    /// One digit is another: 12.2 for 12.6.
    Misread,
}

/// A figure with one slip undone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Edit {
    /// The slip that is undone.
    pub slip: Slip,
    /// The value without it.
    pub value: Decimal,
    /// The worth of the last digit without it.
    pub step: Decimal,
    /// In how many ways this kind of slip could have spoilt that value.
    pub ways: u32,
}

/// All figures that one slip could have turned into this one. `decimals` is how many digits the column's other figures
/// have behind the point at most.
#[must_use]
pub fn edits(figure: &Figure, decimals: u32) -> Vec<Edit> {
    let mut edits = Vec::new();
    for (at, printed) in figure.printed.iter().enumerate() {
        let rest: Decimal = figure
            .printed
            .iter()
            .enumerate()
            .filter(|(other, _)| *other != at)
            .filter_map(|(_, part)| part.worth(&part.digits, part.decimals))
            .sum();
        let mut add = |slip, digits: &str, decimals: u32, ways: usize| {
            if let Some(worth) = printed.worth(digits, decimals) {
                let value = worth + rest;
                if value != figure.value {
                    edits.push(Edit { slip, value, step: figure.step, ways: u32::try_from(ways.max(1)).unwrap_or(u32::MAX) });
                }
            }
        };
        swaps(printed, &mut add);
        losses(printed, decimals, &mut add);
        gains(printed, &mut add);
        misreadings(printed, &mut add);
    }
    if figure.printed.len() == 1 {
        edits.extend(points(figure));
    }
    edits
}

fn swaps(printed: &Printed, add: &mut impl FnMut(Slip, &str, u32, usize)) {
    let digits: Vec<char> = printed.digits.chars().collect();
    for at in 1..digits.len() {
        let mut swapped = digits.clone();
        swapped.swap(at - 1, at);
        // Nobody writes 40 for 04.
        if at == 1 && swapped.first() == Some(&'0') && digits.len() > printed.decimals as usize + 1 {
            continue;
        }
        add(Slip::Swapped, &String::from_iter(swapped), printed.decimals, digits.len() - 1);
    }
}

fn losses(printed: &Printed, decimals: u32, add: &mut impl FnMut(Slip, &str, u32, usize)) {
    let whole = printed.digits.len().saturating_sub(printed.decimals as usize);
    for at in 0..=printed.digits.len() {
        let Some((head, tail)) = printed.digits.split_at_checked(at) else { continue };
        for digit in '0'..='9' {
            let longer = format!("{head}{digit}{tail}");
            if at <= whole {
                add(Slip::Lost, &longer, printed.decimals, longer.len());
            }
            if at >= whole && decimals > printed.decimals {
                add(Slip::Lost, &longer, printed.decimals + 1, longer.len());
            }
        }
    }
}

fn gains(printed: &Printed, add: &mut impl FnMut(Slip, &str, u32, usize)) {
    let digits: Vec<char> = printed.digits.chars().collect();
    let whole = digits.len().saturating_sub(printed.decimals as usize);
    for (at, digit) in digits.iter().enumerate() {
        let mut shorter = digits.clone();
        shorter.remove(at);
        let neighbour = |other: Option<usize>| other.and_then(|other| digits.get(other)) == Some(digit);
        let doubled = neighbour(at.checked_sub(1)) || neighbour(at.checked_add(1));
        let decimals = if at < whole { printed.decimals } else { printed.decimals - 1 };
        let (slip, ways) = if doubled { (Slip::Doubled, shorter.len()) } else { (Slip::Extra, 10 * digits.len()) };
        if shorter.len() > decimals as usize {
            add(slip, &String::from_iter(shorter), decimals, ways);
        }
    }
}

fn misreadings(printed: &Printed, add: &mut impl FnMut(Slip, &str, u32, usize)) {
    for (at, digit) in printed.digits.char_indices() {
        // A figure of several digits does not begin with a zero: there a digit would be lost, not misread.
        let leads = at == 0 && printed.digits.len() > 1 && printed.decimals as usize + 1 < printed.digits.len();
        for other in ('0'..='9').filter(|other| *other != digit && !(leads && *other == '0')) {
            let mut changed = printed.digits.clone();
            changed.replace_range(at..at + 1, other.encode_utf8(&mut [0; 4]));
            add(Slip::Misread, &changed, printed.decimals, 9 * printed.digits.len());
        }
    }
}

/// One place is what a slip of the point usually is; two happen.
fn points(figure: &Figure) -> impl Iterator<Item = Edit> {
    let places = [(Decimal::new(1, 1), 2), (Decimal::new(10, 0), 2), (Decimal::new(1, 2), 8), (Decimal::new(100, 0), 8)];
    let moved =
        places.map(|(factor, ways)| Edit { slip: Slip::Point, value: figure.value.times(factor), step: figure.step.times(factor), ways });
    moved.into_iter().filter(|edit| edit.value != figure.value)
}

#[cfg(test)]
mod tests {
    use super::super::figure::weight;
    use super::*;

    fn undone(text: &str, decimals: u32, slip: Slip) -> Vec<String> {
        let figure = weight(text).unwrap().figure(None, false);
        edits(&figure, decimals).iter().filter(|edit| edit.slip == slip).map(|edit| edit.value.to_string()).collect()
    }

    #[test]
    fn each_slip_is_undone() {
        assert_eq!(undone("12", 0, Slip::Swapped), ["21"]);
        assert!(undone("40", 0, Slip::Swapped).is_empty());
        assert_eq!(undone("1.25", 2, Slip::Swapped), ["2.15", "1.52"]);
        assert_eq!(undone("455", 0, Slip::Doubled), ["45", "45"]);
        assert_eq!(undone("19", 0, Slip::Extra), ["9", "1"]);
        assert!(undone("19", 0, Slip::Doubled).is_empty());
        assert_eq!(undone("216", 1, Slip::Point), ["21.6", "2160", "2.16", "21600"]);
        assert!(undone("4.0", 1, Slip::Lost).contains(&"45".to_owned()));
        assert!(undone("4.5", 2, Slip::Lost).contains(&"4.05".to_owned()));
        assert!(!undone("4.5", 1, Slip::Lost).contains(&"4.05".to_owned()));
        assert!(undone("12.2", 1, Slip::Misread).contains(&"12.6".to_owned()));
        assert_eq!(undone("5", 0, Slip::Misread).len(), 9);
    }

    #[test]
    fn pounds_and_ounces_are_each_looked_at() {
        let figure = weight("5 lb 12 oz").unwrap().figure(Some(crate::model::quantity::MassUnit::Pound), true);
        let found = |value: &str, slip| edits(&figure, 0).iter().any(|edit| edit.value.to_string() == value && edit.slip == slip);
        assert!(found("4.75", Slip::Misread));
        assert!(found("5.0625", Slip::Extra));
        assert!(!edits(&figure, 0).iter().any(|edit| edit.slip == Slip::Point));
    }
}
