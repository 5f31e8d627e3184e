//! Pictures of steps, with lines drawn over them, and the bytes of pictures.

use super::{Views, gone};
use crate::figures::numbers::coordinate;
use crate::model::picture_safety;
use crate::model::procedure::{Picture as ModelPicture, PictureLine};
use crate::site::context::step::{Line, Picture};
use crate::site::escape::keep_units;
use crate::site::markdown;
use crate::site::theme_error::ThemeError;
use crate::site::{paths, picture_size};

use super::step::side;

impl Views<'_> {
    /// A picture of a step; `None` when its file is not in the guidebook.
    pub(super) fn picture(&self, page: &str, picture: &ModelPicture) -> Option<Picture> {
        let path = picture.file.value()?;
        let file = self.book.pictures.get(path)?;
        // Where the head does not tell, the page keeps room of a usual shape; the browser corrects it.
        let (width, height) = picture_size::of(&file.bytes).unwrap_or((640, 400));
        Some(Picture {
            src: paths::link(page, path),
            alt: picture.alt.value().map_or_else(String::new, |alt| markdown::first_line(alt)),
            caption: picture.caption.value().map_or_else(String::new, |caption| keep_units(&markdown::first_line(caption))),
            side: side(&picture.side),
            width,
            height,
            lines: picture.lines.iter().filter_map(|drawn| line(drawn, f64::from(width), f64::from(height))).collect(),
            label_size: (width / 22).max(10),
        })
    }

    /// The bytes of a picture as they are on disk; a drawing that could do something is refused.
    pub(super) fn picture_bytes(&self, path: &str) -> Result<Vec<u8>, ThemeError> {
        let file = self.book.pictures.get(path).ok_or_else(|| gone("picture"))?;
        match picture_safety::danger(&file.bytes) {
            None => Ok(file.bytes.clone()),
            Some(danger) => Err(ThemeError::new(format!("the drawing `{path}` is not published: {danger}"))),
        }
    }
}

/// A line in pixels; its words stand at its first point, turned inward near an edge.
fn line(drawn: &PictureLine, width: f64, height: f64) -> Option<Line> {
    let (x, y) = *drawn.points.first()?;
    let points: Vec<String> = drawn.points.iter().map(|(x, y)| format!("{},{}", coordinate(x * width), coordinate(y * height))).collect();
    let anchor = if x < 0.25 {
        "start"
    } else if x > 0.75 {
        "end"
    } else {
        "middle"
    };
    Some(Line {
        label: keep_units(&drawn.label),
        points: points.join(" "),
        x: coordinate(x * width),
        y: coordinate((y * height - width / 60.0).max(width / 20.0)),
        anchor,
    })
}
