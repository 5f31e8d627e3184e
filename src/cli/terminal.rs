//! Standard output and standard error: what goes where, in colour or not, how wide, and what a closed pipe means.

use std::io::{self, IsTerminal, Write};

use super::args::ColorChoice;
use super::failure::{Failure, in_plain_words};

/// Wider lines are hard to read, however wide the window is.
const MOST_COLUMNS: usize = 120;

/// The width of what does not go to a terminal.
const USUAL_COLUMNS: usize = 80;

/// The person's terminal, or what stands in its place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Terminal {
    /// Whether to colour standard output.
    pub(super) color: bool,
    /// How many columns standard output has.
    pub(super) columns: usize,
    /// Whether somebody looks at standard error, so that progress is worth showing.
    pub(super) watched: bool,
}

impl Terminal {
    /// Asks the system once.
    pub(super) fn of(choice: ColorChoice) -> Self {
        let shown = io::stdout().is_terminal();
        // https://no-color.org: any text but the empty one turns colour off.
        let set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
        let plain = set("NO_COLOR") || std::env::var_os("TERM").is_some_and(|kind| kind == "dumb");
        let color = match choice {
            ColorChoice::Always => true,
            ColorChoice::Never => false,
            ColorChoice::Auto => shown && !plain,
        };
        let columns = if shown { window_columns().unwrap_or(USUAL_COLUMNS).min(MOST_COLUMNS) } else { USUAL_COLUMNS };
        Self { color, columns, watched: io::stderr().is_terminal() }
    }

    /// Prints what was asked for to standard output.
    ///
    /// # Errors
    /// When it cannot be written; a reader who has read enough and gone is no error.
    pub(super) fn print(self, text: &str) -> Result<(), Failure> {
        let mut out = io::stdout().lock();
        match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
            Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
                let (why, remedy) = in_plain_words(&error);
                let failure = Failure::new(format!("cannot write to standard output: {why}"));
                Err(remedy.into_iter().fold(failure, Failure::help))
            }
            _ => Ok(()),
        }
    }

    /// Tells something beside it on standard error.
    pub(super) fn tell(self, text: &str) {
        // Nobody is left to tell when this fails.
        drop(writeln!(io::stderr().lock(), "{text}"));
    }
}

#[cfg(unix)]
fn window_columns() -> Option<usize> {
    let size = rustix::termios::tcgetwinsize(io::stdout()).ok()?;
    (size.ws_col > 0).then_some(usize::from(size.ws_col))
}

#[cfg(not(unix))]
fn window_columns() -> Option<usize> {
    None
}
