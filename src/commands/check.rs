//! `whybake check`

mod coverage;
mod report;

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::exit::Exit;
use super::knowledge::read_rules;
use super::output::print;
use report::Report;

/// Check a rule pack
///
/// Loads the rules, runs the rule tests beside them (the files cases/*.json), and tells every fault, warning and failed
/// test with its place. Without a folder it checks the rules that the program carries. Ends with exit code 0 when there is
/// no fault and no test fails, whatever the warnings; else with 1.
#[derive(Debug, Args)]
pub(super) struct Check {
    /// Folder of the rule pack
    #[arg(value_name = "DIR")]
    dir: Option<PathBuf>,
    /// Form of the report
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    /// Do not run the rule tests
    #[arg(long)]
    no_tests: bool,
    /// Also tell what of the rules the rule tests do not reach
    ///
    /// Evidence true and false, every region, every symptom of a leading or expected cause present and absent, every
    /// prescription. Percentages are rounded down.
    #[arg(long, conflicts_with = "no_tests")]
    coverage: bool,
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

/// What to do with the rule tests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Tests {
    Skip,
    Run,
    RunWithCoverage,
}

impl Check {
    fn tests(&self) -> Tests {
        match (self.no_tests, self.coverage) {
            (true, _) => Tests::Skip,
            (false, false) => Tests::Run,
            (false, true) => Tests::RunWithCoverage,
        }
    }

    pub(super) fn run(self) -> Result<(), Exit> {
        let report = match read_rules(self.dir.as_deref()) {
            Ok(files) => Report::new(&files, self.tests()),
            Err(faults) => Report::of_faults(faults),
        };
        let text = match self.format {
            Format::Text => report.text(),
            Format::Json => report.json(),
            Format::Github => report.github(self.dir.as_deref()),
        };
        print(text.as_bytes())?;
        if report.is_bad() { Err(Exit::Faulty) } else { Ok(()) }
    }
}
