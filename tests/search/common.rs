//! What the tests of search share: guidebooks from the disk, addresses, and scripts of an index.

use std::path::Path;

use seamwise::Inspection;
use seamwise::site::search::{Index, Record, Script, Sizes, UrlMaker, records};
use seamwise::source::{Entry, Files};

/// Addresses as a site might have them.
pub(crate) struct Urls;

impl UrlMaker for Urls {
    fn guide(&self, procedure: &str) -> String {
        format!("guides/{procedure}.html")
    }

    fn step(&self, procedure: &str, step: &str) -> String {
        format!("guides/{procedure}.html#{step}")
    }

    fn piece(&self, species: &str, piece: &str) -> Option<String> {
        Some(format!("species/{species}.html#{piece}"))
    }

    fn course(&self, course: &str) -> Option<String> {
        Some(format!("courses/{course}.html"))
    }

    fn page(&self, page: &str) -> Option<String> {
        Some(format!("pages/{page}.html"))
    }
}

/// The records of the guidebook in a folder of this project.
pub(crate) fn records_of(folder: &str) -> Vec<Record> {
    let inspection = inspect(folder);
    records(inspection.verdict.book(), inspection.verdict.analysis(), &Urls)
}

/// The guidebook in a folder of this project, read and checked.
pub(crate) fn inspect(folder: &str) -> Inspection {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut files = Files::new();
    for entry in walkdir::WalkDir::new(&root) {
        let entry = entry.unwrap();
        if entry.file_type().is_file() {
            let path = entry.path().strip_prefix(&root).unwrap().to_string_lossy().replace('\\', "/");
            files.insert(path, Entry::File(std::fs::read(entry.path()).unwrap()));
        }
    }
    seamwise::inspect(files)
}

/// The scripts of an index, in one file unless sizes say otherwise.
pub(crate) fn scripts(index: &Index, sizes: Sizes) -> Vec<Script> {
    index.scripts(sizes, &|stem, _| format!("{stem}.js"))
}
