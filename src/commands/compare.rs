//! `whybake compare`

mod lines;
mod report;

use std::path::{Path, PathBuf};

use clap::Args;

use super::exit::Exit;
use super::knowledge::load_rules;
use super::output::{complain, print};
use crate::rule_set::RuleSet;
use crate::settings::TestsPolicy;
use report::Report;

/// Tell what a change of the rules does to past cases
///
/// Diagnoses every case with the old and with the new rules, on all cores, and tells which cases get another leader, the
/// largest changes of probability, and the cases that the new rules refuse. Rule tests are not run. Ends with exit code 0
/// when no leader changed, no case is newly refused and no line is faulty; else with 1.
#[derive(Debug, Args)]
pub(super) struct Compare {
    /// Folder of the old rules, or `embedded` for those that the program carries
    #[arg(value_name = "OLD")]
    old: PathBuf,
    /// Folder of the new rules, or `embedded`
    #[arg(value_name = "NEW")]
    new: PathBuf,
    /// File with one case a line as JSON, or one record a line with the case as its member `case`; `-` reads standard input
    #[arg(long, value_name = "FILE.ndjson")]
    cases: PathBuf,
    /// Print one JSON object with every case that changes
    #[arg(long)]
    json: bool,
    /// Most cases that the text tells in full; the summary counts all
    #[arg(long, value_name = "NUMBER", default_value_t = 20)]
    most: usize,
}

impl Compare {
    pub(super) fn run(self) -> Result<(), Exit> {
        let (old, new) = (load(&self.old)?, load(&self.new)?);
        let mut report = Report::new(&old, &new);
        lines::compare(&self.cases, &old, &new, &mut report).map_err(|error| {
            complain(format_args!("{}: cannot be read: {error}", self.cases.display()));
            Exit::Failed
        })?;
        report.sort();
        let text = if self.json { report.json()? } else { report.text(self.most) };
        print(text.as_bytes())?;
        if report.is_bad() { Err(Exit::Faulty) } else { Ok(()) }
    }
}

fn load(rules: &Path) -> Result<RuleSet, Exit> {
    load_rules((rules != Path::new("embedded")).then_some(rules), TestsPolicy::Ignored)
}
