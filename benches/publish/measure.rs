//! Measures publishing at several sizes beside what cannot be saved: reading and parsing the same files, writing the
//! same bytes. Also `inspect` alone, one guide edited, peak memory, and what the time is spent on.
//!
//! `cargo bench --bench publish` takes 100 and 1,000 procedures; `cargo bench --bench publish -- 10000` that size alone.
//! Times are medians of several runs, taken in turns, so that a busy machine slows all alike. It writes into
//! `target/publish-bench`; a procedure takes some 2 MB there while it runs.
#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::disallowed_methods,
    reason = "a measurement may fail, prints, and reads the clock and the disk"
)]

#[allow(dead_code, reason = "records for search are not measured here")]
#[path = "../search/corpus.rs"]
mod corpus;
mod floor;
mod generate;
mod guide;
mod phases;
mod program;
mod texts;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::Duration;

use program::{Run, Whose, run, work_so_far};

/// Where no sizes are named.
const SIZES: [usize; 2] = [100, 1_000];

fn main() {
    // Cargo adds `--bench`.
    let named: Vec<usize> = std::env::args().skip(1).filter_map(|word| word.replace([',', '_'], "").parse().ok()).collect();
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/publish-bench");
    for size in if named.is_empty() { SIZES.to_vec() } else { named } {
        let folder = root.join(size.to_string());
        let _ = fs::remove_dir_all(&folder);
        measure(size, &folder);
        let _ = fs::remove_dir_all(&folder);
    }
}

/// The folders of one run. Each has its own, because a disk is slower where files have just been removed.
struct Folders {
    book: PathBuf,
    site: PathBuf,
    floor: PathBuf,
}

impl Folders {
    fn of(folder: &Path, run: usize) -> Self {
        Self { book: folder.join("procedures"), site: folder.join(format!("site-{run}")), floor: folder.join(format!("floor-{run}")) }
    }
}

fn measure(size: usize, folder: &Path) {
    let book = Folders::of(folder, 0).book;
    let files = generate::guidebook(size);
    let input: usize = files.values().map(Vec::len).sum();
    floor::write(&book, &files);
    drop(files);
    println!("\n## {} procedures: {} of input", thousands(size), megabytes(input));

    let mut all: BTreeMap<&str, Vec<Run>> = BTreeMap::new();
    let mut output = 0;
    for run_number in 0..if size > 2_000 { 3 } else { 5 } {
        let folders = Folders::of(folder, run_number);
        let mut add = |name, run| all.entry(name).or_default().push(run);
        add("publish", publish(&folders));
        let (took, bytes) = floor_of(&folders);
        output = bytes;
        add("floor", took);
        add("inspect", run(&["inspect", &shown(&folders.book)]));
        add("nothing changed", publish(&folders));
        let edit = Edit::make(&folders.book);
        add("one guide edited", publish(&folders));
        edit.undo();
    }
    let (floor, floor_work) = (median(&all["floor"], |run| run.wall), median(&all["floor"], |run| run.work));
    println!("output {}; medians of {} runs; processor time is that of all cores together:", megabytes(output), all["floor"].len());
    for name in ["floor", "inspect", "publish", "one guide edited", "nothing changed"] {
        let runs = &all[name];
        let (wall, work) = (median(runs, |run| run.wall), median(runs, |run| run.work));
        let ratio = |of: Duration, floor: Duration| of.as_secs_f64() / floor.as_secs_f64();
        let (ratio, work_ratio) = (ratio(wall, floor), ratio(work, floor_work));
        let peak = median(runs, |run| run.peak);
        let memory = if peak == 0 {
            String::new()
        } else {
            format!("; peak memory {}, {:.1} of input", megabytes(peak), peak as f64 / input as f64)
        };
        println!("  {name:17} {}, {ratio:5.2} of the floor; processor {}, {work_ratio:5.2}{memory}", seconds(wall), seconds(work));
    }
    phases::print(&book);
}

fn publish(folders: &Folders) -> Run {
    run(&["publish", &shown(&folders.book), "--to", &shown(&folders.site)])
}

/// The floor, with the bytes of the published site.
fn floor_of(folders: &Folders) -> (Run, usize) {
    let pages = floor::read(&folders.site);
    let bytes = pages.values().map(Vec::len).sum();
    let before = work_so_far(Whose::Own);
    let wall = floor::floor(&folders.book, &pages, &folders.floor);
    let work = work_so_far(Whose::Own) - before;
    (Run { wall, work, peak: 0 }, bytes)
}

/// One guide with a word changed in one sentence.
struct Edit {
    path: PathBuf,
    before: String,
}

impl Edit {
    fn make(book: &Path) -> Self {
        let mut texts = walk(book).into_iter().filter_map(|path| fs::read_to_string(&path).ok().map(|text| (path, text)));
        let (guide, before) = texts.rfind(|(_, text)| text.contains("\nsteps:\n")).unwrap();
        let after = before.replacen("      Wipe the board", "      Dry the board", 1).replacen("The other hand", "Your other hand", 1);
        assert_ne!(before, after, "an edit changes something");
        fs::write(&guide, after).unwrap();
        Self { path: guide, before }
    }

    fn undo(self) {
        fs::write(self.path, self.before).unwrap();
    }
}

/// All files below a folder, sorted.
pub(crate) fn walk(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut open = vec![folder.to_path_buf()];
    while let Some(folder) = open.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let entry = entry.unwrap();
            if entry.file_type().unwrap().is_dir() { open.push(entry.path()) } else { found.push(entry.path()) }
        }
    }
    found.sort();
    found
}

fn median<T: Ord + Copy>(runs: &[Run], of: impl Fn(&Run) -> T) -> T {
    let mut all: Vec<T> = runs.iter().map(of).collect();
    all.sort();
    all[all.len() / 2]
}

fn shown(path: &Path) -> String {
    path.display().to_string()
}

pub(crate) fn megabytes(bytes: usize) -> String {
    format!("{:.1} MB", bytes as f64 / 1e6)
}

fn thousands(count: usize) -> String {
    if count < 1_000 { count.to_string() } else { format!("{},{:03}", count / 1_000, count % 1_000) }
}

/// Seconds with thousandths.
pub(crate) fn seconds(time: Duration) -> String {
    format!("{:8.3} s", time.as_secs_f64())
}
