//! `whybake replay`

use std::path::PathBuf;

use clap::Args;

use super::diagnose::explain_of;
use super::exit::Exit;
use super::input::read_input;
use super::knowledge::load_rules;
use super::output::{complain, print};
use crate::replay::{Record, text};
use crate::settings::TestsPolicy;

/// Diagnose the case of a stored record again, and tell whether the answer is the same
///
/// Ends with exit code 0 when it is, else with 1.
#[derive(Debug, Args)]
pub(super) struct Replay {
    /// File with the record as JSON: `case` and `diagnosis` as they were, as `whybake diagnose --record` writes it; `-` reads
    /// standard input
    #[arg(value_name = "RECORD.json")]
    record: PathBuf,
    /// Print the JSON that the HTTP service answers, byte for byte
    #[arg(long)]
    json: bool,
    /// Folder of a rule pack, in place of the rules that the program carries
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
}

impl Replay {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = load_rules(self.rules.as_deref(), TestsPolicy::Ignored)?.diagnostician;
        let input = read_input(&self.record)?;
        let record = Record::parse(&input).map_err(|faults| {
            explain_of(&faults, "the record");
            Exit::Faulty
        })?;
        let failed = |error: serde_json::Error| {
            complain(format_args!("the replay cannot be written as JSON: {error}"));
            Exit::Failed
        };
        let replay = record.replay(&diagnostician).map_err(failed)?;
        let told = if self.json { serde_json::to_vec(&replay).map_err(failed)? } else { text(&replay).into_bytes() };
        print(&told)?;
        if replay.same_content { Ok(()) } else { Err(Exit::Faulty) }
    }
}
