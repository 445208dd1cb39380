//! `whybake replay`

use std::path::PathBuf;

use clap::Args;

use super::diagnose::explain_of;
use super::exit::Exit;
use super::input::read_input;
use super::options::{JsonOption, RulesOption};
use super::output::complain;
use crate::replay::{Record, text};

/// Diagnose the case of a stored record again, and tell whether the answer is the same
///
/// Ends with exit code 0 when it is, else with 1.
#[derive(Debug, Args)]
pub(super) struct Replay {
    /// File with the record as JSON: `case` and `diagnosis` as they were, as `whybake diagnose --record` writes it; `-` reads
    /// standard input
    #[arg(value_name = "RECORD.json")]
    record: PathBuf,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl Replay {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = self.rules.load()?.diagnostician;
        let input = read_input(&self.record)?;
        let record = Record::parse(&input).map_err(|faults| {
            explain_of(&faults, "the record");
            Exit::Faulty
        })?;
        let replay = record.replay(&diagnostician).map_err(|error| {
            complain(format_args!("the answer cannot be written as JSON: {error}"));
            Exit::Failed
        })?;
        self.json.show(&replay, || text(&replay))?;
        if replay.same_content { Ok(()) } else { Err(Exit::Faulty) }
    }
}
