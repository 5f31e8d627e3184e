//! The commands as they are typed: what goes to which output, exit status, formats, colour.
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

use std::fs;
use std::path::Path;
use std::process::Stdio;

use program::{Place, program, told};

fn demo() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

#[test]
fn begin_says_what_to_type_next_and_that_works_here_and_inside() {
    let place = Place::new();
    let begun = place.run(&["begin", "shop/my course"]);
    assert_eq!((begun.status, begun.err.as_str()), (0, ""));
    assert!(begun.out.lines().count() <= 10, "{}", begun.out);
    let next: Vec<&str> = begun.out.lines().rev().take(2).map(str::trim).collect();
    assert!(next[1].contains(" inspect ") && next[0].contains(" publish "), "{}", begun.out);
    for folder in ["", "shop/my course", "shop/my course/rabbit"] {
        let typed = std::process::Command::new("sh").args(["-c", next[1]]).current_dir(place.root.join(folder)).output().unwrap();
        let typed = told(typed);
        assert_eq!((typed.status, typed.out.as_str(), typed.err.as_str()), (0, "no faults\n", ""), "in `{folder}`");
    }
}

#[test]
fn begin_refuses_a_folder_that_is_not_empty() {
    let place = Place::with_course();
    let before = fs::read_to_string(place.root.join("course/guidebook.yaml")).unwrap();
    let again = place.run(&["begin", "course"]);
    assert_eq!((again.status, again.out.as_str()), (2, ""));
    assert!(again.err.starts_with("error: this folder is not empty: it holds `"), "{}", again.err);
    assert!(again.err.contains("at: course"), "{}", again.err);
    assert_eq!(fs::read_to_string(place.root.join("course/guidebook.yaml")).unwrap(), before);
}

#[test]
fn inspect_exits_with_one_on_a_fault_and_prints_it_to_standard_output() {
    let place = Place::with_course();
    place.edit("course/rabbit/legs-and-saddle.yaml", "share: 34–38 %, pieces: 2", "share: 101–103 %, pieces: 2");
    let text = place.run(&["inspect", "course"]);
    assert_eq!((text.status, text.err.as_str()), (1, ""));
    assert!(text.out.contains("rabbit/legs-and-saddle.yaml"), "{}", text.out);
    assert!(text.out.lines().all(|line| line.chars().count() <= 80), "{}", text.out);

    let json = place.run(&["inspect", "course", "--format", "json"]);
    assert_eq!(json.status, 1);
    let answer: serde_json::Value = serde_json::from_str(&json.out).unwrap();
    assert!(answer["faults"].as_u64().unwrap() >= 1);
    let first = &answer["findings"][0];
    assert_eq!(first["file"], "rabbit/legs-and-saddle.yaml");
    assert_eq!(first["level"], "fault");
    for key in ["check", "line", "column", "message", "help"] {
        assert!(!first[key].is_null(), "{key} in {first}");
    }
}

#[test]
fn inspect_finds_the_guidebook_from_inside_it_and_beside_procedures() {
    let place = Place::with_course();
    assert_eq!(place.run_in("course/rabbit", &["inspect"]).out, "no faults\n");
    fs::rename(place.root.join("course"), place.root.join("procedures")).unwrap();
    assert_eq!(place.run(&["inspect"]).out, "no faults\n");
    let nowhere = Place::new().run(&["inspect"]);
    assert_eq!((nowhere.status, nowhere.out.as_str()), (2, ""));
    assert!(nowhere.err.contains("no guidebook.yaml in this folder, in one above it, or in procedures/"), "{}", nowhere.err);
}

#[test]
fn inspect_tells_of_a_check_and_offers_near_ids() {
    let place = Place::new();
    let about = place.run(&["inspect", "--about", "shares-exceed-whole"]);
    assert_eq!((about.status, about.err.as_str()), (0, ""));
    assert!(about.out.starts_with("shares-exceed-whole: fault of the group balance\n\nWhat it finds\n"), "{}", about.out);
    let wrong = place.run(&["inspect", "--about", "share-exceed-whole"]);
    assert_eq!((wrong.status, wrong.out.as_str()), (2, ""));
    assert!(wrong.err.contains("did you mean `shares-exceed-whole`"), "{}", wrong.err);
}

#[test]
fn colour_is_for_terminals_unless_asked_for() {
    let place = Place::with_course();
    place.edit("course/rabbit/legs-and-saddle.yaml", "share: 34–38 %, pieces: 2", "share: 101–103 %, pieces: 2");
    let colored = |words: &[&str], no_color: Option<&str>| {
        let mut command = program(&place.root);
        command.args(words).envs(no_color.map(|value| ("NO_COLOR", value)));
        told(command.output().unwrap()).out.contains('\u{1b}')
    };
    assert!(!colored(&["inspect", "course"], None));
    assert!(colored(&["inspect", "course", "--color", "always"], None));
    assert!(colored(&["--color", "always", "inspect", "course"], Some("1")), "what is asked for goes before the environment");
    assert!(!colored(&["inspect", "course", "--color", "never"], None));
}

#[test]
fn wrong_use_exits_with_two() {
    let place = Place::new();
    for words in [&[][..], &["inspekt"], &["tally", "--format", "xml"], &["inspect", "no-such-folder"], &["publish", "no-such-folder"]] {
        let run = place.run(words);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{words:?}");
        assert!(!run.err.is_empty());
    }
    let help = place.run(&["--help"]);
    assert_eq!((help.status, help.err.as_str()), (0, ""));
    for command in ["begin", "inspect", "publish", "tally"] {
        assert!(help.out.contains(&format!("\n  {command} ")), "{}", help.out);
    }
    assert_eq!(place.run(&["--version"]).out, concat!("seamwise ", env!("CARGO_PKG_VERSION"), "\n"));
}

#[test]
fn a_reader_who_has_gone_is_no_error() {
    let mut child = program(demo()).args(["tally", "--format", "json"]).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stdout.take());
    let run = told(child.wait_with_output().unwrap());
    assert_eq!((run.status, run.err.as_str()), (0, ""));
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_output_is_an_error() {
    let full = fs::File::options().write(true).open("/dev/full").unwrap();
    let run = told(program(demo()).arg("tally").stdout(full).output().unwrap());
    assert_eq!(run.status, 2);
    assert_eq!(run.err, "error: cannot write to standard output: the disk is full\n help: free some space, then run the command again\n");
}

#[test]
fn tally_answers_for_what_is_sound_and_exits_with_one_when_something_is_not() {
    let place = Place::with_course();
    let sound = fs::read_to_string(place.root.join("course/rabbit/legs-and-saddle.yaml")).unwrap();
    place.write("course/rabbit/second.yaml", &sound.replace("34–38 %", "101–103 %").replace("house-cut: true ", "house-cut: false "));
    let all = place.run(&["tally", "course", "--format", "json"]);
    assert_eq!(all.status, 1, "{}", all.err);
    assert_eq!(all.err, "1 procedure is not sound: rabbit/second. `seamwise inspect` says why.\n");
    let answer: serde_json::Value = serde_json::from_str(&all.out).unwrap();
    assert_eq!(answer["procedures"].as_array().unwrap().len(), 1);
    assert_eq!(answer["procedures"][0]["id"], "rabbit/legs-and-saddle");
    assert_eq!(place.run(&["tally", "course", "--procedure", "rabbit/legs-and-saddle"]).status, 0);
    assert_eq!(place.run(&["tally", "course", "--procedure", "rabbit/second"]).status, 1);
    let unknown = place.run(&["tally", "course", "--procedure", "rabbit/legs-and-sadle"]);
    assert_eq!((unknown.status, unknown.out.as_str()), (2, ""));
    assert!(unknown.err.contains("did you mean `rabbit/legs-and-saddle`?"), "{}", unknown.err);
}
