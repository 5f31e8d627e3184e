//! The content security policy of a page: nothing but its own style, its own pictures and its own script files.

use sha2::{Digest, Sha256};

/// The digest of a text that many pages begin with, from which that of each page is made without reading it again.
#[derive(Debug, Clone)]
pub(super) struct Digested(Sha256);

impl Digested {
    /// Of the common beginning.
    pub(super) fn of(text: &str) -> Self {
        Self(Sha256::new_with_prefix(text.as_bytes()))
    }

    /// The source expression of the beginning and what follows it: `'sha256-…'`.
    pub(super) fn source(&self, rest: &str) -> String {
        format!("'sha256-{}'", base64(&self.0.clone().chain_update(rest.as_bytes()).finalize()))
    }
}

/// The policy for a page with this inlined style. For a service worker, scripts are asked: where
/// `worker-src` is not named, `script-src` holds (Content Security Policy Level 3, W3C). What the worker itself fetches is
/// not the page's to allow.
pub(super) fn policy(style: &str) -> String {
    format!(
        "default-src 'none'; img-src 'self' data:; style-src {style}; script-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'"
    )
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
        assert_eq!(Digested::of("").source(""), "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='");
        assert_eq!(Digested::of("a{}").source("b{}"), Digested::of("a{}b{}").source(""));
        assert!(policy("'sha256-a'").contains("style-src 'sha256-a';"));
    }
}
