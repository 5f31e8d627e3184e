//! The content security policy of a page: nothing but its own style, its own pictures and its own script files.

use sha2::{Digest, Sha256};

/// The source expression of one inlined style: `'sha256-…'`.
pub(super) fn style_source(style: &str) -> String {
    format!("'sha256-{}'", base64(&Sha256::digest(style.as_bytes())))
}

/// The policy for a page with these inlined styles.
pub(super) fn policy(styles: &[&str]) -> String {
    let styles = styles.join(" ");
    format!("default-src 'none'; img-src 'self' data:; style-src {styles}; script-src 'self'; base-uri 'none'; form-action 'none'")
}

const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// Base 64 with padding (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let byte = |at: usize| u32::from(chunk.get(at).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for at in 0..4 {
            if at > chunk.len() {
                out.push('=');
                continue;
            }
            let digit = bits >> (18 - 6 * at) & 63;
            out.push(ALPHABET.get(digit as usize).map_or('=', |byte| char::from(*byte)));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4648 (IETF, 2006), section 10, test vectors.
    #[test]
    fn base64_follows_the_published_vectors() {
        for (plain, coded) in
            [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foob", "Zm9vYg=="), ("fooba", "Zm9vYmE="), ("foobar", "Zm9vYmFy")]
        {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
    }

    /// The digest of the empty text is that of FIPS 180-4 examples (NIST, 2015): e3b0c442….
    #[test]
    fn a_style_is_named_by_its_digest() {
        assert_eq!(style_source(""), "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='");
        assert!(policy(&["'sha256-a'", "'sha256-b'"]).contains("style-src 'sha256-a' 'sha256-b';"));
    }
}
