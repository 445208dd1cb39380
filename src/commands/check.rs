//! `whybake check`

mod report;

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::exit::Exit;
use super::knowledge::read_rules;
use super::output::print;
use crate::rules::load;
use report::Report;

/// Check a rule pack
///
/// Loads the rules and tells every fault and warning with its place. Without a folder it checks the rules that the
/// program carries.
#[derive(Debug, Args)]
pub(super) struct Check {
    /// Folder of the rule pack
    #[arg(value_name = "DIR")]
    dir: Option<PathBuf>,
    /// Form of the report
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

/// Form of a report.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Format {
    /// For people
    Text,
    /// For programs: one JSON object
    Json,
    /// Workflow commands that mark the places in a pull request
    Github,
}

impl Check {
    pub(super) fn run(self) -> Result<(), Exit> {
        let report = Report::new(read_rules(self.dir.as_deref()).and_then(|files| load(&files)));
        let text = match self.format {
            Format::Text => report.text(),
            Format::Json => report.json(),
            Format::Github => report.github(self.dir.as_deref()),
        };
        print(text.as_bytes())?;
        if report.has_faults() { Err(Exit::Faulty) } else { Ok(()) }
    }
}
