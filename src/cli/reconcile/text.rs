//! The answer for people: the verdict first, then every sum with what rounding reaches, then what is worth a look.

use super::numbers::{Numbers, TIE};
use super::why::{base_weight, expected, origin_words, reason, row_name};
use crate::analysis::reconcile::base::{Base, BaseOrigin};
use crate::analysis::reconcile::decimal::Decimal;
use crate::analysis::reconcile::sheet::{Column, Kind, Sheet};
use crate::analysis::reconcile::sums::{Stated, Sum};
use crate::analysis::reconcile::verdict::{Loose, Oddity, Reconciled, Unexplained, Why};
use crate::cli::layout::wrap;
use crate::cli::table::{Align, Table};

/// The whole answer, in lines of `columns` at most.
pub(super) fn render(name: &str, sheet: &Sheet, found: &Reconciled, columns: usize) -> String {
    let mut parts = vec![paragraph(&format!("{name}: {}", verdict(found)), columns)];
    parts.extend(Column::ALL.into_iter().filter_map(|column| sums(sheet, found, column, columns)));
    let notes: String = notes(sheet, found).iter().map(|note| paragraph(note, columns)).collect();
    if !notes.is_empty() {
        parts.push(notes);
    }
    if !found.oddities.is_empty() {
        parts.push(format!("Worth a look\n{}", entries(sheet, found, columns)));
    }
    parts.join("\n").replace(TIE, " ")
}

/// The lines of a text; they do not break between a number and its unit.
fn lines(text: &str, columns: usize) -> Vec<String> {
    // A letter that no text holds, as wide as the space that it stands for.
    const KNOT: char = '\u{f8ff}';
    wrap(&text.replace(TIE, &KNOT.to_string()), columns).into_iter().map(|line| line.replace(KNOT, " ")).collect()
}

fn paragraph(text: &str, columns: usize) -> String {
    lines(text, columns).join("\n") + "\n"
}

fn verdict(found: &Reconciled) -> String {
    let all = found.sums.len();
    let rounded = found.sums.iter().filter(|sum| sum.is_rounding()).count();
    let open = found.sums.iter().filter(|sum| !sum.closes()).count();
    let some = |count: usize| match (count, all) {
        (_, 1) => "its one sum misses".into(),
        (1, _) => format!("1 of {all} sums misses"),
        _ => format!("{count} of {all} sums miss"),
    };
    match (all, open, rounded) {
        (0, ..) => "it states no total to hold its rows against.".into(),
        (_, 0, 0) => "it adds up exactly.".into(),
        (_, 0, _) => format!("it adds up; {} by no more than rounding explains.", some(rounded)),
        _ => format!("it does not add up; {} by more than rounding explains.", some(open)),
    }
}

/// A table of the sums of a column; none when it has none.
fn sums(sheet: &Sheet, found: &Reconciled, column: Column, columns: usize) -> Option<String> {
    let numbers = Numbers::of(sheet);
    let mut of_column = found.sums.iter().filter(|sum| sum.plan.column == column).peekable();
    of_column.peek()?;
    let title = match (column, sheet.unit) {
        (Column::Weight, Some(unit)) => format!("Weight, {}", unit.symbol()),
        (Column::Weight, None) => "Weight".into(),
        (Column::Share, _) => "Share, %".into(),
    };
    let mut table = Table::new([Align::Left, Align::Right, Align::Right, Align::Right, Align::Right, Align::Left]);
    table.row([title.as_str(), "stated", "rows come to", "miss", "rounding", ""]);
    table.line();
    let decimals = numbers.decimals(column);
    for sum in of_column {
        let (miss, bound) = if sum.is_exact() {
            (String::new(), String::new())
        } else {
            (numbers.signed(sum.miss, column, 0), format!("\u{b1}{}", numbers.cell(sum.bound, column, 0)))
        };
        let outcome = match (sum.is_exact(), sum.closes()) {
            (true, _) => "exact",
            (_, true) => "rounding",
            _ => "does not close",
        };
        let rows = numbers.cell(sum.found, column, decimals.min(sum.found.decimals().max(finest(sheet, sum))));
        table.row([plain_name(sheet, sum), stated(sheet, sum), rows, miss, bound, outcome.to_owned()]);
    }
    Some(table.render(columns))
}

fn finest(sheet: &Sheet, sum: &Sum) -> u32 {
    let figures = sum.plan.members.iter().filter_map(|row| sheet.figure(*row, sum.plan.column));
    figures.map(|figure| figure.step.decimals()).max().unwrap_or(0)
}

fn stated(sheet: &Sheet, sum: &Sum) -> String {
    let figure = match sum.plan.stated {
        Stated::Row(row) => sheet.figure(row, sum.plan.column),
        Stated::Whole => None,
    };
    let numbers = Numbers::of(sheet);
    numbers.cell(sum.stated, sum.plan.column, figure.map_or(0, |figure| figure.step.decimals()))
}

/// What a sum is called: its row, its group, or the whole.
fn plain_name(sheet: &Sheet, sum: &Sum) -> String {
    let Stated::Row(at) = sum.plan.stated else { return "All, held against 100".into() };
    let Some(row) = sheet.rows.get(at) else { return String::new() };
    match (row.item.as_str(), &row.group, row.kind) {
        ("", _, Kind::Total) => "Total".into(),
        ("", Some(group), _) => group.clone(),
        ("", None, _) => "Subtotal".into(),
        (item, Some(group), Kind::Subtotal) if item != group => format!("{group}: {item}"),
        (item, ..) => item.to_owned(),
    }
}

fn notes(sheet: &Sheet, found: &Reconciled) -> Vec<String> {
    let mut notes = Vec::new();
    if found.sums.iter().any(|sum| !sum.is_exact()) {
        notes.push("Rounding reaches half the last printed digit of every row, and of what is stated.".into());
    }
    let is_odd =
        |base: &Base| base.instead_of.is_some() || found.oddities.iter().any(|oddity| base.origin == BaseOrigin::Total(oddity.row));
    if let Some(base) = found.base.as_ref().filter(|base| !is_odd(base)) {
        notes.push(format!("Shares are of {}, {}.", base_weight(sheet, base), origin_words(sheet, base.origin)));
    }
    if found.at_odds {
        notes.push("Most shares are not those of their weights, on any base: the two columns do not come from one source.".into());
    }
    let unlikely = found.sums.iter().filter(|sum| sum.is_rounding() && sum.is_unlikely(sheet));
    notes
        .extend(unlikely.map(|sum| {
            format!("{}: rounding reaches so far only when nearly all rows were rounded the same way.", plain_name(sheet, sum))
        }));
    notes.extend(found.unexplained.iter().filter_map(|open| unexplained(sheet, found, open)));
    notes.extend(found.loose.iter().map(|loose| held_against_nothing(sheet, found, loose)));
    notes
}

fn unexplained(sheet: &Sheet, found: &Reconciled, open: &Unexplained) -> Option<String> {
    let sum = found.sums.get(open.sum)?;
    let (column, numbers) = (sum.plan.column, Numbers::of(sheet));
    let size = numbers.full(sum.miss.abs(), column, 0);
    let of_stated = 100.0 * sum.miss.abs().float() / sum.stated.abs().float();
    let part = if column == Column::Weight && of_stated.is_finite() { format!(" ({of_stated:.1} %)") } else { String::new() };
    let name = plain_name(sheet, sum);
    let gaps = match sum.plan.unstated.len() {
        0 => String::new(),
        gaps => format!(" {} no figure.", if gaps == 1 { "1 row has".into() } else { format!("{gaps} rows have") }),
    };
    let what = if sum.miss < Decimal::ZERO {
        format!("{name}: {size}{part} of what is stated is in no row.{gaps}")
    } else {
        format!("{name}: the rows come to {size}{part} more than is stated.")
    };
    Some(match open.corrections {
        0 => format!("{what} No single slip explains it."),
        many => format!("{what} {many} single slips would explain it about equally well, so no row is named."),
    })
}

fn held_against_nothing(sheet: &Sheet, found: &Reconciled, loose: &Loose) -> String {
    let numbers = Numbers::of(sheet);
    let sum = numbers.full(loose.found, loose.column, 0);
    let adding = if loose.rows == 1 { "1 row adds".into() } else { format!("{} rows add", loose.rows) };
    let gaps = match loose.unstated {
        0 => String::new(),
        1 => " 1 part has no figure.".into(),
        gaps => format!(" {gaps} parts have no figure."),
    };
    let rest = Decimal::HUNDRED - loose.found;
    if loose.column == Column::Weight {
        return format!("Weights: no total is stated. {adding} up to {sum}.{gaps}");
    }
    if !gaps.is_empty() {
        return format!("Shares: no total is stated, and not every part has one, so they are not held against 100.{gaps}");
    }
    if rest.abs() <= loose.bound {
        return format!("Shares: no total is stated. {adding} up to {sum}, the whole within rounding.");
    }
    if rest < Decimal::ZERO {
        let more = numbers.full(-rest, loose.column, 0);
        return format!(
            "Shares: no total is stated. {adding} up to {sum}, {more} more than a whole: they are not all shares of one weight, or are \
             averages, or some rows lie inside others."
        );
    }
    let unlisted = numbers.full(rest, loose.column, 0);
    let agreed = found.base.as_ref().filter(|base| base.origin == BaseOrigin::Agreed).map_or(String::new(), |base| {
        let decimals = numbers.decimals(Column::Weight);
        let weight = Decimal::near(base.weight * rest.float() / 100.0, decimals);
        format!(", about {} of {},", numbers.full(weight, Column::Weight, decimals), base_weight(sheet, base))
    });
    format!(
        "Shares: no total is stated. {adding} up to {sum}, a part of the whole. The other {unlisted}{agreed} is in no row: not listed, which \
         is not the same as lost."
    )
}

/// All that is odd, with corrections of one and the same miss together.
fn entries(sheet: &Sheet, found: &Reconciled, columns: usize) -> String {
    let mut text = String::new();
    let mut rest = found.oddities.as_slice();
    while let Some(first) = rest.first() {
        let (group, more) = rest.split_at(first.rivals.clamp(1, rest.len()));
        rest = more;
        let indent = if group.len() > 1 {
            let plain = group.iter().all(|oddity| oddity.why == Why::OtherFigure);
            text.push_str(if plain {
                "  Each of these would close it, and none stands out:\n"
            } else {
                "  One of these, about equally likely:\n"
            });
            4
        } else {
            2
        };
        text.extend(group.iter().map(|oddity| entry(sheet, found, oddity, indent, columns)));
    }
    text
}

/// The row, what stands there and what should, then why.
fn entry(sheet: &Sheet, found: &Reconciled, oddity: &Oddity, indent: usize, columns: usize) -> String {
    let numbers = Numbers::of(sheet);
    let decimals = sheet.figure(oddity.row, oddity.column).map_or(0, |figure| figure.step.decimals());
    let stated = oddity.stated.map_or_else(|| "not stated".into(), |value| numbers.full(value, oddity.column, decimals));
    let shown = oddity.expected.filter(|_| !matches!(oddity.why, Why::WrongBase { .. }));
    let expected = shown.map_or_else(String::new, |_| format!(", expected {}", expected(sheet, found, oddity)));
    let name = row_name(sheet, oddity.row);
    let group = sheet.rows.get(oddity.row).and_then(|row| row.group.as_deref()).filter(|group| !name.contains(group));
    let group = group.map_or_else(String::new, |group| format!(" of `{group}`"));
    let room = columns.saturating_sub(indent + 2);
    let head = lines(&format!("{name}{group}, {}: {stated}{expected}", oddity.column.word()), room);
    // Among several plain corrections the figure says it all.
    let plain = oddity.rivals > 1 && oddity.why == Why::OtherFigure;
    let reason = if plain { Vec::new() } else { lines(&format!("{}.", reason(sheet, found, oddity)), room) };
    let (outer, inner) = (" ".repeat(indent), " ".repeat(indent + 2));
    let head = head.iter().enumerate().map(|(at, line)| format!("{}{line}\n", if at == 0 { &outer } else { &inner }));
    head.chain(reason.iter().map(|line| format!("{inner}{line}\n"))).collect()
}
