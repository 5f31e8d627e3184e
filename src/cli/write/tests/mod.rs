//! Tests of publishing: what it writes, what it keeps, what it refuses, and what is left when it is cut off.

mod faults;
mod faulty;
mod keeping;
mod killed;
mod refusing;
mod replacing;

use std::collections::BTreeMap;
use std::fs;
use std::os::unix::fs::MetadataExt;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use super::disk::Disk;
use super::{Outcome, Pages, Target, publish_on};
use crate::cli::failure::Failure;
use crate::site::Made;

/// The page that is made last: a line a page made before it, with its size and its mark.
const SUMS: &str = "sums.txt";

/// Pages as a map. One at `SUMS` is made last, whatever stands there.
#[derive(Debug, Clone, Default)]
struct Book(BTreeMap<String, Vec<u8>>);

impl Book {
    fn of(pages: &[(&str, &str)]) -> Self {
        Self(pages.iter().map(|(path, text)| ((*path).to_owned(), text.as_bytes().to_vec())).collect())
    }

    fn with(mut self, path: &str, text: &str) -> Self {
        self.0.insert(path.to_owned(), text.as_bytes().to_vec());
        self
    }

    fn without(mut self, path: &str) -> Self {
        self.0.remove(path).unwrap();
        self
    }
}

impl Pages for Book {
    fn paths(&self) -> Vec<String> {
        self.0.keys().cloned().collect()
    }

    fn closing(&self) -> Vec<String> {
        self.0.keys().filter(|path| *path == SUMS).cloned().collect()
    }

    fn close(&self, path: &str, made: &[Made]) -> Result<Vec<u8>, String> {
        assert_eq!((path, made.len()), (SUMS, self.0.len() - 1));
        self.render(path)?;
        Ok(made.iter().map(|made| format!("{} {} {}\n", made.path, made.bytes, made.mark())).collect::<String>().into_bytes())
    }

    fn render(&self, path: &str) -> Result<Vec<u8>, String> {
        let bytes = self.0.get(path).unwrap();
        if bytes == b"unmakeable" { Err("a template has a hole".into()) } else { Ok(bytes.clone()) }
    }
}

/// A small site.
fn site() -> Book {
    Book::of(&[
        ("index.html", "home"),
        ("look/guide.css", "body {}"),
        ("pork/loin/index.html", "loin"),
        ("pork/loin/weights.svg", "<svg/>"),
        ("pork/side/index.html", "side"),
    ])
}

/// The same with the page that is made last.
fn summed() -> Book {
    site().with(SUMS, "")
}

/// A home with an empty guidebook.
struct Home {
    _kept: tempfile::TempDir,
    root: PathBuf,
}

impl Home {
    fn new() -> Self {
        Self::in_folder(&std::env::temp_dir())
    }

    /// A home in memory where the system has such a place: thousands of small sites come and go faster there.
    fn quick() -> Self {
        let memory = Path::new("/dev/shm");
        if memory.is_dir() { Self::in_folder(memory) } else { Self::new() }
    }

    fn in_folder(folder: &Path) -> Self {
        let kept = tempfile::tempdir_in(folder).unwrap();
        let root = kept.path().canonicalize().unwrap();
        fs::create_dir(root.join("book")).unwrap();
        Self { _kept: kept, root }
    }

    fn target(&self, to: &str) -> Target {
        Target::resolve(Path::new(to), &self.root, Path::new("book")).unwrap()
    }

    fn publish(&self, book: &Book) -> Result<Outcome, Failure> {
        super::publish(book, &self.target("site"), &|| {})
    }

    fn publish_on(&self, disk: &dyn Disk, book: &Book) -> Result<Outcome, Failure> {
        // One thread, so that the n-th act is the same one in every run.
        static ONE_THREAD: LazyLock<rayon::ThreadPool> = LazyLock::new(|| rayon::ThreadPoolBuilder::new().num_threads(1).build().unwrap());
        ONE_THREAD.install(|| publish_on(disk, book, &self.target("site"), &|| {}))
    }

    fn site(&self) -> PathBuf {
        self.root.join("site")
    }

    fn write(&self, path: &str, text: &str) {
        let whole = self.root.join(path);
        fs::create_dir_all(whole.parent().unwrap()).unwrap();
        fs::write(whole, text).unwrap();
    }

    fn names(&self) -> Vec<String> {
        let mut names: Vec<_> = fs::read_dir(&self.root).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }
}

/// Everything below a folder by relative path: `dir`, `link -> target`, or the text.
fn content(folder: &Path) -> BTreeMap<String, String> {
    walk(folder, &|path, metadata| {
        if metadata.is_dir() {
            "dir".to_owned()
        } else if metadata.is_symlink() {
            format!("link -> {}", fs::read_link(path).unwrap().display())
        } else {
            String::from_utf8_lossy(&fs::read(path).unwrap()).into_owned()
        }
    })
}

/// As `content`, with numbers, permissions and times: equal only when nothing at all was touched.
fn touched(folder: &Path) -> BTreeMap<String, String> {
    let content = content(folder);
    let facts =
        walk(folder, &|_, metadata| format!("{} {:o} {}.{}", metadata.ino(), metadata.mode(), metadata.mtime(), metadata.mtime_nsec()));
    facts.into_iter().map(|(path, facts)| (path.clone(), format!("{facts} {}", content[&path]))).collect()
}

fn walk(folder: &Path, tell: &dyn Fn(&Path, &fs::Metadata) -> String) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    for entry in walkdir::WalkDir::new(folder) {
        let entry = entry.unwrap();
        let path = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().to_owned();
        found.insert(path, tell(entry.path(), &entry.path().symlink_metadata().unwrap()));
    }
    found
}

/// What a site folder holds when exactly these pages and these other things are in it.
fn expected(book: &Book, others: &[(&str, &str)]) -> BTreeMap<String, String> {
    let mut list = super::list::List::default();
    let mut all = BTreeMap::from([(String::new(), "dir".to_owned())]);
    let mut add = |path: &str, text: &str| {
        for folder in super::survey::folders_above(path) {
            all.insert(folder.to_str().unwrap().to_owned(), "dir".to_owned());
        }
        all.insert(path.to_owned(), text.to_owned());
    };
    let made: Vec<Made> = book.0.iter().filter(|(path, _)| *path != SUMS).map(|(path, bytes)| Made::of(path, bytes)).collect();
    for (path, bytes) in &book.0 {
        let sums = (path == SUMS).then(|| book.close(path, &made).unwrap());
        let bytes = sums.as_ref().unwrap_or(bytes);
        list.add(path, blake3::hash(bytes));
        add(path, std::str::from_utf8(bytes).unwrap());
    }
    add(super::list::LIST_FILE, std::str::from_utf8(&list.to_bytes()).unwrap());
    for (path, text) in others {
        add(path, text);
    }
    all
}
