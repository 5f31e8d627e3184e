//! Texts that set a system up: completions for a shell, the manual page, the schemas for an editor.
//!
//! All are made of what the program knows of itself. This file prints and writes nothing.

use clap::builder::{PossibleValuesParser, TypedValueParser};
use clap::{Args, Command, CommandFactory};
use clap_complete::Shell;
use clap_mangen::Man;
use clap_mangen::roff::{Inline, Roff, bold, roman};

use super::CommandLine;
use crate::source::schema::{self, Kind};

/// How an apostrophe is written, which not every formatter does alike; texts of the page use it.
const APOSTROPHE: &str = ".ie \\n(.g .ds Aq \\(aq\n.el .ds Aq '\n";

/// Options that stand in place of a command.
#[derive(Debug, Args)]
#[group(id = "set-up", multiple = false)]
pub(super) struct SetUp {
    /// Print completions for bash, elvish, fish, powershell or zsh
    #[arg(long, value_enum, value_name = "SHELL", exclusive = true, hide_possible_values = true, help_heading = "Set up")]
    completions: Option<Shell>,
    /// Print the manual page
    #[arg(long, exclusive = true, help_heading = "Set up")]
    man: bool,
    /// Print the JSON Schema for a kind of document, such as procedure
    #[arg(long, value_name = "KIND", value_parser = kinds(), exclusive = true, hide_possible_values = true, help_heading = "Set up")]
    schema: Option<Kind>,
}

fn kinds() -> impl TypedValueParser<Value = Kind> {
    PossibleValuesParser::new(Kind::ALL.iter().map(|kind| kind.word())).try_map(|word| {
        // Every word of the list is that of a kind; the error is for the compiler.
        Kind::ALL.iter().copied().find(|kind| kind.word() == word).ok_or("not a kind of document")
    })
}

impl SetUp {
    /// The text that was asked for.
    pub(super) fn text(&self) -> Option<String> {
        let command = CommandLine::command();
        if let Some(shell) = self.completions {
            return Some(completions(shell, command));
        }
        if self.man {
            return Some(manual(command));
        }
        self.schema.map(schema::render)
    }
}

fn completions(shell: Shell, command: Command) -> String {
    // The help leaves these words out for room; a shell offers them.
    let mut command = command.mut_args(|own| own.hide_possible_values(false));
    let mut bytes = Vec::new();
    clap_complete::generate(shell, &mut command, "seamwise", &mut bytes);
    String::from_utf8_lossy(&bytes).into_owned()
}

/// One page for the program and all its commands, in the language of `man`.
fn manual(mut command: Command) -> String {
    command.build();
    let mut text = Roff::new();
    text.control("SH", ["NAME"]);
    text.text([roman(format!("seamwise - {}", command.get_about().map(ToString::to_string).unwrap_or_default()))]);
    text.control("SH", ["SYNOPSIS"]);
    for sub in command.get_subcommands() {
        text.text([bold(usage(sub))]).control("br", []);
    }
    text.text([bold("seamwise"), roman(" --completions SHELL | --man | --schema KIND")]);
    text.control("SH", ["DESCRIPTION"]).text(about(&command));
    text.control("SH", ["COMMANDS"]);
    // The third word is the date of the page: it is left empty, for the same program gives the same page.
    let mut page = APOSTROPHE.to_owned();
    page.push_str(&format!(".TH SEAMWISE 1 \"\" \"seamwise {}\" \"User Commands\"\n", env!("CARGO_PKG_VERSION")));
    page.push_str(&text.to_roff());
    for sub in command.get_subcommands() {
        let mut text = Roff::new();
        text.control("SS", [usage(sub).as_str()]).text(about(sub));
        page.push_str(&text.to_roff());
        page.push_str(&options(sub, |own| own.is_global_set() || matches!(own.get_id().as_str(), "help" | "version")));
        page.push_str(&verbatim(sub));
    }
    page.push_str(".SH OPTIONS\n");
    page.push_str(&options(&command, |_| false));
    page.push_str(".SH EXAMPLES\n");
    page.push_str(&verbatim(&command));
    page
}

fn about(command: &Command) -> [Inline; 1] {
    [roman(format!("{}.", command.get_about().map(ToString::to_string).unwrap_or_default()))]
}

/// `seamwise inspect [OPTIONS] [DIR]`.
fn usage(command: &Command) -> String {
    command.clone().render_usage().to_string().trim_start_matches("Usage: ").to_owned()
}

/// The options of a command as a list, without those that `left_out` names.
fn options(command: &Command, left_out: impl Fn(&clap::Arg) -> bool) -> String {
    let shown = command.clone().mut_args(|own| if left_out(&own) { own.hide(true) } else { own });
    let mut bytes = Vec::new();
    drop(Man::new(shown).render_options_section(&mut bytes));
    let section = String::from_utf8_lossy(&bytes).into_owned();
    // The page has its title and its beginning already.
    section.lines().filter(|line| ![".SH", ".ie", ".el"].iter().any(|own| line.starts_with(own))).map(|line| format!("{line}\n")).collect()
}

/// What stands below the help of a command, line by line as it is.
fn verbatim(command: &Command) -> String {
    let after = command.get_after_help().map(ToString::to_string).unwrap_or_default();
    let mut text = Roff::new();
    text.control("PP", []).control("nf", []);
    text.text([roman(after.trim_start_matches("Examples:\n"))]);
    text.control("fi", []);
    text.to_roff()
}
