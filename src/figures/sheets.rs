//! Blocks of text packed on sheets of paper in two columns, none split between two sheets.
//!
//! It knows heights alone, in any one unit. As few sheets as can be; among those, as few as can be on which a block goes
//! on in the second column; among those, sheets that are filled evenly.

/// The blocks of one sheet as they would stand there.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// The heights of the parts of each block in one column, one below the other; no part is cut in two.
    pub blocks: Vec<Vec<f64>>,
    /// The height that each column has.
    pub height: f64,
}

/// What stands on one sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Packed {
    /// The first block.
    pub from: usize,
    /// One past the last.
    pub to: usize,
    /// How many of them stand in the first column; `None` when the text runs on from one column to the next.
    pub split: Option<usize>,
}

/// Which blocks on which sheet: whether it is the first one, the first block, one past the last.
pub type Ask = (bool, usize, usize);

/// How good a packing is, the better the less: sheets that overflow, sheets, sheets on which a block goes on in the
/// second column, and how unevenly they are filled.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
struct Cost(usize, usize, usize, f64);

/// The best packing from one block on: its cost and its first sheet.
type Best = Option<(Cost, Packed)>;

/// Packs `count` blocks. `room` says how blocks would stand on a sheet; the first sheet has more around them and may
/// hold none.
///
/// A block that no sheet holds gets one of its own.
#[must_use]
pub fn packed(count: usize, room: &dyn Fn(Ask) -> Room) -> Vec<Packed> {
    // From the last block back: the best that can be done when a new sheet begins at each.
    let mut rest: Vec<Best> = vec![None; count];
    for from in (0..count).rev() {
        let best = best_sheet((false, from, count), &rest, room);
        if let Some(slot) = rest.get_mut(from) {
            *slot = best;
        }
    }
    let mut sheets = Vec::new();
    let mut next = best_sheet((true, 0, count), &rest, room);
    while let Some((_, sheet)) = next {
        next = rest.get(sheet.to).cloned().flatten();
        sheets.push(sheet);
    }
    sheets
}

/// The best sheet that begins at a block, with the best sheets behind it.
fn best_sheet((first, from, count): Ask, rest: &[Best], room: &dyn Fn(Ask) -> Room) -> Best {
    let mut best: Best = None;
    for to in (if first { from } else { from + 1 })..=count {
        let (own, split) = on_one_sheet(&room((first, from, to)));
        // What overflows with fewer blocks overflows with more.
        if own.0 > 0 && best.is_some() {
            break;
        }
        let behind = match rest.get(to) {
            Some(Some((cost, _))) => *cost,
            Some(None) => continue,
            None => Cost(0, 0, 0, 0.0),
        };
        let cost = Cost(own.0 + behind.0, own.1 + behind.1, own.2 + behind.2, own.3 + behind.3);
        if best.as_ref().is_none_or(|(known, _)| cost < *known) {
            best = Some((cost, Packed { from, to, split }));
        }
    }
    best
}

/// How blocks stand on one sheet: how many in the first column, or that text runs on; `None` when they do not fit.
#[must_use]
pub fn fit(room: &Room) -> Option<Option<usize>> {
    let (cost, split) = on_one_sheet(room);
    (cost.0 == 0).then_some(split)
}

fn on_one_sheet(room: &Room) -> (Cost, Option<usize>) {
    let left = |filled: f64| (room.height - filled).max(0.0).powi(2);
    let blocks: Vec<f64> = room.blocks.iter().map(|parts| parts.iter().sum()).collect();
    let (longer, split) = halves(&blocks);
    if longer <= room.height {
        return (Cost(0, 1, 0, left(longer)), Some(split));
    }
    let parts: Vec<f64> = room.blocks.iter().flatten().copied().collect();
    let (longer, _) = halves(&parts);
    if longer <= room.height { (Cost(0, 1, 1, left(longer)), None) } else { (Cost(1, 1, 1, 0.0), None) }
}

/// The height of the longer of two columns, and how many of these stand in the first, where that is least.
fn halves(heights: &[f64]) -> (f64, usize) {
    let total: f64 = heights.iter().sum();
    let mut first = 0.0;
    let mut best = (total, 0);
    for (at, height) in heights.iter().enumerate() {
        first += height;
        let longer = f64::max(first, total - first);
        if longer <= best.0 {
            best = (longer, at + 1);
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(heights: &[f64], height: f64, less_on_the_first: f64) -> Vec<(usize, usize, Option<usize>)> {
        let room = |(first, from, to): Ask| Room {
            blocks: heights[from..to].iter().map(|height| vec![1.0; *height as usize]).collect(),
            height: if first { height - less_on_the_first } else { height },
        };
        packed(heights.len(), &room).into_iter().map(|sheet| (sheet.from, sheet.to, sheet.split)).collect()
    }

    #[test]
    fn blocks_stand_whole_in_two_columns_where_they_can() {
        assert_eq!(on(&[4.0, 4.0, 4.0, 4.0], 8.0, 0.0), [(0, 4, Some(2))]);
        assert_eq!(on(&[7.0, 3.0, 3.0], 8.0, 0.0), [(0, 3, Some(1))]);
        assert_eq!(on(&[], 8.0, 0.0), [(0, 0, Some(0))]);
    }

    #[test]
    fn text_runs_on_into_the_second_column_only_where_that_saves_a_sheet() {
        assert_eq!(on(&[15.0], 8.0, 0.0), [(0, 1, None)]);
        assert_eq!(on(&[6.0, 6.0, 6.0], 9.0, 0.0), [(0, 3, None)]);
        assert_eq!(on(&[6.0, 6.0, 6.0], 12.0, 0.0), [(0, 3, Some(2))]);
    }

    #[test]
    fn no_part_is_cut_in_two() {
        let room = |parts: &[f64]| Room { blocks: vec![parts.to_vec()], height: 8.0 };
        assert_eq!(fit(&room(&[4.0, 4.0, 6.0])), Some(None));
        assert_eq!(fit(&room(&[4.0, 6.0, 4.0])), None, "14 of 16, but 6 stands in neither column beside 4");
    }

    #[test]
    fn a_first_sheet_with_little_room_stays_without_a_block() {
        assert_eq!(on(&[7.0, 7.0], 8.0, 6.0), [(0, 0, Some(0)), (0, 2, Some(1))]);
        assert_eq!(on(&[2.0, 7.0, 7.0], 8.0, 6.0), [(0, 1, Some(1)), (1, 3, Some(1))]);
    }

    #[test]
    fn a_block_that_no_sheet_holds_has_one_of_its_own() {
        assert_eq!(on(&[30.0, 3.0], 8.0, 8.0), [(0, 0, Some(0)), (0, 1, None), (1, 2, Some(1))]);
    }

    #[test]
    fn sheets_are_filled_evenly() {
        assert_eq!(on(&[5.0, 5.0, 5.0, 5.0, 5.0, 5.0], 10.0, 0.0), [(0, 3, Some(2)), (3, 6, Some(2))]);
        assert_eq!(on(&[4.0, 4.0, 4.0, 4.0, 4.0, 4.0], 8.0, 0.0).len(), 2);
    }
}
