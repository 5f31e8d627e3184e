//! Bytes to text: UTF-8 without control characters, and a plain word about what stands there otherwise.
//!
//! A byte order mark is dropped and a lone carriage return counts as a line's end, so that lines and columns are
//! those that an editor shows. This file knows nothing of YAML.

use std::str::Utf8Error;

use crate::finding::Span;

/// The byte order mark of UTF-8.
pub(super) const MARK: &[u8] = b"\xef\xbb\xbf";

/// Why bytes are no text, with what can be shown of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// The id of the check.
    pub check: &'static str,
    /// The text with replacement characters, so that places before the bad byte are right.
    pub text: String,
    /// The first bad byte, in `text`.
    pub span: Span,
    /// What is wrong.
    pub message: String,
    /// What to do.
    pub help: String,
}

/// The text that bytes hold.
///
/// # Errors
/// When they are not UTF-8 (`not-utf-8`), hold a zero byte (`nul-byte`) or another control character (`control-character`).
pub fn text_of(bytes: Vec<u8>) -> Result<String, Box<Refusal>> {
    if let Some(refusal) = wide(&bytes) {
        return Err(Box::new(refusal));
    }
    let mut text = match String::from_utf8(bytes) {
        Ok(text) => text,
        Err(error) => return Err(Box::new(narrow(error.as_bytes(), error.utf8_error()))),
    };
    if text.starts_with('\u{feff}') {
        text.drain(..'\u{feff}'.len_utf8());
    }
    if text.contains('\r') {
        text = whole_lines(&text);
    }
    match text.char_indices().find(|(_, letter)| is_control(*letter)) {
        Some((at, letter)) => Err(Box::new(control(&text, at, letter))),
        None => Ok(text),
    }
}

/// Letters that YAML forbids and that no text needs: they could also drive a terminal.
const fn is_control(letter: char) -> bool {
    matches!(letter, '\0'..='\u{8}' | '\u{b}' | '\u{c}' | '\u{e}'..='\u{1f}' | '\u{7f}'..='\u{84}' | '\u{86}'..='\u{9f}' | '\u{fffe}' | '\u{ffff}')
}

/// Lone carriage returns become line ends; every offset stays.
fn whole_lines(text: &str) -> String {
    let mut whole = String::with_capacity(text.len());
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        whole.push(if letter == '\r' && letters.peek() != Some(&'\n') { '\n' } else { letter });
    }
    whole
}

/// Two or four bytes a letter: told by the mark at the start, or by a zero in every other byte.
fn wide(bytes: &[u8]) -> Option<Refusal> {
    let marked = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
    let head = bytes.get(..bytes.len().min(64)).unwrap_or(bytes);
    let zeros = head.iter().filter(|byte| **byte == 0).count();
    let patterned = zeros * 3 >= head.len() && head.len() >= 4;
    (marked || patterned).then(|| Refusal {
        check: "not-utf-8",
        text: String::new(),
        span: Span::new(0, 0),
        message: "this file is not UTF-8; it looks like UTF-16".to_owned(),
        help: "save it again with the encoding UTF-8".to_owned(),
    })
}

fn narrow(bytes: &[u8], error: Utf8Error) -> Refusal {
    let valid = error.valid_up_to();
    let byte = bytes.get(valid).copied().unwrap_or_default();
    let guess = if error.error_len().is_none() {
        "the file may have been cut off".to_owned()
    } else if (0x80..0xa0).contains(&byte) {
        "it looks like Windows-1252".to_owned()
    } else {
        format!("in Latin-1 or Windows-1252 it would be `{}`", char::from(byte))
    };
    // What stands before the bad byte is sound text, so its offset is the same in both.
    let mut text = String::from_utf8_lossy(bytes).into_owned();
    let mark = if text.starts_with('\u{feff}') { 3 } else { 0 };
    text.drain(..mark);
    let text = harmless(&text);
    let at = u32::try_from(valid - mark.min(valid)).unwrap_or(u32::MAX);
    Refusal {
        check: "not-utf-8",
        text,
        span: Span::new(at, at.saturating_add(3)),
        message: format!("the byte 0x{byte:02X} here is not UTF-8; {guess}"),
        help: "save the file again with the encoding UTF-8".to_owned(),
    }
}

/// The text without control characters, so that an excerpt can't drive a terminal; every offset stays.
fn harmless(text: &str) -> String {
    let stand_in = |letter: char| match letter.len_utf8() {
        1 => '?',
        2 => '\u{bf}',
        _ => '\u{fffd}',
    };
    text.chars().map(|letter| if is_control(letter) { stand_in(letter) } else { letter }).collect()
}

fn control(text: &str, at: usize, letter: char) -> Refusal {
    let at = u32::try_from(at).unwrap_or(u32::MAX);
    let (check, message) = if letter == '\0' {
        ("nul-byte", "a zero byte stands here, and no text holds one".to_owned())
    } else {
        ("control-character", format!("the control character U+{:04X} stands here, and no text holds one", u32::from(letter)))
    };
    let width = u32::try_from(letter.len_utf8()).unwrap_or(1);
    Refusal {
        check,
        text: harmless(text),
        span: Span::new(at, at.saturating_add(width)),
        message,
        help: "delete it; a file that is full of them is no text file".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_and_lone_carriage_returns_do_not_shift_lines() {
        assert_eq!(text_of(b"\xef\xbb\xbftitle: x\ra: y\r\nb: z".to_vec()), Ok("title: x\na: y\r\nb: z".to_owned()));
    }

    #[test]
    fn the_first_bad_byte_is_named_with_a_guess() {
        let refused = |bytes: &[u8]| text_of(bytes.to_vec()).map_err(|refusal| (refusal.check, refusal.span.start, refusal.message));
        let latin = refused(b"title: Caf\xe9 cut of veal\n");
        assert_eq!(latin, Err(("not-utf-8", 10, "the byte 0xE9 here is not UTF-8; in Latin-1 or Windows-1252 it would be `é`".to_owned())));
        let dash = refused(b"share: 5\x967 % of the whole\n");
        assert_eq!(dash, Err(("not-utf-8", 8, "the byte 0x96 here is not UTF-8; it looks like Windows-1252".to_owned())));
        assert_eq!(refused(b"title: Caf\xe9\n").map_err(|refusal| refusal.1), Err(10));
        let cut = refused(b"title: Caf\xc3");
        assert_eq!(cut, Err(("not-utf-8", 10, "the byte 0xC3 here is not UTF-8; the file may have been cut off".to_owned())));
        let wide = refused(b"\xff\xfet\0i\0t\0l\0e\0");
        assert_eq!(wide, Err(("not-utf-8", 0, "this file is not UTF-8; it looks like UTF-16".to_owned())));
        let unmarked = refused(b"t\0i\0t\0l\0e\0");
        assert_eq!(unmarked.map_err(|refusal| refusal.0), Err("not-utf-8"));
    }

    #[test]
    fn zero_bytes_and_terminal_escapes_are_refused_at_their_place() {
        let refused = |bytes: &[u8]| text_of(bytes.to_vec()).map_err(|refusal| (refusal.check, refusal.span.start, refusal.text));
        assert_eq!(refused(b"title: a whole chicken\0\n"), Err(("nul-byte", 22, "title: a whole chicken?\n".to_owned())));
        assert_eq!(refused(b"title: \x1b[2J\n"), Err(("control-character", 7, "title: ?[2J\n".to_owned())));
    }
}
