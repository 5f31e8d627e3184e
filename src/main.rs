//! The program: hands the words of the command line to the library's `cli` room and leaves with its exit status.

use std::process::ExitCode;

fn main() -> ExitCode {
    seamwise::cli::run(std::env::args_os())
}
