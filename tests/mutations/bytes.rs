//! Mistakes that make a file no text, or more than one document.

use super::guide::{Guide, Mistake};

/// All of them.
pub(crate) fn mistakes(guide: &Guide) -> Vec<Mistake> {
    let text = format!("{}\n", guide.lines.join("\n"));
    let title = guide.top("title:").unwrap();
    let before: usize = guide.lines[..title].iter().map(|line| line.len() + 1).sum();
    let at = before + guide.lines[title].len();
    let with = |kind, bytes: &[u8], check| {
        let mut spoilt = text.clone().into_bytes();
        spoilt.splice(at..at, bytes.iter().copied());
        Mistake { kind, bytes: spoilt, check, line: title + 1 }
    };
    let end = guide.lines.len() + 1;
    vec![
        with("a letter of another encoding", b"\xe9t", "not-utf-8"),
        with("a zero byte", b"\0", "nul-byte"),
        with("an escape of a terminal", b"\x1b[2J", "control-character"),
        Mistake {
            kind: "a second document",
            bytes: format!("{text}---\ntitle: Another\n").into_bytes(),
            check: "several-documents",
            line: end,
        },
        Mistake { kind: "an empty file", bytes: b"# nothing\n".to_vec(), check: "empty-file", line: 1 },
        Mistake { kind: "a list in place of a procedure", bytes: b"- one\n- two\n".to_vec(), check: "wrong-kind", line: 1 },
        Mistake {
            kind: "lists in lists without end",
            bytes: format!("title: {}\n", "[".repeat(500)).into_bytes(),
            check: "too-deep",
            line: 1,
        },
        Mistake { kind: "a file without end", bytes: "x".repeat(3 << 20).into_bytes(), check: "too-large", line: 1 },
    ]
}
