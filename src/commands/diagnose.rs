//! `whybake diagnose`

use std::path::PathBuf;

use clap::Args;

use super::exit::Exit;
use super::input::{in_a_line, read_case};
use super::options::{JsonOption, RulesOption};
use super::output::{complain, print, width};
use crate::case::Case;
use crate::diagnosis::render;
use crate::json::DocumentFaults;
use crate::replay::write_record;

/// Diagnose one case
#[derive(Debug, Args)]
pub(super) struct Diagnose {
    /// File with the case as JSON, or a record or a rule test with the case as its member `case`; `-` reads standard input
    #[arg(value_name = "CASE.json")]
    case: PathBuf,
    #[command(flatten)]
    json: JsonOption,
    /// Print a record on one line, with the case, the answer and the version of the program, for `whybake replay` and
    /// `whybake compare`
    #[arg(long, conflicts_with = "json")]
    record: bool,
    #[command(flatten)]
    rules: RulesOption,
}

impl Diagnose {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = self.rules.load()?.diagnostician;
        let text = read_case(&self.case)?;
        if self.record {
            return match write_record(&text, &diagnostician) {
                Ok(record) => print(&record),
                Err(faults) => {
                    explain(&faults);
                    Err(Exit::Faulty)
                }
            };
        }
        let case = Case::parse(&text, diagnostician.knowledge()).map_err(|faults| {
            explain(&faults);
            Exit::Faulty
        })?;
        let diagnosis = diagnostician.diagnose(case).map_err(|fault| {
            complain(fault);
            Exit::Faulty
        })?;
        let declared = &diagnostician.knowledge().declared;
        self.json.show(&diagnosis, || render(&diagnosis, declared, width()))
    }
}

pub(super) fn explain(faults: &DocumentFaults) {
    explain_of(faults, "the case");
}

/// Tells the faults of a document that people call `whole`.
pub(super) fn explain_of(faults: &DocumentFaults, whole: &str) {
    match faults {
        DocumentFaults::Malformed(detail) => complain(format_args!("{whole} is not JSON: {detail}")),
        DocumentFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(in_a_line(fault, whole))),
    }
}
