//! Where links and pictures inside authored texts lead: what `destination` finds has a place on the site, so that a link
//! which passes inspection is never dead on the page.

use super::Views;
use crate::finding::FileId;
use crate::model::links::{Destination, destination};
use crate::site::markdown::{Found, Targets};
use crate::site::{paths, picture_size};

/// What texts of one file may lead to from one page.
pub(super) struct FromPage<'a> {
    /// All that views draw on.
    pub(super) views: &'a Views<'a>,
    /// The page on which the text is shown.
    pub(super) page: &'a str,
    /// The file in which the text stands.
    pub(super) file: FileId,
}

impl FromPage<'_> {
    fn destination(&self, target: &str) -> Option<Destination> {
        let folder = self.views.sources.path(self.file).rsplit_once('/').map_or("", |(folder, _)| folder);
        destination(self.views.book, folder, target)
    }

    /// The anchor of a step that `fragment` names with or without `step-` before it; else of the guide as a whole.
    fn step(&self, procedure: &str, fragment: Option<&str>) -> Option<String> {
        let procedure = self.views.book.procedure(procedure)?;
        let named = fragment?;
        let named = named.strip_prefix("step-").unwrap_or(named);
        procedure.steps.iter().find(|step| step.id == named).map(|step| format!("step-{}", step.id))
    }

    /// On the page itself: a step of its guide, else its beginning.
    fn here(&self, fragment: Option<&str>) -> String {
        let guide = self.views.book.procedures.iter().find(|procedure| procedure.file == self.file);
        let step =
            guide.filter(|procedure| self.page == paths::guide(&procedure.id)).and_then(|procedure| self.step(&procedure.id, fragment));
        paths::anchored(String::new(), step.as_deref().unwrap_or("main"))
    }
}

impl Targets for FromPage<'_> {
    fn link(&self, target: &str) -> Option<String> {
        let fragment = target.split_once('#').map(|(_, fragment)| decoded(fragment));
        let fragment = fragment.as_deref();
        let to = |path: &str| paths::link(self.page, path);
        Some(match self.destination(target)? {
            Destination::Here => self.here(fragment),
            Destination::Procedure(id) => {
                let guide = to(&paths::guide(&id));
                match self.step(&id, fragment) {
                    Some(step) => paths::anchored(guide, &step),
                    None => guide,
                }
            }
            Destination::Page(id) => to(&paths::free_page(&id)),
            Destination::CutList(species) => {
                let piece = fragment.filter(|piece| self.views.book.cuts.contains_key(*piece));
                piece.map_or_else(|| self.views.pieces_href(self.page, &species), |piece| self.views.piece_href(self.page, piece))
            }
            Destination::Picture(path) => to(&path),
            Destination::Course(id) => to(&paths::course(&id)),
        })
    }

    fn picture(&self, path: &str) -> Option<Found> {
        let Destination::Picture(path) = self.destination(path)? else { return None };
        let (width, height) = picture_size::of(&self.views.book.pictures.get(&path)?.bytes).unwrap_or((640, 400));
        Some((paths::link(self.page, &path), width, height))
    }
}

/// An anchor with its percent signs resolved.
fn decoded(fragment: &str) -> String {
    let mut bytes = Vec::with_capacity(fragment.len());
    let mut rest = fragment.as_bytes();
    while let Some((&byte, after)) = rest.split_first() {
        let digits = after.get(..2).filter(|_| byte == b'%').and_then(|digits| std::str::from_utf8(digits).ok());
        let coded = digits.and_then(|digits| u8::from_str_radix(digits, 16).ok());
        bytes.push(coded.unwrap_or(byte));
        rest = if coded.is_some() { after.get(2..).unwrap_or(&[]) } else { after };
    }
    String::from_utf8(bytes).unwrap_or_else(|_| fragment.to_owned())
}

#[cfg(test)]
mod tests {
    use super::decoded;

    #[test]
    fn anchors_are_read_as_browsers_read_them() {
        assert_eq!(decoded("gr%C3%B6%C3%9Fe"), "größe");
        assert_eq!(decoded("größe"), "größe");
        assert_eq!(decoded("100%zz%"), "100%zz%");
        assert_eq!(decoded("%ff"), "%ff");
    }
}
