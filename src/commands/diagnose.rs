//! `whybake diagnose`

use std::path::PathBuf;

use clap::Args;

use super::exit::Exit;
use super::input::{in_a_line, read_case};
use super::knowledge::load_rules;
use super::output::{complain, print, width};
use crate::case::{Case, CaseFaults};
use crate::diagnosis::{Diagnosis, render};
use crate::replay::write_record;
use crate::settings::TestsPolicy;

/// Diagnose one case
#[derive(Debug, Args)]
pub(super) struct Diagnose {
    /// File with the case as JSON, or a record or a rule test with the case as its member `case`; `-` reads standard input
    #[arg(value_name = "CASE.json")]
    case: PathBuf,
    /// Print the JSON that the HTTP service answers, byte for byte
    #[arg(long, conflicts_with = "record")]
    json: bool,
    /// Print a record on one line, with the case, the answer and the version of the program, for `whybake replay` and
    /// `whybake compare`
    #[arg(long)]
    record: bool,
    /// Folder of a rule pack, in place of the rules that the program carries
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
}

impl Diagnose {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = load_rules(self.rules.as_deref(), TestsPolicy::Ignored)?.diagnostician;
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
        if self.json {
            return print(&json(&diagnosis)?);
        }
        print(render(&diagnosis, &diagnostician.knowledge().declared, width()).as_bytes())
    }
}

fn json(diagnosis: &Diagnosis<'_>) -> Result<Vec<u8>, Exit> {
    diagnosis.to_json().map_err(|error| {
        complain(format_args!("the diagnosis cannot be written as JSON: {error}"));
        Exit::Failed
    })
}

pub(super) fn explain(faults: &CaseFaults) {
    explain_of(faults, "the case");
}

/// Tells the faults of a document that people call `whole`.
pub(super) fn explain_of(faults: &CaseFaults, whole: &str) {
    match faults {
        CaseFaults::Malformed(detail) => complain(format_args!("{whole} is not JSON: {detail}")),
        CaseFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(in_a_line(fault, whole))),
    }
}
