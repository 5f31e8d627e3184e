//! Publishing as it is typed: what is written, kept and refused, and that the site is whole whatever happens.
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

use program::{Place, program, told};

const PROCEDURE: &str = "course/rabbit/legs-and-saddle.yaml";

/// Every file below a folder by relative path, with its bytes.
fn bytes(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    for entry in walkdir::WalkDir::new(folder) {
        let entry = entry.unwrap();
        if entry.file_type().is_file() {
            let path = entry.path().strip_prefix(folder).unwrap().to_str().unwrap().to_owned();
            found.insert(path, fs::read(entry.path()).unwrap());
        }
    }
    found
}

/// The time of each file.
fn times(folder: &Path) -> BTreeMap<String, std::time::SystemTime> {
    bytes(folder).into_keys().map(|path| (path.clone(), fs::metadata(folder.join(path)).unwrap().modified().unwrap())).collect()
}

/// The demo guidebook, in `procedures`.
fn with_demo() -> Place {
    let place = Place::new();
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("procedures");
    for (path, bytes) in bytes(&demo) {
        let whole = place.root.join("procedures").join(path);
        fs::create_dir_all(whole.parent().unwrap()).unwrap();
        fs::write(whole, bytes).unwrap();
    }
    place
}

fn names(place: &Place) -> Vec<String> {
    let mut names: Vec<_> = fs::read_dir(&place.root).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}

#[test]
fn the_demo_becomes_a_site_and_the_same_site_anywhere() {
    let (one, other) = (with_demo(), with_demo());
    let run = one.run(&["publish"]);
    assert_eq!(run.status, 0, "{run:?}");
    assert!(run.out.ends_with("\nOpen site/index.html\n"), "{}", run.out);
    assert!(run.err.starts_with("done in "), "{}", run.err);
    assert_eq!(other.run_in("procedures/pork", &["publish", "--to", "../../deep/er"]).status, 0);
    let (site, same) = (bytes(&one.root.join("site")), bytes(&other.root.join("deep/er")));
    assert!(site.len() > 20 && site.contains_key("index.html") && site.contains_key("seamwise-files.txt"));
    assert_eq!(site.keys().collect::<Vec<_>>(), same.keys().collect::<Vec<_>>());
    assert!(site == same, "the bytes depend on where the guidebook lies");
    let here = one.root.to_str().unwrap();
    for (path, bytes) in &site {
        assert!(!String::from_utf8_lossy(bytes).contains(here), "{path} names a folder of this machine");
    }
    assert_eq!(names(&one), ["procedures", "site"]);
}

#[test]
fn a_second_publish_writes_nothing_and_a_change_writes_what_changed() {
    let place = with_demo();
    assert_eq!(place.run(&["publish"]).status, 0);
    let site = place.root.join("site");
    let first = times(&site);
    let again = place.run(&["publish"]);
    assert!(again.out.contains(": nothing changed\n"), "{}", again.out);
    assert_eq!(times(&site), first);

    place.edit("procedures/lamb/leg-seam-boned.yaml", "title: Leg of lamb, seam-boned", "title: Leg of lamb along its seams");
    let changed = place.run(&["publish"]);
    assert_eq!(changed.status, 0, "{changed:?}");
    let second = times(&site);
    let untouched = first.iter().filter(|(path, time)| second.get(*path) == Some(time)).count();
    assert!(untouched > first.len() / 2 && untouched < first.len(), "{untouched} of {} stayed", first.len());
    assert!(first.iter().any(|(path, time)| path.contains("eight-pieces") && second.get(path) == Some(time)), "{second:?}");
}

#[test]
fn a_procedure_that_goes_takes_its_pages_along_and_nothing_else() {
    let place = with_demo();
    place.write("site/CNAME", "guides.example");
    place.write("site/.git/HEAD", "ref: main");
    assert_eq!(place.run(&["publish"]).status, 0);
    let before = bytes(&place.root.join("site"));
    fs::remove_file(place.root.join("procedures/lamb/leg-seam-boned.yaml")).unwrap();
    fs::remove_file(place.root.join("procedures/cuts/lamb.yaml")).unwrap();
    let lesson = "  - name: A leg by its seams\n    procedures: [lamb/leg-seam-boned]\n    aims: Seams are opened with the fingers before the knife. One node is found and put away whole.\n";
    place.edit("procedures/courses/first-six-months.yaml", lesson, "");
    let run = place.run(&["publish"]);
    assert!(run.out.contains(" removed\n"), "{run:?}");
    let after = bytes(&place.root.join("site"));
    let gone: Vec<&String> = before.keys().filter(|path| !after.contains_key(*path)).collect();
    assert!(!gone.is_empty() && gone.iter().all(|path| path.contains("lamb") || path.starts_with("search/")), "{gone:?}");
    assert_eq!(after["CNAME"], b"guides.example");
    assert_eq!(after[".git/HEAD"], b"ref: main");
}

#[test]
fn with_a_fault_nothing_is_published() {
    let place = Place::with_course();
    assert_eq!(place.run(&["publish", "course"]).status, 0);
    let before = (bytes(&place.root.join("site")), times(&place.root.join("site")));
    place.edit(PROCEDURE, "share: 34–38 %, pieces: 2", "share: 101–103 %, pieces: 2");
    let run = place.run(&["publish", "course"]);
    assert_eq!(run.status, 1);
    assert!(run.out.contains("fault["), "{}", run.out);
    assert_eq!(run.err, "nothing is published; site is as it was\n");
    assert_eq!((bytes(&place.root.join("site")), times(&place.root.join("site"))), before);
    let elsewhere = place.run(&["publish", "course", "--to", "new"]);
    assert_eq!((elsewhere.status, elsewhere.err.as_str()), (1, "nothing is published\n"));
    assert_eq!(names(&place), ["course", "site"]);
}

#[test]
fn folders_that_cannot_be_the_site_are_refused_by_name() {
    let place = Place::with_course();
    place.write("mine/index.html", "mine");
    place.write("file", "mine");
    let before = bytes(&place.root);
    for (to, told) in [
        ("course", "is the guidebook itself"),
        ("course/rabbit", "holds files of the guidebook"),
        (".", "the guidebook lies inside"),
        ("mine", "`index.html` stands where a page would go"),
        ("file", "this is a file"),
        ("file/site", "this is a file"),
    ] {
        let run = place.run(&["publish", "course", "--to", to]);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{to}");
        assert!(
            run.err.starts_with("error: ") && run.err.contains(told) && run.err.contains(&format!("at: {}", to.trim_end_matches("/site"))),
            "{to}: {}",
            run.err
        );
        assert!(run.err.contains("\n help: "), "{}", run.err);
    }
    assert!(bytes(&place.root) == before);
    assert_eq!(names(&place), ["course", "file", "mine"]);
}

#[test]
fn a_site_inside_the_guidebook_is_no_part_of_it() {
    let place = Place::with_course();
    for _ in 0..2 {
        assert_eq!(place.run_in("course", &["publish"]).status, 0);
    }
    assert!(place.root.join("course/site/index.html").is_file());
    assert_eq!(place.run(&["inspect", "course"]).out, "no faults\n");
}

#[test]
fn a_theme_that_is_not_there_is_told() {
    let place = Place::with_course();
    place.edit("course/guidebook.yaml", "units: metric", "units: metric\ntheme: papyrus");
    let run = place.run(&["publish", "course"]);
    assert_eq!(run.status, 1);
    assert!(run.out.starts_with("fault[theme-unknown]: `papyrus` is neither a built-in theme nor a folder"), "{}", run.out);
    assert_eq!(names(&place), ["course"]);
}

/// A file size limit stands for a disk that has no room left for a large page; the signal that comes with it is ignored.
#[cfg(target_os = "linux")]
#[test]
fn a_write_that_fails_leaves_the_earlier_site() {
    let place = with_demo();
    assert_eq!(place.run(&["publish"]).status, 0);
    let before = (bytes(&place.root.join("site")), times(&place.root.join("site")));
    place.edit("procedures/guidebook.yaml", "title: Cutting guides of the Fennick Yard", "title: Cutting guides");
    let limited = format!("trap '' XFSZ; ulimit -f 8; exec '{}' publish", env!("CARGO_BIN_EXE_seamwise"));
    let run = told(std::process::Command::new("sh").args(["-c", &limited]).current_dir(&place.root).output().unwrap());
    assert_eq!(run.status, 2, "{run:?}");
    assert!(run.err.starts_with("error: cannot write the page: ") && run.err.contains("at: site/"), "{}", run.err);
    assert_eq!((bytes(&place.root.join("site")), times(&place.root.join("site"))), before);
    assert_eq!(names(&place), ["procedures", "site"]);
    assert_eq!(place.run(&["publish"]).status, 0);
}

#[test]
fn two_runs_at_once_leave_one_whole_site() {
    let place = with_demo();
    let start =
        || program(&place.root).arg("publish").stdout(std::process::Stdio::piped()).stderr(std::process::Stdio::piped()).spawn().unwrap();
    let runs: Vec<_> = [start(), start(), start()].into_iter().map(|child| told(child.wait_with_output().unwrap())).collect();
    assert!(runs.iter().any(|run| run.status == 0), "{runs:?}");
    for run in &runs {
        assert!(run.status == 0 || run.err.contains("another run is publishing into the same folder"), "{run:?}");
    }
    let site = bytes(&place.root.join("site"));
    assert_eq!(place.run(&["publish", "--to", "alone"]).status, 0);
    assert!(site == bytes(&place.root.join("alone")));
    assert_eq!(names(&place), ["alone", "procedures", "site"]);
}
