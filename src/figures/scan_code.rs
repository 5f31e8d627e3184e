//! A code that a telephone reads: QR Code by ISO/IEC 18004, as one path of squares for a drawing.
//!
//! It knows the modules and their size on paper; what the code leads to is its caller's.

use std::fmt::Write as _;

use qrcode::{EcLevel, QrCode, Version};

/// Free modules on every side (ISO/IEC 18004, clause on the quiet zone).
pub const QUIET_ZONE: usize = 4;
/// The width of the code on paper with its quiet zone, in millimetres, while its modules stay large enough.
const WIDTH: f64 = 28.0;
/// No module is smaller than this on paper, in millimetres: own judgement, for wet sheets behind film.
const LEAST_MODULE: f64 = 0.5;

/// A code ready to be drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct ScanCode {
    /// Modules along one side, the quiet zone included.
    pub side: usize,
    /// Dark modules as an SVG path in units of a module.
    pub path: String,
    /// The width on paper in millimetres, the quiet zone included.
    pub millimetres: f64,
}

impl ScanCode {
    /// The code of a text; `None` when the text is too long for one.
    #[must_use]
    pub fn of(text: &str) -> Option<Self> {
        let code = encoded(text)?;
        let inner = code.width();
        let dark: Vec<bool> = code.into_colors().into_iter().map(|color| color == qrcode::Color::Dark).collect();
        let side = inner + 2 * QUIET_ZONE;
        Some(Self { side, path: path(&dark, inner), millimetres: WIDTH.max(LEAST_MODULE * side as f64) })
    }
}

/// The smallest symbol that corrects at the level M (about 15 %), at a higher level where the symbol stays as small.
fn encoded(text: &str) -> Option<QrCode> {
    let smallest = QrCode::with_error_correction_level(text, EcLevel::M).ok()?;
    let version: Version = smallest.version();
    let higher = [EcLevel::H, EcLevel::Q].into_iter().find_map(|level| QrCode::with_version(text, version, level).ok());
    Some(higher.unwrap_or(smallest))
}

/// Dark modules row by row, neighbours as one rectangle.
fn path(dark: &[bool], inner: usize) -> String {
    let mut path = String::new();
    for (y, row) in dark.chunks(inner.max(1)).enumerate() {
        let mut x = 0;
        for run in row.chunk_by(|one, other| one == other) {
            if run.first() == Some(&true) {
                let _ = write!(path, "M{} {}h{}v1h-{}z", x + QUIET_ZONE, y + QUIET_ZONE, run.len(), run.len());
            }
            x += run.len();
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reads the squares of a path back: row, column, dark.
    fn modules(path: &str, side: usize) -> Vec<Vec<bool>> {
        let mut rows = vec![vec![false; side]; side];
        for part in path.split('M').skip(1) {
            let (x, rest) = part.split_once(' ').unwrap();
            let (y, rest) = rest.split_once('h').unwrap();
            let (length, _) = rest.split_once('v').unwrap();
            let (x, y, length): (usize, usize, usize) = (x.parse().unwrap(), y.parse().unwrap(), length.parse().unwrap());
            rows[y][x..x + length].fill(true);
        }
        rows
    }

    /// The codewords of a symbol of version 1 under mask pattern 2, read module by module as clauses "symbol character
    /// placement" and "data masking" of ISO/IEC 18004 lay them out.
    fn codewords(rows: &[Vec<bool>]) -> Vec<u8> {
        let mut bits = Vec::new();
        let mut up = true;
        for right in [20, 18, 16, 14, 12, 10, 8, 5, 3, 1] {
            for step in 0..21 {
                let row = if up { 20 - step } else { step };
                for column in [right, right - 1] {
                    let pattern = (row < 9 && !(9..=12).contains(&column)) || (row > 12 && column < 9);
                    if !pattern && row != 6 && column != 6 {
                        bits.push(rows[row + QUIET_ZONE][column + QUIET_ZONE] ^ (column % 3 == 0));
                    }
                }
            }
            up = !up;
        }
        bits.chunks(8).map(|byte| byte.iter().fold(0, |value, bit| value << 1 | u8::from(*bit))).collect()
    }

    /// ISO/IEC 18004:2006, Annex I.2: "01234567" as a symbol of version 1-M; the codewords as printed there, read in
    /// second copies.
    #[test]
    fn the_worked_example_of_the_standard_comes_out() {
        let code = QrCode::with_version("01234567", Version::Normal(1), EcLevel::M).unwrap();
        let inner = code.width();
        let dark: Vec<bool> = code.into_colors().into_iter().map(|color| color == qrcode::Color::Dark).collect();
        let rows = modules(&path(&dark, inner), inner + 2 * QUIET_ZONE);
        // The mask pattern of the example stands in the format information: 101111001111100 for M with pattern 010.
        let format: String = (0..6).chain([7]).map(|column| if rows[12][column + 4] { '1' } else { '0' }).collect();
        assert_eq!(format, "1011110");
        let expected = [
            0x10, 0x20, 0x0c, 0x56, 0x61, 0x80, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, 0xec, 0x11, // data
            0xa5, 0x24, 0xd4, 0xc1, 0xed, 0x36, 0xc7, 0x87, 0x2c, 0x55, // error correction
        ];
        assert_eq!(codewords(&rows), expected);
    }

    #[test]
    fn the_quiet_zone_is_free_and_modules_are_large_enough() {
        for address in [
            "https://guides.example/guides/pork/loin-boneless.html#card-5".to_owned(),
            format!("https://guides.example/{}", "a".repeat(400)),
        ] {
            let code = ScanCode::of(&address).unwrap();
            let rows = modules(&code.path, code.side);
            let last = code.side - QUIET_ZONE;
            for (y, row) in rows.iter().enumerate() {
                for (x, dark) in row.iter().enumerate() {
                    assert!(!dark || (QUIET_ZONE..last).contains(&x) && (QUIET_ZONE..last).contains(&y), "{x} {y}");
                }
            }
            assert!(code.millimetres / code.side as f64 >= 0.5 && code.millimetres >= 28.0);
        }
        assert_eq!(ScanCode::of(&"a".repeat(5000)), None);
    }
}
