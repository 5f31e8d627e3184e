//! Pages that the guidebook's owner wrote.

use super::frame::About;
use super::{Views, gone};
use crate::figures::yield_table::capitalised;
use crate::model::guidebook::Page;
use crate::site::context::frame::Link;
use crate::site::context::free_page::FreePage;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;
use crate::site::{markdown, paths};

impl Views<'_> {
    /// What `free-page.html` gets.
    pub(super) fn free_page(&self, path: &str, at: usize) -> Result<FreePage, ThemeError> {
        let own = self.book.pages.get(at).ok_or_else(|| gone("text"))?;
        let (title, text_html) = markdown::page(&own.text, &self.targets(path, own.file));
        let title = title.unwrap_or_else(|| file_name(own));
        let page = self.frame(About {
            path,
            title: title.clone(),
            trail: vec![self.home_link(path)],
            procedure: None,
            paints: Vec::new(),
            look: Look::Text,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        Ok(FreePage { page, title, text_html })
    }

    /// Links to all free pages, in the order of their names.
    pub(super) fn free_pages(&self, page: &str) -> Vec<Link> {
        let link = |own: &Page| {
            let (title, _) = markdown::page(&own.text, &self.targets(page, own.file));
            Link { name: title.unwrap_or_else(|| file_name(own)), href: paths::link(page, &paths::free_page(&own.id)) }
        };
        self.book.pages.iter().map(link).collect()
    }
}

/// The name of the file in words.
fn file_name(page: &Page) -> String {
    capitalised(&page.id.rsplit('/').next().unwrap_or(&page.id).replace(['-', '_'], " "))
}
