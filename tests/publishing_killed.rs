//! The program is killed at whatever moment it is in: the site is the earlier one or the new one, whole.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    reason = "a test may fail"
)]

#[path = "commands/program.rs"]
mod program;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Stdio;
use std::time::Instant;

use program::{Place, program};

const ROUNDS: u32 = 30;

/// How many procedures the guidebook has, so that publishing takes long enough to be hit in all its parts.
const PROCEDURES: usize = 30;

fn bytes(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let files = walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap).filter(|entry| entry.file_type().is_file());
    files.map(|entry| (entry.path().strip_prefix(folder).unwrap().display().to_string(), fs::read(entry.path()).unwrap())).collect()
}

/// Two guidebooks, `one` and `two`, that differ in every page and in which pages there are.
fn place() -> Place {
    let place = Place::with_course();
    let procedure = fs::read_to_string(place.root.join("course/rabbit/legs-and-saddle.yaml")).unwrap();
    let cuts = fs::read_to_string(place.root.join("course/cuts/rabbit.yaml")).unwrap();
    for book in ["one", "two"] {
        place.write(&format!("{book}/guidebook.yaml"), &format!("title: Book {book}\nunits: metric\nlimits: us-food-code\n"));
        place.write(&format!("{book}/cuts/rabbit.yaml"), &cuts);
        for number in 0..PROCEDURES {
            let text = procedure.replace("Whole rabbit into legs", &format!("Way {number} of cutting a rabbit into legs"));
            let text = text.replace("house-cut: true", if number == 0 { "house-cut: true" } else { "house-cut: false" });
            place.write(&format!("{book}/rabbit/way-{number}-{}.yaml", if number % 5 == 0 { book } else { "both" }), &text);
        }
    }
    place
}

#[test]
fn the_site_is_whole_after_every_kill() {
    let place = place();
    let site = place.root.join("site");
    let workspace = place.root.join(".site.staging-seamwise");
    let publish = |book: &str| place.run(&["publish", book]);
    let begun = Instant::now();
    let run = publish("one");
    let usual = begun.elapsed();
    assert_eq!(run.status, 0, "{run:?}");
    let one = bytes(&site);
    assert_eq!(publish("two").status, 0);
    let two = bytes(&site);
    assert!(one.keys().any(|path| !two.contains_key(path)) && one["index.html"] != two["index.html"]);
    let (mut cut_off, mut done) = (0, 0);
    for round in 0..ROUNDS {
        if round % 2 == 1 && workspace.exists() {
            // A run that is let be clears up after the one that was cut off.
            assert_eq!(publish("one").status, 0);
            assert!(bytes(&site) == one && !workspace.exists());
        }
        let before = bytes(&site);
        let was_cut_off = workspace.exists();
        let next = if before == one { "two" } else { "one" };
        let mut child = program(&place.root).args(["publish", next]).stdout(Stdio::null()).stderr(Stdio::null()).spawn().unwrap();
        // Half of the kills are spread over a whole run, half over the time in which it writes.
        let part = f64::from(round) / f64::from(ROUNDS);
        if round % 2 == 0 {
            std::thread::sleep(usual.mul_f64(part * 1.1));
        } else {
            while !workspace.exists() && child.try_wait().unwrap().is_none() {
                std::thread::yield_now();
            }
            std::thread::sleep(usual.mul_f64(part * 0.5));
        }
        drop(child.kill());
        let status = child.wait().unwrap();
        let after = bytes(&site);
        assert!(after == one || after == two, "round {round}: neither of the two: {:?}", after.keys().collect::<Vec<_>>());
        if status.success() {
            done += 1;
        } else if workspace.exists() && !was_cut_off {
            cut_off += 1;
        }
    }
    println!("{cut_off} runs were cut off while they wrote, {done} were done");
    assert!(cut_off > 0, "no run was cut off while it wrote; {done} were done");
    assert_eq!(publish("one").status, 0);
    assert!(bytes(&site) == one);
    let mut names: Vec<_> = fs::read_dir(&place.root).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    assert_eq!(names, ["course", "one", "site", "two"]);
}
