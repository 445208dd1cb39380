//! How a command that does not succeed ends.

use std::process::ExitCode;

/// The exit codes, for `--help`.
pub(super) const HELP: &str = "\
Exit codes:
  0  done
  1  the case, the inputs, or the rules that were to be checked, have faults, or a rule test fails; compared rules give a
     case another leader or refuse it; a replayed record gives another answer
  2  the command line or the settings cannot be used
  3  the rules cannot be loaded, or fail their tests where these are required
  4  a file, the output or the network failed";

/// Why a command did not succeed. What there is to say has been said on standard error.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Exit {
    /// The case, the inputs, or the rules that were to be checked, have faults, or a rule test fails; compared rules give a
    /// case another leader or refuse it.
    Faulty = 1,
    /// The command line or the settings cannot be used. (The argument parser uses the same code.)
    Usage = 2,
    /// The rules cannot be loaded, or fail their tests where these are required.
    Rules = 3,
    /// A file, the output or the network failed.
    Failed = 4,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit as u8)
    }
}
