//! Writing to standard output and standard error.

use std::fmt::Display;
use std::io::{self, ErrorKind, Write};

use serde::Serialize;

use super::exit::Exit;

/// Writes to standard output. A reader that has seen enough and closes the pipe is no failure.
pub(super) fn print(bytes: &[u8]) -> Result<(), Exit> {
    let mut output = io::stdout().lock();
    match output.write_all(bytes).and_then(|()| output.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            complain(format_args!("the output cannot be written: {error}"));
            Err(Exit::Failed)
        }
        _ => Ok(()),
    }
}

/// Writes an answer as JSON.
pub(super) fn print_json(answer: &impl Serialize) -> Result<(), Exit> {
    let json = serde_json::to_vec(answer).map_err(|error| {
        complain(format_args!("the answer cannot be written as JSON: {error}"));
        Exit::Failed
    });
    print(&json?)
}

/// Writes a line to standard error. When even that fails, the exit code must tell.
pub(super) fn complain(line: impl Display) {
    let _ = writeln!(io::stderr().lock(), "{line}");
}

/// Width of the text when the terminal does not tell its own, characters.
const USUAL_WIDTH: usize = 80;

/// The width that the shell tells.
pub(super) fn width() -> usize {
    std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok()).unwrap_or(USUAL_WIDTH)
}
