//! Where something stands: files, byte spans, lines and columns.
//!
//! This file knows nothing of YAML or of cutting. Offsets are bytes; lines and columns, for people and
//! for machine-readable answers, count from 1, and columns count characters.

use std::ops::Range;

/// A file of the guidebook, by its position in the sorted list of all files.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);

/// A half-open range of bytes in one file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Span {
    /// First byte.
    pub start: u32,
    /// One past the last byte; equal to `start` for a mere position.
    pub end: u32,
}

impl Span {
    /// The span from `start` to `end`, in bytes.
    #[must_use]
    pub const fn new(start: u32, end: u32) -> Self {
        Self { start, end }
    }

    /// The same span as a range of `usize`.
    #[must_use]
    pub fn range(self) -> Range<usize> {
        self.start as usize..self.end as usize
    }
}

/// A span in a file: where an authored value stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The file.
    pub file: FileId,
    /// The bytes within it.
    pub span: Span,
}

impl Place {
    /// The place of `span` in `file`.
    #[must_use]
    pub const fn new(file: FileId, span: Span) -> Self {
        Self { file, span }
    }
}

/// A line and a column, both counted from 1; the column counts characters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct LineColumn {
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
}

/// A part of a file by the name that an author gives it: keys joined by dots, `start.weight`, an item of a list by
/// its position from 1, `steps.2.do`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// The name.
    pub path: String,
    /// From its key to the end of its value.
    pub span: Span,
}

/// One file's path, relative to the guidebook with forward slashes, and its text.
#[derive(Debug, Clone)]
pub struct SourceText {
    path: String,
    text: String,
    line_starts: Vec<u32>,
    /// Bytes that stand in the file before the text: a byte order mark, or none.
    mark: u32,
    parts: Vec<Part>,
}

impl SourceText {
    /// The path, relative to the guidebook.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.path
    }

    /// The text; bytes that are not UTF-8 stand as replacement characters.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Where an offset of the text stands in the file, in bytes. `None` where bytes before it are no UTF-8: what stands
    /// in the text in their place is of another length.
    #[must_use]
    pub fn byte_in_file(&self, offset: u32) -> Option<u32> {
        let end = (offset as usize).min(self.text.len());
        let before = self.text.get(..end)?;
        if before.contains('\u{fffd}') { None } else { u32::try_from(end).ok()?.checked_add(self.mark) }
    }

    /// The parts of the file by name; empty where nobody names them.
    #[must_use]
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// The line with this number, counted from 1, without its line end; empty for a line that is not there.
    #[must_use]
    pub fn line(&self, number: u32) -> &str {
        let index = (number as usize).saturating_sub(1);
        let start = self.line_starts.get(index).map_or(self.text.len(), |start| *start as usize);
        let end = self.line_starts.get(index + 1).map_or(self.text.len(), |end| *end as usize);
        self.text.get(start..end).unwrap_or("").trim_end_matches(['\n', '\r'])
    }

    /// Line and column of a byte offset; an offset past the end counts as the end.
    #[must_use]
    pub fn line_column(&self, offset: u32) -> LineColumn {
        let line_index = self.line_starts.partition_point(|start| *start <= offset).saturating_sub(1);
        let start = self.line_starts.get(line_index).copied().unwrap_or(0) as usize;
        let end = (offset as usize).min(self.text.len());
        let column = self.text.get(start..end).map_or(0, |head| head.chars().count());
        LineColumn {
            line: u32::try_from(line_index).unwrap_or(u32::MAX).saturating_add(1),
            column: u32::try_from(column).unwrap_or(u32::MAX).saturating_add(1),
        }
    }
}

/// All files of a guidebook, so that places can be turned into paths, lines and excerpts.
#[derive(Debug, Clone, Default)]
pub struct SourceMap {
    files: Vec<SourceText>,
}

impl SourceMap {
    /// Adds a file and says under which id it is known from now on.
    pub fn add(&mut self, path: impl Into<String>, text: impl Into<String>) -> FileId {
        let text = text.into();
        let mut line_starts = vec![0];
        line_starts.extend(text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n').filter_map(|(at, _)| u32::try_from(at + 1).ok()));
        self.files.push(SourceText { path: path.into(), text, line_starts, mark: 0, parts: Vec::new() });
        FileId(u32::try_from(self.files.len() - 1).unwrap_or(u32::MAX))
    }

    /// Says by which names the parts of a file are known.
    pub fn name_parts(&mut self, file: FileId, parts: Vec<Part>) {
        if let Some(source) = self.files.get_mut(file.0 as usize) {
            source.parts = parts;
        }
    }

    /// The file with this id.
    #[must_use]
    pub fn get(&self, file: FileId) -> Option<&SourceText> {
        self.files.get(file.0 as usize)
    }

    /// The path of a file, or an empty text for an id that this map never gave out.
    #[must_use]
    pub fn path(&self, file: FileId) -> &str {
        self.get(file).map_or("", SourceText::path)
    }

    /// Says that a byte order mark of so many bytes stands in the file before its text.
    pub fn set_mark(&mut self, file: FileId, bytes: u32) {
        if let Some(source) = self.files.get_mut(file.0 as usize) {
            source.mark = bytes;
        }
    }

    /// The id of the file with this path.
    #[must_use]
    pub fn find(&self, path: &str) -> Option<FileId> {
        self.files.iter().position(|file| file.path == path).and_then(|at| u32::try_from(at).ok()).map(FileId)
    }

    /// Line and column of a place.
    #[must_use]
    pub fn line_column(&self, place: Place) -> LineColumn {
        self.get(place.file).map_or(LineColumn { line: 1, column: 1 }, |file| file.line_column(place.span.start))
    }

    /// All files in the order in which they were added, with their ids.
    pub fn iter(&self) -> impl Iterator<Item = (FileId, &SourceText)> {
        self.files.iter().enumerate().map(|(at, file)| (FileId(u32::try_from(at).unwrap_or(u32::MAX)), file))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_count_characters_and_lines_count_from_one() {
        let mut map = SourceMap::default();
        let file = map.add("a.yaml", "é: 1\nlow: 5\u{2013}7 %\n");
        let at = |offset| map.line_column(Place::new(file, Span::new(offset, offset)));
        assert_eq!(at(0), LineColumn { line: 1, column: 1 });
        assert_eq!(at(4), LineColumn { line: 1, column: 4 });
        assert_eq!(at(6), LineColumn { line: 2, column: 1 });
        assert_eq!(at(15), LineColumn { line: 2, column: 8 });
        assert_eq!(at(9999), LineColumn { line: 3, column: 1 });
    }
}
