//! `whybake diagnose`

use std::path::PathBuf;

use clap::Args;

use super::exit::Exit;
use super::input::{in_a_line, read_input};
use super::knowledge::load_rules;
use super::output::{complain, print, width};
use crate::case::{Case, CaseFaults};
use crate::diagnosis::{Diagnosis, render};
use crate::settings::TestsPolicy;

/// Diagnose one case
#[derive(Debug, Args)]
pub(super) struct Diagnose {
    /// File with the case as JSON; `-` reads standard input
    #[arg(value_name = "CASE.json")]
    case: PathBuf,
    /// Print the JSON that the HTTP service answers, byte for byte
    #[arg(long)]
    json: bool,
    /// Folder of a rule pack, in place of the rules that the program carries
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
}

impl Diagnose {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = load_rules(self.rules.as_deref(), TestsPolicy::Ignored)?.diagnostician;
        let text = read_input(&self.case)?;
        let case = Case::parse(&text, diagnostician.knowledge()).map_err(|faults| {
            explain(&faults);
            Exit::Faulty
        })?;
        let diagnosis = diagnostician.diagnose(case).map_err(|fault| {
            complain(fault);
            Exit::Faulty
        })?;
        if self.json { print(&json(&diagnosis)?) } else { print(render(&diagnosis, width()).as_bytes()) }
    }
}

fn json(diagnosis: &Diagnosis<'_>) -> Result<Vec<u8>, Exit> {
    diagnosis.to_json().map_err(|error| {
        complain(format_args!("the diagnosis cannot be written as JSON: {error}"));
        Exit::Failed
    })
}

pub(super) fn explain(faults: &CaseFaults) {
    match faults {
        CaseFaults::Malformed(_) => complain(faults),
        CaseFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(in_a_line(fault, "the case"))),
    }
}
