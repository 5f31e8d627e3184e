//! The pages of the demo guidebook, made whole. With `SEAMWISE_PAGES` set to a folder, they are written there to be looked at.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing, clippy::disallowed_methods, reason = "a test may fail, and reads the demo from disk")]

use std::fs;
use std::path::{Path, PathBuf};

use seamwise::site::{Site, Theme};
use seamwise::source::{Entry, Files};

/// All files below a folder, by path relative to it.
fn files(folder: &Path) -> Files {
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

#[test]
fn written_to_be_looked_at() {
    let Ok(target) = std::env::var("SEAMWISE_PAGES") else { return };
    let book = std::env::var("SEAMWISE_BOOK").unwrap_or_else(|_| format!("{}/procedures", env!("CARGO_MANIFEST_DIR")));
    let inspection = seamwise::inspect(files(Path::new(&book)));
    let checked = inspection.verdict.checked().unwrap_or_else(|| panic!("{:#?}", inspection.findings));
    let site = Site::new(checked, &Theme::paper()).unwrap_or_else(|error| panic!("{error}\n{}", error.excerpt));
    for path in site.pages() {
        let bytes = site.render(&path).unwrap_or_else(|error| panic!("{path}: {error}\n{}", error.excerpt));
        let file = PathBuf::from(&target).join(&path);
        fs::create_dir_all(file.parent().unwrap()).unwrap();
        fs::write(file, bytes).unwrap();
    }
}
