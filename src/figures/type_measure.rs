//! How wide words are in a plain sans serif face, and on how many lines they stand, so that sheets of paper can be
//! filled without a browser.
//!
//! The widths are those of Helvetica (Adobe, font metrics of the base fonts, from memory), which Arial, Liberation Sans
//! and Nimbus Sans share. A real browser is held against them where cards are printed. It draws nothing.

/// How heavy the letters are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// Text.
    Regular,
    /// Names and signal words.
    Bold,
}

/// Widths of the characters from blank to tilde, in thousandths of the size.
const REGULAR: [u16; 95] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278,
    278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722,
    667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556,
    556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];

/// Likewise in bold.
const BOLD: [u16; 95] = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333,
    333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722,
    667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611,
    611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
];

/// The widest letters that are likely outside ASCII, accents and signs, in thousandths.
const OTHER: u16 = 667;
/// Signs of East Asian writing are as wide as they are high.
const SQUARE: u16 = 1000;

/// The width of one character in thousandths of the size.
fn thousandths(character: char, face: Face) -> u16 {
    let table = match face {
        Face::Regular => &REGULAR,
        Face::Bold => &BOLD,
    };
    let code = u32::from(character);
    match character {
        '\u{a0}' => 278,
        '\u{2013}' => 556,
        '\u{b0}' => 400,
        _ if code >= 0x2e80 => SQUARE,
        _ => code.checked_sub(32).and_then(|at| table.get(at as usize)).copied().unwrap_or(OTHER),
    }
}

/// The width of a text on one line, in the unit of `size`.
#[must_use]
pub fn width(text: &str, face: Face, size: f64) -> f64 {
    let sum: u32 = text.chars().map(|character| u32::from(thousandths(character, face))).sum();
    f64::from(sum) / 1000.0 * size
}

/// A paragraph that is being set, run after run, word after word. Nothing but a blank parts words here: a browser
/// breaks after a hyphen too, so it never needs more lines than this says.
#[derive(Debug, Clone)]
pub struct Setting {
    line: f64,
    beside: (usize, f64),
    size: f64,
    used: f64,
    lines: usize,
}

impl Setting {
    /// A paragraph on lines of the length `line`, in letters of the size `size`; both in one unit.
    #[must_use]
    pub const fn new(line: f64, size: f64) -> Self {
        Self { line, beside: (0, 0.0), size, used: 0.0, lines: 1 }
    }

    /// With so many lines at its beginning beside something that takes some of their length.
    #[must_use]
    pub const fn beside(mut self, lines: usize, width: f64) -> Self {
        self.beside = (lines, width);
        self
    }

    /// Sets what is no text, such as a sign, without a break inside.
    #[must_use]
    pub fn mark(mut self, width: f64) -> Self {
        self.place(width);
        self
    }

    /// Sets a run of text.
    #[must_use]
    pub fn run(mut self, text: &str, face: Face) -> Self {
        let blank = width(" ", face, self.size);
        for word in text.split([' ', '\n', '\t']).filter(|word| !word.is_empty()) {
            self.place(width(word, face, self.size));
            self.used += blank;
        }
        self
    }

    /// On how many lines it stands.
    #[must_use]
    pub const fn lines(&self) -> usize {
        self.lines
    }

    /// The length of the line that is being filled.
    fn length(&self) -> f64 {
        if self.lines <= self.beside.0 { self.line - self.beside.1 } else { self.line }
    }

    fn place(&mut self, width: f64) {
        if self.used > 0.0 && self.used + width > self.length() {
            self.lines += 1;
            self.used = 0.0;
        }
        self.used += width;
        // A word longer than a line is broken anywhere.
        while self.used > self.length() && self.length() > 0.0 {
            self.used -= self.length();
            self.lines += 1;
        }
    }
}

/// On how many lines a text of one face stands.
#[must_use]
pub fn lines(text: &str, face: Face, size: f64, line: f64) -> usize {
    Setting::new(line, size).run(text, face).lines()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Adobe, Helvetica and Helvetica-Bold font metrics (AFM 4.1, 1997), from memory: sums of the widths of letters.
    #[test]
    fn words_are_as_wide_as_the_metrics_say() {
        assert!((width("Loin", Face::Regular, 1000.0) - f64::from(556 + 556 + 222 + 556)).abs() < 1e-9);
        assert!((width("Loin", Face::Bold, 1000.0) - f64::from(611 + 611 + 278 + 611)).abs() < 1e-9);
        assert!((width("6–9 °C", Face::Regular, 10.0) - 30.68).abs() < 1e-9);
    }

    #[test]
    fn words_go_on_to_the_next_line_whole() {
        assert_eq!(lines("", Face::Regular, 10.0, 30.0), 1);
        assert_eq!(lines("aa aa aa", Face::Regular, 10.0, 30.0), 2, "two words of 11 and a blank of 3 fill 25 of 30");
        assert_eq!(lines("aa\u{a0}aa aa", Face::Regular, 10.0, 24.0), 2);
        assert_eq!(lines("aaaaaaaaaaaa", Face::Regular, 10.0, 30.0), 3, "67 on lines of 30");
        assert_eq!(lines("肩肩肩肩", Face::Regular, 10.0, 30.0), 2);
    }

    #[test]
    fn lines_beside_something_are_shorter() {
        let beside = Setting::new(30.0, 10.0).beside(1, 12.0).run("aa aa aa aa", Face::Regular);
        assert_eq!(beside.lines(), 3, "one word beside, two, one");
        assert_eq!(Setting::new(30.0, 10.0).run("aa aa aa aa", Face::Regular).lines(), 2);
    }

    #[test]
    fn runs_of_two_faces_share_their_lines() {
        let set = Setting::new(55.0, 10.0).mark(20.0).run("aa", Face::Bold).run("aa", Face::Regular);
        assert_eq!(set.lines(), 1);
        assert_eq!(set.run("aa", Face::Regular).lines(), 2);
    }
}
