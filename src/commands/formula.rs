//! `whybake formula`

mod request;
mod text;

use std::path::PathBuf;

use clap::Args;

use super::diagnose::explain;
use super::exit::Exit;
use super::input::read_input;
use super::options::{JsonOption, RulesOption};
use crate::case::{BatchRequest, FormulaRequest, faults_of};
use crate::formulas::Weighed;
use crate::json::DocumentFaults;
use crate::science::Nonsense;

/// Compute the figures of a formula, or scale it to a batch
#[derive(Debug, Args)]
pub(super) struct Formula {
    /// File with the formula as JSON: alone (`{"ingredients": […]}`), with its product as the HTTP service takes it
    /// (`{"product": …, "formula": {…}}`), or a whole case; `-` reads standard input
    #[arg(value_name = "FILE.json")]
    file: PathBuf,
    /// Scale the main part to this mass, for example `120kg`
    #[arg(long, value_name = "MASS", conflicts_with = "pieces")]
    batch: Option<String>,
    /// Scale the dough to so many pieces
    #[arg(long, value_name = "N", requires = "piece_weight")]
    pieces: Option<u32>,
    /// Mass of one piece when baked, for example `60g`
    #[arg(long, value_name = "MASS", requires = "pieces")]
    piece_weight: Option<String>,
    /// Mass lost in baking and cooling, for example `12%`
    #[arg(long, value_name = "SHARE", requires = "pieces")]
    bake_loss: Option<String>,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl Formula {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = self.rules.load()?.diagnostician;
        let knowledge = diagnostician.knowledge();
        let text = self.request(&read_input(&self.file)?)?;
        if self.batch.is_none() && self.pieces.is_none() {
            let request = FormulaRequest::parse(&text, knowledge).map_err(told)?;
            let report = Weighed::of(&request, &knowledge.declared).map_err(told)?.report().map_err(impossible)?;
            return self.json.show(&report, || text::report(&report));
        }
        let asked = BatchRequest::parse(&text, knowledge).map_err(told)?;
        let weighed = Weighed::of(&asked.request, &knowledge.declared).map_err(told)?;
        let batch = weighed.batch(asked.part, asked.size).map_err(impossible)?;
        self.json.show(&batch, || text::batch(&batch))
    }
}

/// What science has against the formula.
fn impossible(nonsense: Nonsense) -> Exit {
    told(DocumentFaults::Faulty(faults_of(&nonsense)))
}

fn told(faults: DocumentFaults) -> Exit {
    explain(&faults);
    Exit::Faulty
}
