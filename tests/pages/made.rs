//! Guidebooks read from disk and made into pages, once for all tests.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use seamwise::Inspection;
use seamwise::site::{Made, Site, Theme, ThemeError};
use seamwise::source::{Entry, Files};

use super::html::Page;

/// Pages by path.
pub(crate) type Pages = BTreeMap<String, Vec<u8>>;

/// The demo.
pub(crate) static DEMO: LazyLock<Pages> = LazyLock::new(|| pages("procedures"));
/// Odd cases: see its `guidebook.yaml`.
pub(crate) static ODD: LazyLock<Pages> = LazyLock::new(|| pages("tests/guidebooks/odd"));

/// All files below a folder, by path relative to it.
pub(crate) fn files(folder: &Path) -> Files {
    let mut files = Files::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(inner) = folders.pop() {
        for entry in fs::read_dir(&inner).unwrap().flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name = path.strip_prefix(folder).unwrap().to_string_lossy().replace('\\', "/");
                files.insert(name, Entry::File(fs::read(&path).unwrap()));
            }
        }
    }
    files
}

/// A guidebook of this project, inspected.
pub(crate) fn inspected(folder: &str) -> Inspection {
    seamwise::inspect(files(&Path::new(env!("CARGO_MANIFEST_DIR")).join(folder)))
}

/// All pages of a guidebook under the default theme.
pub(crate) fn pages(folder: &str) -> Pages {
    pages_of(&inspected(folder))
}

/// All pages of an inspected guidebook under the default theme.
pub(crate) fn pages_of(inspection: &Inspection) -> Pages {
    let checked = inspection.verdict.checked().unwrap_or_else(|| panic!("{:#?}", inspection.findings));
    let site = Site::new(checked, &Theme::paper()).unwrap_or_else(|error| panic!("{error}\n{}", error.excerpt));
    let told = |path: &str, made: Result<Vec<u8>, ThemeError>| made.unwrap_or_else(|error| panic!("{path}: {error}\n{}", error.excerpt));
    let closing = site.closing();
    let mut pages = Pages::new();
    for path in site.pages().into_iter().filter(|path| !closing.contains(path)) {
        let bytes = told(&path, site.render(&path));
        pages.insert(path, bytes);
    }
    let mut made: Vec<Made> = pages.iter().map(|(path, bytes)| Made::of(path, bytes)).collect();
    for path in closing {
        let bytes = told(&path, site.close(&path, &made));
        made.push(Made::of(&path, &bytes));
        pages.insert(path, bytes);
    }
    pages
}

/// The demo with other files beside its own or in place of them.
pub(crate) fn demo_with(more: &[(&str, &str)]) -> Pages {
    let mut all: Files = files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures"));
    for (path, text) in more {
        let text = text.replace("{before}", &before(&all, path));
        all.insert((*path).to_owned(), Entry::File(text.into_bytes()));
    }
    pages_of(&seamwise::inspect(all))
}

fn before(files: &Files, path: &str) -> String {
    match files.get(path) {
        Some(Entry::File(bytes)) => String::from_utf8(bytes.clone()).unwrap(),
        _ => String::new(),
    }
}

/// All HTML pages of both guidebooks, read.
pub(crate) fn all_html() -> Vec<(String, Page)> {
    let both = DEMO.iter().map(|page| ("demo", page)).chain(ODD.iter().map(|page| ("odd", page)));
    both.filter(|(_, (path, _))| path.ends_with(".html"))
        .map(|(book, (path, bytes))| {
            let html = std::str::from_utf8(bytes).unwrap();
            let page = Page::read(html).unwrap_or_else(|wrong| panic!("{book} {path}: {wrong}"));
            (format!("{book}/{path}"), page)
        })
        .collect()
}

/// A guidebook of these files, inspected.
pub(crate) fn book(all: &[(&str, &str)]) -> Inspection {
    let entry = |(path, text): &(&str, &str)| ((*path).to_owned(), Entry::File(text.as_bytes().to_vec()));
    seamwise::inspect(all.iter().map(entry).collect())
}

/// One of the pages, read.
pub(crate) fn read(pages: &Pages, path: &str) -> Page {
    let bytes = pages.get(path).unwrap_or_else(|| panic!("no page {path}"));
    Page::read(std::str::from_utf8(bytes).unwrap()).unwrap_or_else(|wrong| panic!("{path}: {wrong}"))
}

/// The element with an id, with its position.
pub(crate) fn with_id<'p>(page: &'p Page, id: &str) -> (usize, &'p super::html::Element) {
    page.elements.iter().enumerate().find(|(_, element)| element.get("id") == Some(id)).unwrap_or_else(|| panic!("no element `{id}`"))
}
