//! Absolute addresses, where the guidebook says at which address the site is served, and the list of all pages for
//! machines that look for them. Nothing else on the site names an address of its own.

use super::Views;
use crate::site::page::Page;
use crate::site::{escape, paths};

impl Views<'_> {
    /// The address of a page; `None` when the guidebook states none, or none of the web.
    pub(super) fn absolute(&self, path: &str) -> Option<String> {
        let site = address_of(self.book.site.value()?)?;
        Some(format!("{site}/{}", paths::link(paths::HOME, path)))
    }

    /// The absolute address of a page, else the link to it.
    pub(super) fn address(&self, from: &str, path: &str) -> String {
        self.absolute(path).unwrap_or_else(|| paths::link(from, path))
    }

    /// The list of pages (Sitemaps protocol 0.9, sitemaps.org, 2008), with the date of its revision beside each guide.
    pub(in crate::site) fn sitemap<'a>(&self, pages: impl Iterator<Item = (&'a str, &'a Page)>) -> Vec<u8> {
        let mut out =
            String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<urlset xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">\n");
        for (path, page) in pages.filter(|(path, _)| path.ends_with(".html")) {
            let Some(address) = self.absolute(path) else { continue };
            out.push_str("<url><loc>");
            escape::html(&address, &mut out);
            out.push_str("</loc>");
            let procedure = match page {
                Page::Guide(at) => self.book.procedures.get(*at),
                _ => None,
            };
            if let Some(date) = procedure.and_then(|procedure| procedure.revision.date.value()) {
                out.push_str(&format!("<lastmod>{date}</lastmod>"));
            }
            out.push_str("</url>\n");
        }
        out.push_str("</urlset>\n");
        out.into_bytes()
    }
}

/// An address of the web without the slash at its end.
pub(in crate::site) fn address_of(stated: &str) -> Option<&str> {
    let address = stated.trim().trim_end_matches('/');
    let host = address.strip_prefix("https://").or_else(|| address.strip_prefix("http://"))?;
    let sound = !host.is_empty() && !address.contains(['"', '<', '>', '#', '?', '\\']) && !address.contains(char::is_whitespace);
    sound.then_some(address)
}

#[cfg(test)]
mod tests {
    use super::address_of;

    #[test]
    fn only_an_address_of_the_web_is_taken() {
        assert_eq!(address_of("https://guides.example.org/"), Some("https://guides.example.org"));
        assert_eq!(address_of("http://example.org/cuts"), Some("http://example.org/cuts"));
        for wrong in ["javascript:alert(1)", "example.org", "https://", "https://a b", "https://a/?x", ""] {
            assert_eq!(address_of(wrong), None, "{wrong}");
        }
    }
}
