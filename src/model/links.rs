//! Links in free text that stay inside the guidebook, and what they lead to.
//!
//! The check of dead links and the pages both ask `destination`, so that what passes inspection also works.

use super::guidebook::Guidebook;
use crate::finding::Place;

/// A link or a picture in free text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Link {
    /// Where it stands.
    pub place: Place,
    /// The folder of the file in which it stands; empty beside `guidebook.yaml`.
    pub folder: String,
    /// What was written: `side-primals.yaml`, `../pages/about.md#rules`.
    pub target: String,
    /// True for a picture, which is shown in place.
    pub picture: bool,
}

/// What a link leads to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Destination {
    /// A place on the same page.
    Here,
    /// The guide with this id.
    Procedure(String),
    /// The free page with this id.
    Page(String),
    /// The course with this id.
    Course(String),
    /// The cut list of this species.
    CutList(String),
    /// The picture at this path.
    Picture(String),
}

/// What `target` leads to, written in a file of `folder`; `None` when nothing of the kind is there.
///
/// It is tried from the folder first, then from the top of the guidebook; the ending of a document may be left out.
#[must_use]
pub fn destination(book: &Guidebook, folder: &str, target: &str) -> Option<Destination> {
    let path = path_of(target);
    if path.is_empty() {
        return target.starts_with('#').then_some(Destination::Here);
    }
    candidates(folder, target).iter().find_map(|path| at_path(book, path))
}

/// The paths that `target` may mean, the likelier first; none where it leads out of the guidebook.
#[must_use]
pub fn candidates(folder: &str, target: &str) -> Vec<String> {
    let path = path_of(target);
    let mut paths: Vec<String> = [folder, ""].iter().filter_map(|folder| joined(folder, &path)).collect();
    paths.dedup();
    paths
}

fn at_path(book: &Guidebook, path: &str) -> Option<Destination> {
    if book.pictures.contains_key(path) {
        return Some(Destination::Picture(path.to_owned()));
    }
    let document = path.strip_suffix(".yaml").or_else(|| (!path.ends_with(".md")).then_some(path));
    if let Some(id) = document {
        if book.procedure(id).is_some() {
            return Some(Destination::Procedure(id.to_owned()));
        }
        if let Some(course) = id.strip_prefix("courses/").filter(|course| book.courses.iter().any(|known| known.id == *course)) {
            return Some(Destination::Course(course.to_owned()));
        }
        if let Some(species) = id.strip_prefix("cuts/").filter(|species| book.cut_lists.contains(*species)) {
            return Some(Destination::CutList(species.to_owned()));
        }
    }
    let page = path.strip_suffix(".md").unwrap_or(path).strip_prefix("pages/")?;
    book.pages.iter().any(|known| known.id == page).then(|| Destination::Page(page.to_owned()))
}

/// The part of a link before `#` and `?`, with its percent signs resolved.
fn path_of(target: &str) -> String {
    let path = target.split(['#', '?']).next().unwrap_or("");
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes().iter();
    while let Some(&byte) = rest.next() {
        let digits = rest.as_slice().get(..2).filter(|_| byte == b'%').and_then(|digits| std::str::from_utf8(digits).ok());
        match digits.and_then(|digits| u8::from_str_radix(digits, 16).ok()) {
            Some(decoded) => {
                bytes.push(decoded);
                rest.nth(1);
            }
            None => bytes.push(byte),
        }
    }
    String::from_utf8(bytes).unwrap_or_else(|_| path.to_owned())
}

/// `path` seen from `folder`, without `.` and `..`; `None` when it climbs above the guidebook.
fn joined(folder: &str, path: &str) -> Option<String> {
    let mut parts: Vec<&str> = folder.split('/').filter(|part| !part.is_empty()).collect();
    for part in path.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                parts.pop()?;
            }
            _ => parts.push(part),
        }
    }
    Some(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::candidates;

    #[test]
    fn a_link_is_tried_from_its_folder_and_from_the_top() {
        assert_eq!(candidates("pork", "side-primals.yaml#leg"), ["pork/side-primals.yaml", "side-primals.yaml"]);
        assert_eq!(candidates("pages", "../pork/loin%20one?x"), ["pork/loin one"]);
        assert_eq!(candidates("pages", "../../etc/passwd"), [""; 0]);
        assert_eq!(candidates("", "pages/./about.md"), ["pages/about.md"]);
        assert_eq!(candidates("", "100%zz"), ["100%zz"]);
    }
}
