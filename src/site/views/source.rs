//! The file of a procedure as its author wrote it.

use super::frame::About;
use super::{Views, gone};
use crate::site::context::source::SourcePage;
use crate::site::highlight;
use crate::site::style::Look;
use crate::site::theme_error::ThemeError;

impl Views<'_> {
    /// What `source.html` gets.
    pub(super) fn source(&self, path: &str, at: usize) -> Result<SourcePage, ThemeError> {
        let procedure = self.book.procedures.get(at).ok_or_else(|| gone("procedure"))?;
        let file = self.sources.get(procedure.file).ok_or_else(|| gone("file"))?;
        let page = self.frame(About {
            path,
            title: self.engine.words.with("source-title", &[("title", self.title(at).into())])?,
            trail: self.trail_behind(path, at),
            procedure: Some(procedure),
            paints: Vec::new(),
            look: Look::Text,
            scripts: &[],
            data: None,
            anchor: "main",
        })?;
        Ok(SourcePage { page, title: self.title(at), file: file.path().to_owned(), lines_html: highlight::yaml(file.text()) })
    }
}
