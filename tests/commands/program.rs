//! The program under test.

use std::io::{ErrorKind, Write};
use std::process::{Command, Output, Stdio};

/// What a run of the program gave.
pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) output: String,
    pub(crate) complaints: String,
}

/// The program with arguments.
pub(crate) fn whybake(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_whybake"));
    command.args(arguments);
    command
}

/// Runs the program without input.
pub(crate) fn run(arguments: &[&str]) -> Run {
    whybake(arguments).stdin(Stdio::null()).output().unwrap().into()
}

/// Runs the program with text on its standard input.
pub(crate) fn run_with_input(arguments: &[&str], input: &str) -> Run {
    let mut command = whybake(arguments);
    let mut program = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    // A program that refuses its arguments ends without reading its input.
    if let Err(error) = program.stdin.take().unwrap().write_all(input.as_bytes()) {
        assert_eq!(error.kind(), ErrorKind::BrokenPipe);
    }
    program.wait_with_output().unwrap().into()
}

impl From<Output> for Run {
    fn from(output: Output) -> Self {
        Self {
            code: output.status.code(),
            output: String::from_utf8(output.stdout).unwrap(),
            complaints: String::from_utf8(output.stderr).unwrap(),
        }
    }
}

impl Run {
    /// The output of a run that succeeded without a complaint.
    #[track_caller]
    pub(crate) fn success(self) -> String {
        assert_eq!((self.code, self.complaints.as_str()), (Some(0), ""), "{}", self.output);
        self.output
    }
}
