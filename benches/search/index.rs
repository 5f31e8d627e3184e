//! Writes what the comparison of search libraries reads: invented documents as JSON for the others, and our own index
//! of the same documents as scripts; also both for the demo guidebook. Prints how long our index took to make.
//!
//! `cargo bench --bench search_index` writes into `target/search-bench`; then `npm ci && node bench.mjs` beside this file.
#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a measurement may fail, prints, and reads the clock and the disk"
)]

#[path = "../../tests/search/common.rs"]
mod common;
mod corpus;

use std::path::Path;
use std::time::Instant;

use seamwise::site::search::{Index, Record, Sizes};
use serde_json::{Value, json};

fn main() {
    let target = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/search-bench");
    for count in [200, 2_000] {
        write(&target.join(count.to_string()), corpus::records(count, 8_000));
    }
    write(&target.join("demo"), common::records_of("procedures"));
}

fn write(folder: &Path, records: Vec<Record>) {
    let _ = std::fs::remove_dir_all(folder);
    std::fs::create_dir_all(folder.join("assets")).unwrap();
    let documents: Vec<Value> = records.iter().enumerate().map(|(id, record)| document(id, record)).collect();
    std::fs::write(folder.join("documents.json"), serde_json::to_vec(&documents).unwrap()).unwrap();
    let begun = Instant::now();
    let index = Index::of(records, "en");
    let scripts = common::scripts(&index, Sizes::default());
    let took = begun.elapsed();
    let bytes: usize = scripts.iter().map(|script| script.text.len()).sum();
    for script in &scripts {
        std::fs::write(folder.join("assets").join(&script.name), &script.text).unwrap();
    }
    println!(
        "{}: {} records, {} words, {} files, {bytes} bytes, made in {:.1} ms",
        folder.display(),
        index.records(),
        index.vocabulary().len(),
        scripts.len(),
        took.as_secs_f64() * 1e3
    );
}

/// What another library gets of a record.
fn document(id: usize, record: &Record) -> Value {
    let names: Vec<&str> = record.names.iter().map(|other| other.name.as_str()).collect();
    json!({ "id": id, "title": record.title, "url": record.url, "context": record.context, "names": names.join("; "),
        "text": format!("{} {}", record.text, record.notes) })
}
