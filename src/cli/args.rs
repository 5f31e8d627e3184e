//! What the person typed, as a plain value: this file and those below it are the only ones that know clap.
//!
//! It reads nothing but the words that it is given; what they mean for disk and terminal is for the commands.

mod set_up;

use std::ffi::OsString;
use std::path::PathBuf;

use clap::error::ErrorKind;
use clap::{CommandFactory, Parser, Subcommand, ValueEnum};
use set_up::SetUp;

use super::failure::Failure;
use super::terminal::Terminal;

/// Everything that was asked for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Arguments {
    /// Whether to colour.
    pub(super) color: ColorChoice,
    /// The command.
    pub(super) command: Command,
}

// Cases have no doc comments: clap would print each on a line of its own.

/// When to colour what is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ColorChoice {
    // On a terminal, unless NO_COLOR is set
    Auto,
    // Always
    Always,
    // Never
    Never,
}

/// How `inspect` prints its findings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum InspectFormat {
    // For people, with the lines that are meant
    Text,
    // For programs
    Json,
    // For code hosts and editors
    Sarif,
}

/// How `tally` prints its tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum TallyFormat {
    // For people, 80 columns wide
    Text,
    // For programs
    Json,
    // For a spreadsheet, one row a piece
    Csv,
}

/// How `reconcile` prints its answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ReconcileFormat {
    /// For people, 80 columns wide
    Text,
    /// For programs
    Json,
}

/// One command with its settings.
#[derive(Debug, Clone, PartialEq, Eq, Subcommand)]
pub(super) enum Command {
    /// Write a small guidebook to start from
    #[command(after_help = BEGIN_EXAMPLES)]
    Begin {
        /// A new or empty folder; folders above it are made where they are missing
        #[arg(value_name = "DIR")]
        folder: PathBuf,
    },
    /// Check a guidebook and print every finding
    #[command(after_help = INSPECT_EXAMPLES)]
    Inspect {
        /// The guidebook's folder [default: the one at or above this folder that holds guidebook.yaml, else procedures]
        #[arg(value_name = "DIR", hide_default_value = true)]
        folder: Option<PathBuf>,
        /// Explain one check instead: what it finds, why it matters, how to mend it
        #[arg(long, value_name = "CHECK", conflicts_with = "folder")]
        about: Option<String>,
        /// How to print
        #[arg(long, value_enum, default_value = "text", conflicts_with = "about")]
        format: InspectFormat,
    },
    /// Check a guidebook, then write its site
    #[command(after_help = PUBLISH_EXAMPLES)]
    Publish {
        /// The guidebook's folder [default: the one at or above this folder that holds guidebook.yaml, else procedures]
        #[arg(value_name = "DIR")]
        folder: Option<PathBuf>,
        /// Where the site goes
        #[arg(long, value_name = "FOLDER", default_value = "site")]
        to: PathBuf,
    },
    /// Print yields, times and chains as tables
    #[command(after_help = TALLY_EXAMPLES)]
    Tally {
        /// The guidebook's folder [default: the one at or above this folder that holds guidebook.yaml, else procedures]
        #[arg(value_name = "DIR")]
        folder: Option<PathBuf>,
        /// One procedure only, by its id
        #[arg(long, value_name = "ID")]
        procedure: Option<String>,
        /// How to print
        #[arg(long, value_enum, default_value = "text")]
        format: TallyFormat,
    },
    /// Say whether a table adds up, what rounding explains, which row is the likely slip
    #[command(after_help = RECONCILE_EXAMPLES)]
    Reconcile {
        /// A CSV file with the header `item`, then any of `group`, `weight`, `share`, `kind`
        #[arg(value_name = "TABLE.csv")]
        table: PathBuf,
        /// How to print
        #[arg(long, value_enum, default_value = "text")]
        format: ReconcileFormat,
    },
}

/// Why there is nothing to run.
#[derive(Debug)]
pub(super) enum Stop {
    /// Help or the version was asked for, or the words make no command.
    Told(clap::Error),
    /// A text for the system was asked for: completions, the manual page, a schema.
    Text(String),
}

impl Stop {
    /// Prints what was asked for to standard output, or what is wrong to standard error; gives the exit status.
    pub(super) fn show(&self) -> u8 {
        match self {
            Self::Told(error) => {
                // Nobody is left to tell when the terminal has gone away.
                drop(error.print());
                u8::try_from(error.exit_code()).unwrap_or(2)
            }
            Self::Text(text) => {
                let terminal = Terminal::of(ColorChoice::Never);
                terminal.print(text).map_or_else(
                    |failure: Failure| {
                        terminal.tell(&failure.to_string());
                        2
                    },
                    |()| 0,
                )
            }
        }
    }
}

/// Reads the words of the command line, the program's own name first.
///
/// # Errors
/// When they ask for a text instead of a command, or make no command.
pub(super) fn parse(words: impl IntoIterator<Item = OsString>) -> Result<Arguments, Stop> {
    let line = CommandLine::try_parse_from(words).map_err(Stop::Told)?;
    let refused = |kind, why| Stop::Told(CommandLine::command().error(kind, why));
    match (line.set_up.text(), line.command) {
        (None, Some(command)) => Ok(Arguments { color: line.color, command }),
        (Some(text), None) => Err(Stop::Text(text)),
        (None, None) => Err(refused(ErrorKind::MissingSubcommand, "a command is missing")),
        (Some(_), Some(_)) => Err(refused(ErrorKind::ArgumentConflict, "an option that prints a text for the system takes no command")),
    }
}

/// Checks cutting guides and publishes them as a site for the bench
#[derive(Debug, Parser)]
#[command(
    name = "seamwise",
    version,
    max_term_width = 100,
    after_help = EXAMPLES,
    disable_help_subcommand = true,
    arg_required_else_help = true,
    override_usage = "seamwise [OPTIONS] <COMMAND>"
)]
struct CommandLine {
    /// When to colour what is printed; auto is on a terminal, unless NO_COLOR is set
    #[arg(long, value_enum, value_name = "WHEN", default_value = "auto", global = true)]
    color: ColorChoice,
    #[command(flatten)]
    set_up: SetUp,
    #[command(subcommand)]
    command: Option<Command>,
}

const EXAMPLES: &str = "\
Examples:
  seamwise begin course        write a small guidebook into course/
  seamwise inspect course      check it
  seamwise publish course      check it and write the site into site/
  seamwise tally course        print its yield tables
  seamwise reconcile test.csv  say whether a weighed or published table adds up

Exit status: 0 no fault, 1 at least one fault, 2 the command could not do its work.";

const BEGIN_EXAMPLES: &str = "\
Examples:
  seamwise begin course
  seamwise begin shop/procedures";

const INSPECT_EXAMPLES: &str = "\
Examples:
  seamwise inspect                              the guidebook in or above this folder
  seamwise inspect course --format sarif > findings.sarif
  seamwise inspect --about shares-exceed-whole

Exit status: 0 no fault, 1 at least one fault, 2 the guidebook could not be read.";

const PUBLISH_EXAMPLES: &str = "\
Examples:
  seamwise publish                     into site/, from the guidebook in or above this folder
  seamwise publish course --to public

With a fault nothing is published, and the earlier site stays as it is. Files in the site
folder that did not come from here are kept.";

const TALLY_EXAMPLES: &str = "\
Examples:
  seamwise tally course
  seamwise tally course --procedure pork/loin-boneless
  seamwise tally course --format csv > yields.csv";

const RECONCILE_EXAMPLES: &str = "\
Examples:
  seamwise reconcile carcass.csv
  seamwise reconcile carcass.csv --format json

The table has a header, then a row for each piece:

  item,group,weight,share,kind
  Lean,,6.40,64,
  Fat,,2.10,21,
  Bone,,1.50,15,
  Shoulder,,10.00,100,total

`share` is in percent. `kind` is `part` when left out, `subtotal` (of its group) or `total`.
Weights are bare numbers, or have a unit: `2.5 kg`, `18 lb 10 oz`.

Exit status: 0 the table adds up, 1 it does not, 2 it could not be read.";

#[cfg(test)]
mod tests {
    use super::*;

    fn read(line: &str) -> Result<Arguments, Stop> {
        parse(std::iter::once("seamwise").chain(line.split_whitespace()).map(OsString::from))
    }

    impl Stop {
        fn exit_code(&self) -> i32 {
            if let Self::Told(error) = self { error.exit_code() } else { 0 }
        }

        fn text(&self) -> String {
            match self {
                Self::Told(error) => error.to_string(),
                Self::Text(text) => text.clone(),
            }
        }
    }

    #[test]
    fn the_command_line_is_well_formed() {
        CommandLine::command().debug_assert();
    }

    #[test]
    fn reads_each_command_with_its_defaults() {
        let command = |line| read(line).unwrap().command;
        assert_eq!(command("begin course"), Command::Begin { folder: "course".into() });
        assert_eq!(command("inspect"), Command::Inspect { folder: None, about: None, format: InspectFormat::Text });
        assert_eq!(command("publish"), Command::Publish { folder: None, to: "site".into() });
        assert_eq!(
            command("tally a --procedure pork/loin --format csv"),
            Command::Tally { folder: Some("a".into()), procedure: Some("pork/loin".into()), format: TallyFormat::Csv }
        );
        assert_eq!(command("reconcile a.csv"), Command::Reconcile { table: "a.csv".into(), format: ReconcileFormat::Text });
        assert_eq!(read("inspect --color never").unwrap().color, ColorChoice::Never);
        assert_eq!(read("--color always inspect").unwrap().color, ColorChoice::Always);
    }

    #[test]
    fn wrong_use_exits_with_two_and_help_with_zero() {
        for line in
            ["", "inspekt", "begin", "inspect --format xml", "inspect --to x", "inspect --about a folder", "publish a b", "reconcile"]
        {
            assert_eq!(read(line).unwrap_err().exit_code(), 2, "{line}");
        }
        for line in ["--help", "--version", "begin --help", "inspect --help", "publish --help", "tally -h", "reconcile -h"] {
            assert_eq!(read(line).unwrap_err().exit_code(), 0, "{line}");
        }
    }

    #[test]
    fn each_help_shows_examples() {
        for line in ["--help", "begin --help", "inspect --help", "publish --help", "tally --help", "reconcile --help"] {
            let text = read(line).unwrap_err().text();
            assert!(text.contains("Examples:\n  seamwise "), "{text}");
        }
    }
}
