//! Random tables that add up exactly, and slips to be put into them. The same seed makes the same table.

/// A source of numbers that look random: xorshift, from a seed.
pub(crate) struct Random(u64);

impl Random {
    /// From a seed; each gives a row of numbers of its own.
    pub(crate) fn of(seed: u64) -> Self {
        let mut random = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1);
        for _ in 0..8 {
            random.next();
        }
        random
    }

    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    /// A number from `low` to `high`, both included.
    pub(crate) fn between(&mut self, low: u64, high: u64) -> u64 {
        low + (self.next() >> 11) % (high - low + 1)
    }
}

/// What stands beside the weights of a made table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shape {
    /// Rows and their total.
    Bare,
    /// Rows in groups with subtotals, and a total.
    Grouped,
    /// Rows and their total, with shares of it to a tenth of a percent.
    Shared,
}

/// One row of a made table, its weight in tenths.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    pub(crate) item: String,
    pub(crate) group: String,
    /// As printed.
    pub(crate) weight: String,
    /// As printed; empty for none.
    pub(crate) share: String,
    pub(crate) kind: &'static str,
}

/// A table: weights to a tenth that add up exactly.
pub(crate) fn table(random: &mut Random, shape: Shape) -> Vec<Row> {
    let groups = if shape == Shape::Grouped { random.between(2, 4) } else { 1 };
    let mut rows = Vec::new();
    let mut total = 0;
    let mut weights = Vec::new();
    for group in 0..groups {
        let count = if shape == Shape::Grouped { random.between(3, 5) } else { random.between(4, 12) };
        let name = if shape == Shape::Grouped { format!("group {group}") } else { String::new() };
        let mut subtotal = 0;
        for at in 0..count {
            // Weights of all sizes, as in a carcass: a few tenths to some hundreds.
            let largest = [99, 499, 999][usize::try_from(random.between(0, 2)).unwrap()];
            let tenths = random.between(5, largest);
            subtotal += tenths;
            weights.push(tenths);
            rows.push(Row {
                item: format!("piece {group}.{at}"),
                group: name.clone(),
                weight: printed(tenths),
                share: String::new(),
                kind: "",
            });
        }
        total += subtotal;
        if shape == Shape::Grouped {
            rows.push(Row { item: name.clone(), group: name, weight: printed(subtotal), share: String::new(), kind: "subtotal" });
        }
    }
    rows.push(Row { item: "all".into(), group: String::new(), weight: printed(total), share: String::new(), kind: "total" });
    if shape == Shape::Shared {
        for (row, tenths) in rows.iter_mut().zip(weights) {
            row.share = printed((2000 * tenths + total) / (2 * total));
        }
    }
    rows
}

/// So many tenths, as a table prints them.
pub(crate) fn printed(tenths: u64) -> String {
    format!("{}.{}", tenths / 10, tenths % 10)
}

/// The tenths of a printed weight.
pub(crate) fn tenths(text: &str) -> u64 {
    text.replace('.', "").parse().unwrap()
}

/// The rows as CSV.
pub(crate) fn csv(rows: &[Row]) -> String {
    let mut text = "item,group,weight,share,kind\n".to_owned();
    for row in rows {
        text.push_str(&format!("{},{},{},{},{}\n", row.item, row.group, row.weight, row.share, row.kind));
    }
    text
}

/// A slip of one kind, in one figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Slip {
    Swapped,
    Lost,
    Doubled,
    Point,
    Misread,
}

/// All of them.
pub(crate) const SLIPS: [Slip; 5] = [Slip::Swapped, Slip::Lost, Slip::Doubled, Slip::Point, Slip::Misread];

/// The printed weight with a slip, or none where the slip would change nothing.
pub(crate) fn slipped(weight: &str, slip: Slip, random: &mut Random) -> Option<String> {
    let digits: Vec<char> = weight.chars().filter(char::is_ascii_digit).collect();
    let place = |random: &mut Random, low| usize::try_from(random.between(low, digits.len() as u64 - 1)).unwrap();
    let mut changed = digits.clone();
    match slip {
        Slip::Swapped => {
            let at = place(random, 1);
            changed.swap(at - 1, at);
        }
        Slip::Lost => {
            let at = place(random, 0);
            // A figure of two digits would lose its point as well.
            if digits.len() < 3 || at + 1 == digits.len() {
                return None;
            }
            changed.remove(at);
        }
        Slip::Doubled => {
            let at = usize::try_from(random.between(0, digits.len() as u64 - 2)).unwrap();
            changed.insert(at, digits[at]);
        }
        Slip::Point => return Some(digits.iter().collect::<String>().trim_start_matches('0').to_owned()),
        Slip::Misread => {
            let at = place(random, 0);
            changed[at] = char::from_digit(u32::try_from(random.between(u64::from(at == 0), 9)).unwrap(), 10).unwrap();
        }
    }
    let point = changed.len() - 1;
    let whole: String = changed[..point].iter().collect();
    let text = format!("{whole}.{}", changed[point]);
    let sound = !text.starts_with('0') || text.starts_with("0.");
    (text != weight && sound).then_some(text)
}
