//! The demo guidebook: sound, without advice, published as committed, and the same bytes each time.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test may fail, and this one works on the disk")]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every file below a folder, by its path inside.
fn content(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut files = BTreeMap::new();
    let mut folders = vec![folder.to_owned()];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(next).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let inside = path.strip_prefix(folder).unwrap().to_string_lossy().replace('\\', "/");
                files.insert(inside, fs::read(&path).unwrap());
            }
        }
    }
    files
}

fn seamwise(arguments: &[&str], folder: &Path) -> (i32, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_seamwise")).args(arguments).current_dir(folder).env("NO_COLOR", "1").output().unwrap();
    (output.status.code().unwrap(), String::from_utf8(output.stdout).unwrap())
}

#[test]
fn the_demo_has_no_finding() {
    assert_eq!(seamwise(&["inspect"], &root()), (0, "no faults\n".to_owned()));
}

/// On a miss, look at what changed and run `cargo run --release -- publish`.
#[test]
fn the_committed_site_is_what_publish_makes() {
    let folder = tempfile::tempdir().unwrap();
    let to = folder.path().join("site");
    let (status, text) = seamwise(&["publish", "--to", to.to_str().unwrap()], &root());
    assert_eq!(status, 0, "{text}");
    let (made, committed) = (content(&to), content(&root().join("site")));
    let names = |files: &BTreeMap<String, Vec<u8>>| files.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&made), names(&committed), "run `cargo run --release -- publish` and commit site/");
    for (path, bytes) in &made {
        assert!(
            committed.get(path) == Some(bytes),
            "site/{path} is not what publish makes: run `cargo run --release -- publish` and commit site/"
        );
        let is_text = [".html", ".js", ".svg", ".txt", ".json", ".css", ".xml", ".csv"].iter().any(|ending| path.ends_with(ending));
        assert!(!is_text || path.ends_with(".csv") || !bytes.contains(&b'\r'), "site/{path}: line ends are line feeds");
    }
}

/// Neither the folder in which it runs nor the order of reading leaves a trace.
#[test]
fn the_same_guidebook_gives_the_same_bytes_anywhere() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("elsewhere/deep/guides");
    // Files are written in the opposite order of their names, so that the disk lists them in another order.
    for (path, bytes) in content(&root().join("procedures")).iter().rev() {
        let to = book.join(path);
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::write(to, bytes).unwrap();
    }
    let (one, other) = (folder.path().join("one"), folder.path().join("other"));
    assert_eq!(seamwise(&["publish", "--to", one.to_str().unwrap()], &root()).0, 0);
    assert_eq!(seamwise(&["publish", "--to", other.to_str().unwrap()], &book).0, 0);
    assert!(content(&one) == content(&other));
}

/// A fault keeps the earlier site whole, byte for byte, and says so by its exit status.
#[test]
fn a_fault_leaves_the_earlier_site_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    for (path, bytes) in content(&root().join("procedures")) {
        let to = book.join(path);
        fs::create_dir_all(to.parent().unwrap()).unwrap();
        fs::write(to, bytes).unwrap();
    }
    assert_eq!(seamwise(&["publish", "book"], folder.path()).0, 0);
    let before = content(&folder.path().join("site"));
    let guide = book.join("pork/loin-boneless.yaml");
    let text = fs::read_to_string(&guide).unwrap();
    fs::write(&guide, text.replace("species: pork", "speces: pork")).unwrap();
    let (status, text) = seamwise(&["publish", "book"], folder.path());
    assert_eq!(status, 1);
    assert!(text.contains("fault[unknown-key]") && text.contains("pork/loin-boneless.yaml"), "{text}");
    assert!(content(&folder.path().join("site")) == before);
}
