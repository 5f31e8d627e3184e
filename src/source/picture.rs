//! Pictures as files: what kind they are, told by their first bytes and held against their ending.
//!
//! Nothing is decoded here.

use crate::finding::{FileId, Finding, Place, Span};

use super::layout;

/// The kind of a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PictureKind {
    /// A drawing in SVG.
    Svg,
    /// A photograph in JPEG.
    Jpeg,
    /// PNG.
    Png,
    /// WebP.
    Webp,
    /// AVIF.
    Avif,
    /// GIF.
    Gif,
}

/// A picture of the guidebook.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PictureFile {
    /// Its file.
    pub file: FileId,
    /// What it is, by its bytes.
    pub kind: PictureKind,
    /// The bytes as they are on disk.
    pub bytes: Vec<u8>,
}

/// The picture that bytes hold, unless they hold none that can be shown, and what is to be said of it. A file of another
/// ending gives neither: one may keep the drawing's source beside it.
pub(super) fn picture(path: &str, file: FileId, bytes: Vec<u8>) -> (Option<PictureFile>, Option<Finding>) {
    let place = Place::new(file, Span::new(0, 0));
    let ending = layout::ending(path).to_ascii_lowercase();
    if !layout::PICTURES.contains(&ending.as_str()) {
        return (None, None);
    }
    let Some(kind) = kind_of(&bytes) else {
        let message = if bytes.is_empty() { "this picture is empty" } else { "the bytes of this file are no picture that a browser shows" };
        return (None, Some(Finding::fault("picture-unreadable", place, message).help("save it again from the program that made it")));
    };
    let finding = (!endings(kind).contains(&ending.as_str())).then(|| {
        let right = endings(kind).first().copied().unwrap_or("");
        let message = format!("this file ends in `.{ending}`, and its bytes are those of a `.{right}`");
        Finding::advice("picture-ending", place, message)
            .help(format!("rename it so that it ends in `.{right}`, here and where it is named"))
    });
    (Some(PictureFile { file, kind, bytes }), finding)
}

/// Told by the first bytes; SVG is text whose first element is `svg`.
fn kind_of(bytes: &[u8]) -> Option<PictureKind> {
    let at = |from: usize, mark: &[u8]| bytes.get(from..).is_some_and(|rest| rest.starts_with(mark));
    if at(0, b"\x89PNG\r\n\x1a\n") {
        Some(PictureKind::Png)
    } else if at(0, b"\xff\xd8\xff") {
        Some(PictureKind::Jpeg)
    } else if at(0, b"GIF87a") || at(0, b"GIF89a") {
        Some(PictureKind::Gif)
    } else if at(0, b"RIFF") && at(8, b"WEBP") {
        Some(PictureKind::Webp)
    } else if at(4, b"ftypavif") || at(4, b"ftypavis") {
        Some(PictureKind::Avif)
    } else {
        let head = bytes.get(..bytes.len().min(4096)).unwrap_or(bytes);
        String::from_utf8_lossy(head).contains("<svg").then_some(PictureKind::Svg)
    }
}

const fn endings(kind: PictureKind) -> &'static [&'static str] {
    match kind {
        PictureKind::Svg => &["svg"],
        PictureKind::Jpeg => &["jpg", "jpeg"],
        PictureKind::Png => &["png"],
        PictureKind::Webp => &["webp"],
        PictureKind::Avif => &["avif"],
        PictureKind::Gif => &["gif"],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bytes_and_ending_are_held_against_each_other() {
        let told = |path: &str, bytes: &[u8]| {
            let (picture, finding) = picture(path, FileId(0), bytes.to_vec());
            (picture.map(|picture| picture.kind), finding.map(|finding| finding.level.word()))
        };
        assert_eq!(told("pictures/a.svg", b"<?xml version='1.0'?><svg/>"), (Some(PictureKind::Svg), None));
        assert_eq!(told("pictures/a.JPEG", b"\xff\xd8\xff\xe0"), (Some(PictureKind::Jpeg), None));
        assert_eq!(told("pictures/a.jpg", b"RIFF\0\0\0\0WEBP"), (Some(PictureKind::Webp), Some("advice")));
        assert_eq!(told("pictures/a.png", b""), (None, Some("fault")));
        assert_eq!(told("pictures/a.heic", b"\0\0\0\x18ftypheic"), (None, None));
    }
}
