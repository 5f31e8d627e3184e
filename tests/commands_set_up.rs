//! What sets a system up, as people use it: completions in a real shell, the manual page through a real formatter,
//! schemas for an editor, and the log that a code host reads.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    clippy::disallowed_methods,
    reason = "a test may fail, and reads the files of the project"
)]

#[path = "commands/program.rs"]
mod program;

use std::io::Write;
use std::process::{Command, Stdio};

use program::{Place, program};
use seamwise::source::schema::Kind;
use serde_json::Value;

/// What bash offers for the last of these words.
fn offered(script: &str, words: &[&str]) -> Vec<String> {
    let typed = words.iter().map(|word| format!("'{word}'")).collect::<Vec<_>>().join(" ");
    let ask = format!(
        "{script}\nCOMP_WORDS=({typed}); COMP_CWORD={}; COMPREPLY=(); _seamwise seamwise {:?} {:?}; printf '%s\\n' \"${{COMPREPLY[@]}}\"",
        words.len() - 1,
        words[words.len() - 1],
        words[words.len() - 2]
    );
    let run = Command::new("bash").args(["--norc", "-c", &ask]).output().unwrap();
    assert!(run.stderr.is_empty(), "{}", String::from_utf8_lossy(&run.stderr));
    String::from_utf8(run.stdout).unwrap().lines().filter(|line| !line.is_empty()).map(str::to_owned).collect()
}

#[test]
fn bash_completes_commands_options_and_words() {
    let script = Place::new().run(&["--completions", "bash"]);
    assert_eq!((script.status, script.err.as_str()), (0, ""));
    assert_eq!(offered(&script.out, &["seamwise", "ins"]), ["inspect"]);
    assert_eq!(offered(&script.out, &["seamwise", "inspect", "--ab"]), ["--about"]);
    assert_eq!(offered(&script.out, &["seamwise", "inspect", "--format", ""]), ["text", "json", "sarif"]);
    let kinds: Vec<&str> = Kind::ALL.iter().map(|kind| kind.word()).collect();
    assert_eq!(offered(&script.out, &["seamwise", "--schema", ""]), kinds);
}

#[test]
fn every_shell_has_its_completions() {
    let place = Place::new();
    for (shell, sign, word) in [
        ("zsh", "#compdef seamwise", "sarif"),
        ("fish", "complete -c seamwise", "sarif"),
        ("powershell", "Register-ArgumentCompleter", "--about"),
        ("elvish", "edit:completion", "--about"),
    ] {
        let script = place.run(&["--completions", shell]);
        assert_eq!(script.status, 0, "{}", script.err);
        for word in [sign, "tally", word] {
            assert!(script.out.contains(word), "{shell} lacks `{word}`:\n{}", script.out);
        }
    }
    assert_eq!(place.run(&["--completions", "tcsh"]).status, 2);
}

/// The formatter of manual pages warns of every word that it does not know.
#[test]
fn the_manual_page_is_formatted_without_a_warning() {
    let page = Place::new().run(&["--man"]);
    assert_eq!((page.status, page.err.as_str()), (0, ""));
    let mut groff = Command::new("groff")
        .args(["-man", "-ww", "-Tascii", "-P-cbou"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("groff is missing: apt-get install groff-base");
    groff.stdin.take().unwrap().write_all(page.out.as_bytes()).unwrap();
    let shown = groff.wait_with_output().unwrap();
    assert_eq!(String::from_utf8_lossy(&shown.stderr), "");
    let shown = String::from_utf8(shown.stdout).unwrap();
    assert!(shown.trim_start().starts_with("SEAMWISE(1)") && shown.contains(concat!("\nseamwise ", env!("CARGO_PKG_VERSION"))), "{shown}");
    let help = Place::new().run(&["--help"]).out;
    let commands: Vec<&str> = help.split_once("Commands:\n").unwrap().1.lines().map_while(|line| line.split_whitespace().next()).collect();
    assert!(commands.len() >= 4, "{help}");
    for command in commands {
        assert!(shown.contains(&format!("\n   seamwise {command} ")), "{command} is missing:\n{shown}");
    }
    for part in ["NAME", "SYNOPSIS", "COMMANDS", "OPTIONS", "EXAMPLES"] {
        assert!(shown.contains(&format!("\n{part}\n")), "{shown}");
    }
    assert!(shown.contains("Exit status: 0 no fault, 1 at least one fault"), "{shown}");
}

#[test]
fn the_program_prints_the_schemas() {
    let place = Place::new();
    for kind in Kind::ALL {
        let schema = place.run(&["--schema", kind.word()]);
        assert_eq!((schema.status, schema.err.as_str()), (0, ""));
        assert_eq!(schema.out, seamwise::source::schema::render(*kind));
    }
    let wrong = place.run(&["--schema", "recipe"]);
    assert_eq!(wrong.status, 2);
    assert!(wrong.err.contains("possible values: guidebook, procedure"), "{}", wrong.err);
}

#[test]
fn these_stand_in_place_of_a_command() {
    let place = Place::new();
    for words in
        [&["--man", "inspect"][..], &["--man", "--completions", "bash"], &["--schema"], &["inspect", "--man"], &["--color", "never"]]
    {
        let run = place.run(words);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{words:?}");
        assert!(run.err.starts_with("error: "), "{}", run.err);
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_told() {
    let full = std::fs::File::options().write(true).open("/dev/full").unwrap();
    let run = program::told(
        program(&Place::new().root).arg("--man").stdout(full).stderr(Stdio::piped()).spawn().unwrap().wait_with_output().unwrap(),
    );
    assert_eq!(run.status, 2);
    assert!(run.err.starts_with("error: cannot write to standard output: the disk is full"), "{}", run.err);
}

#[test]
fn inspect_writes_a_log_for_code_hosts() {
    let place = Place::with_course();
    let log = |run: &program::Run| serde_json::from_str::<Value>(&run.out).unwrap();
    let sound = place.run(&["inspect", "course", "--format", "sarif"]);
    assert_eq!((sound.status, sound.err.as_str()), (0, ""));
    assert!(log(&sound)["runs"][0]["results"].as_array().unwrap().iter().all(|result| result["level"] == "note"));
    place.write("course/cuts/chicken.yaml", "chicken-neck: { nome: Neck }\n");
    let faulty = place.run(&["inspect", "course", "--format", "sarif"]);
    assert_eq!((faulty.status, faulty.err.as_str()), (1, ""));
    let run = &log(&faulty)["runs"][0];
    let error = run["results"].as_array().unwrap().iter().find(|result| result["level"] == "error").unwrap();
    assert_eq!(error["ruleId"], "unknown-key");
    assert_eq!(error["locations"][0]["physicalLocation"]["artifactLocation"]["uri"], "cuts/chicken.yaml");
    assert_eq!(run["originalUriBaseIds"]["GUIDEBOOK"]["uri"], "course/");
    // No path of this machine, from wherever it is run; and the same answer each time.
    let inside = place.run_in("course/cuts", &["inspect", "--format", "sarif"]);
    assert_eq!(log(&inside)["runs"][0]["originalUriBaseIds"]["GUIDEBOOK"].get("uri"), None);
    for run in [&faulty, &inside] {
        assert!(!run.out.contains(place.root.to_str().unwrap()), "{}", run.out);
    }
    assert_eq!(place.run(&["inspect", "course", "--format", "sarif"]).out, faulty.out);
}
