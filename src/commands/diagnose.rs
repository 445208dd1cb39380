//! `whybake diagnose`

use std::fs;
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use clap::Args;

use super::exit::Exit;
use super::knowledge::load_rules;
use super::output::{complain, print};
use crate::case::{Case, CaseFaults, Fault};
use crate::diagnosis::{Diagnosis, render};
use crate::settings::TestsPolicy;

/// Width of the text when the terminal does not tell its own, characters.
const USUAL_WIDTH: usize = 80;

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
        let diagnostician = load_rules(self.rules.as_deref(), TestsPolicy::Ignored)?;
        let text = read_case(&self.case)?;
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

fn read_case(file: &Path) -> Result<Vec<u8>, Exit> {
    let mut text = Vec::new();
    let read =
        if file == Path::new("-") { io::stdin().lock().read_to_end(&mut text).map(|_| text) } else { fs::read(file) };
    read.map_err(|error| {
        complain(format_args!("{}: cannot be read: {error}", file.display()));
        Exit::Failed
    })
}

fn json(diagnosis: &Diagnosis<'_>) -> Result<Vec<u8>, Exit> {
    diagnosis.to_json().map_err(|error| {
        complain(format_args!("the diagnosis cannot be written as JSON: {error}"));
        Exit::Failed
    })
}

/// The width that the shell tells.
fn width() -> usize {
    std::env::var("COLUMNS").ok().and_then(|columns| columns.parse().ok()).unwrap_or(USUAL_WIDTH)
}

fn explain(faults: &CaseFaults) {
    match faults {
        CaseFaults::Malformed(_) => complain(faults),
        CaseFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(line(fault))),
    }
}

/// One fault in a line: where, what, and what to do about it.
fn line(fault: &Fault) -> String {
    let place = if fault.pointer.is_empty() { "the case" } else { &fault.pointer };
    let help = fault.help.as_ref().map(|help| format!(" (help: {help})")).unwrap_or_default();
    format!("{place}: {}{help}", fault.detail)
}
