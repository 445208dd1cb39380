//! The `whybake` program; see [`whybake::commands`].

use std::process::ExitCode;

fn main() -> ExitCode {
    whybake::commands::run()
}
