//! What is known of a file once it is made: its path, its size, and a mark of its content.

use std::fmt::{self, Display, Formatter, Write as _};

use sha2::{Digest, Sha256};

/// The first bytes of the SHA-256 digest (FIPS 180-4, NIST, 2015) of a content: a device that fetches a file holds it
/// against its mark, and browsers compute SHA-256 themselves. Against accidents, not against forgers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::site) struct Mark([u8; 6]);

impl Mark {
    /// The mark of these bytes.
    pub(in crate::site) fn of(content: &[u8]) -> Self {
        let digest = Sha256::digest(content);
        let mut mark = [0; 6];
        for (to, from) in mark.iter_mut().zip(digest) {
            *to = from;
        }
        Self(mark)
    }
}

impl Display for Mark {
    fn fmt(&self, out: &mut Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(out, "{byte:02x}"))
    }
}

/// A file of the site that is made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Made {
    /// Its path in the site.
    pub path: String,
    /// How many bytes it has.
    pub bytes: u64,
    mark: Mark,
}

impl Made {
    /// What is known of this content at this path.
    #[must_use]
    pub fn of(path: &str, content: &[u8]) -> Self {
        Self { path: path.to_owned(), bytes: u64::try_from(content.len()).unwrap_or(u64::MAX), mark: Mark::of(content) }
    }

    /// The mark of its content: the first twelve hexadecimal digits of its SHA-256 digest.
    #[must_use]
    pub fn mark(&self) -> String {
        self.mark.to_string()
    }

    /// The line by which it stands in a list: `["index.html","e3b0c44298fc",0]`.
    pub(in crate::site) fn entry(&self, out: &mut String) {
        out.push('[');
        json(&self.path, out);
        // Writing to a text cannot fail.
        let _ = write!(out, ",\"{}\",{}]", self.mark, self.bytes);
    }
}

/// Adds a text as JSON (RFC 8259).
pub(in crate::site) fn json(text: &str, out: &mut String) {
    out.push_str(&serde_json::Value::from(text).to_string());
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The digest of the empty text and of `abc`, as in the examples of FIPS 180-4 (NIST, 2015).
    #[test]
    fn a_mark_is_the_beginning_of_the_digest() {
        assert_eq!(Made::of("a", b"").mark(), "e3b0c44298fc");
        assert_eq!(Made::of("a", b"abc").mark(), "ba7816bf8f01");
    }

    #[test]
    fn an_entry_is_json_whatever_the_path_holds() {
        let mut out = String::new();
        Made::of("fisch/a\"b ü.html", b"abc").entry(&mut out);
        assert_eq!(out, "[\"fisch/a\\\"b ü.html\",\"ba7816bf8f01\",3]");
    }
}
