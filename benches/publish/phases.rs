//! What the time goes to, phase by phase, by calling the library as the program does.
//!
//! Pages are made and dropped here; that the rest of the program's time goes to writing them follows by difference.

use std::collections::BTreeMap;
use std::hint::black_box;
use std::path::Path;
use std::sync::Mutex;
use std::time::{Duration, Instant};

use rayon::prelude::*;
use seamwise::analysis::Analysis;
use seamwise::site::{Made, Page, Site, Theme};
use seamwise::source::{Entry, Files, load};
use seamwise::{checks, model};

use crate::program::{Whose, in_memory, work_so_far};
use crate::{floor, megabytes, seconds};

/// Calls, prints how long it took, and gives what came of it.
fn phase<T>(name: &str, call: impl FnOnce() -> T) -> T {
    let (begun, before) = (Instant::now(), work_so_far(Whose::Own));
    let value = call();
    let (took, work) = (begun.elapsed(), work_so_far(Whose::Own) - before);
    println!("  {name:34} {}, processor {}, then {} in memory", seconds(took), seconds(work), megabytes(in_memory()));
    value
}

/// Runs through the phases once, in the order of the program.
pub(crate) fn print(book: &Path) {
    println!("one run through the phases, pages made and thrown away:");
    let files: Files = phase("walk and read", || floor::read(book).into_iter().map(|(path, bytes)| (path, Entry::File(bytes))).collect());
    let (mut documents, mut findings) = phase("parse into documents", || load(files));
    let (guidebook, lowered) = phase("documents into the model", || model::lower::lower(&mut documents));
    findings.extend(lowered);
    let analysis = phase("analysis", || Analysis::of(&guidebook));
    let outcome = phase("checks", || checks::run(guidebook, analysis, findings, &documents.sources));
    drop(documents);
    let checked = outcome.verdict.checked().unwrap();
    let theme = Theme::paper();
    let site = phase("theme, page list, search index", || Site::new(checked, &theme).unwrap());
    let kinds = Mutex::new(BTreeMap::new());
    let count = |path: &str, begun: Instant, bytes: usize| {
        let mut kinds = kinds.lock().unwrap();
        let kind = kinds.entry(kind_of(site.page(path).unwrap())).or_insert((0, 0, Duration::ZERO, Duration::ZERO));
        let took = begun.elapsed();
        *kind = (kind.0 + 1, kind.1 + bytes, kind.2 + took, kind.3.max(took));
    };
    let closing = site.closing();
    let first: Vec<String> = site.pages().into_iter().filter(|path| !closing.contains(path)).collect();
    let mut made: Vec<Made> = phase("pages, on all cores", || {
        let make = |path: &String| {
            let begun = Instant::now();
            let bytes = black_box(site.render(path).unwrap());
            count(path, begun, bytes.len());
            Made::of(path, &bytes)
        };
        first.par_iter().map(make).collect()
    });
    phase("pages that list all others", || {
        for path in &closing {
            let begun = Instant::now();
            let bytes = black_box(site.close(path, &made).unwrap());
            count(path, begun, bytes.len());
            made.push(Made::of(path, &bytes));
        }
    });
    println!("of it, kind by kind, all cores together:");
    let mut kinds: Vec<_> = kinds.into_inner().unwrap().into_iter().collect();
    kinds.sort_by_key(|(_, (.., took, _))| std::cmp::Reverse(*took));
    for (kind, (count, bytes, took, longest)) in kinds.into_iter().filter(|(_, (.., took, _))| took.as_millis() > 0) {
        let (each, megabytes) = (took.as_secs_f64() * 1e3 / count as f64, bytes as f64 / 1e6);
        println!(
            "  {kind:34} {}, {count:6} files, {megabytes:8.2} MB, {each:7.3} ms each, longest {:.0} ms",
            seconds(took),
            longest.as_secs_f64() * 1e3
        );
    }
}

/// The kind of a page, by its name in the code.
fn kind_of(page: &Page) -> String {
    format!("{page:?}").chars().take_while(|letter| letter.is_alphanumeric()).collect()
}
