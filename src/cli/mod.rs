//! The program: the only room that meets disk, terminal and clock. One command a file.
//!
//! A command answers with an exit status, 0 without a fault and 1 with one, or with a `Failure`, which is 2.
#![expect(clippy::disallowed_methods, reason = "what other rooms must not call is called here, and passed in to them")]

mod about;
mod args;
mod begin;
mod failure;
mod folder;
mod inspect;
mod layout;
mod progress;
mod publish;
mod read;
mod reconcile;
mod table;
mod tally;
mod terminal;
mod write;

use std::ffi::OsString;
use std::path::PathBuf;
use std::process::ExitCode;

use args::{Arguments, Command};
use failure::Failure;
use terminal::Terminal;

/// Runs one command line, the program's own name first; gives its exit status.
pub fn run(words: impl IntoIterator<Item = OsString>) -> ExitCode {
    let arguments = match args::parse(words) {
        Ok(arguments) => arguments,
        Err(stop) => return ExitCode::from(stop.show()),
    };
    let terminal = Terminal::of(arguments.color);
    match command(&arguments, terminal) {
        Ok(status) => ExitCode::from(status),
        Err(failure) => {
            terminal.tell(&failure.to_string());
            ExitCode::from(2)
        }
    }
}

fn command(arguments: &Arguments, terminal: Terminal) -> Result<u8, Failure> {
    match &arguments.command {
        Command::Begin { folder } => begin::run(folder, terminal),
        Command::Inspect { about: Some(check), .. } => about::run(check, terminal),
        Command::Inspect { folder, format, .. } => inspect::run(folder.as_deref(), *format, terminal),
        Command::Tally { folder, procedure, format } => tally::run(folder.as_deref(), procedure.as_deref(), *format, terminal),
        Command::Publish { folder, to } => publish::run(folder.as_deref(), to, terminal),
        Command::Reconcile { table, format } => reconcile::run(table, *format, terminal),
    }
}

/// The folder in which the person stands.
fn current_folder() -> Result<PathBuf, Failure> {
    std::env::current_dir().map_err(|error| {
        Failure::new(format!("cannot tell which folder this is: {}", failure::in_plain_words(&error).0))
            .help("go to a folder that is there")
    })
}
