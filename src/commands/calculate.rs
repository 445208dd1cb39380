//! `whybake calculate`

mod arguments;
mod text;

use std::path::PathBuf;

use clap::Args;

use super::exit::Exit;
use super::input::{in_a_line, read_input};
use super::options::JsonOption;
use super::output::{complain, width};
use crate::calculations::{Calculation, CalculationList, find, suggestion};
use crate::json::DocumentFaults;

/// Compute what a technologist computes: water temperature, ice, leavening, water activity and more
///
/// Without a name it lists the calculations, with a name alone it tells the inputs and an example.
#[derive(Debug, Args)]
pub(super) struct Calculate {
    /// Name of the calculation
    #[arg(value_name = "NAME")]
    name: Option<String>,
    /// Inputs as name=value; a number may carry a UCUM unit: dough_temperature=27Cel. Lists and compositions are JSON:
    /// composition='{"water": 40}'
    #[arg(value_name = "INPUT=VALUE", requires = "name")]
    inputs: Vec<String>,
    /// File with the inputs as JSON; `-` reads standard input
    #[arg(long, value_name = "FILE.json", conflicts_with = "inputs", requires = "name")]
    input: Option<PathBuf>,
    #[command(flatten)]
    json: JsonOption,
}

impl Calculate {
    pub(super) fn run(self) -> Result<(), Exit> {
        let Some(name) = &self.name else {
            let list = CalculationList::all();
            return self.json.show(&list, || text::list(&list, width()));
        };
        let calculation = named(name)?;
        match self.inputs(calculation)? {
            Some(inputs) => {
                let answer = calculation.answer(&inputs).map_err(|faults| explain(&faults))?;
                self.json.show(&answer, || text::answer(calculation, &answer, width()))
            }
            None => {
                let description = calculation.describe().map_err(|reason| {
                    complain(reason);
                    Exit::Failed
                })?;
                self.json.show(&description, || text::description(&description, width()))
            }
        }
    }

    /// The inputs as JSON text; nothing when none are given.
    fn inputs(&self, calculation: &Calculation) -> Result<Option<Vec<u8>>, Exit> {
        match &self.input {
            Some(file) => read_input(file).map(Some),
            None if self.inputs.is_empty() => Ok(None),
            None => arguments::json(calculation, &self.inputs).map(Some),
        }
    }
}

fn named(name: &str) -> Result<&'static Calculation, Exit> {
    find(name).ok_or_else(|| {
        let help = suggestion(name).unwrap_or_else(|| "`whybake calculate` lists them".to_owned());
        complain(format_args!("unknown calculation `{name}` (help: {help})"));
        Exit::Usage
    })
}

fn explain(faults: &DocumentFaults) -> Exit {
    match faults {
        DocumentFaults::Malformed(_) => complain(faults),
        DocumentFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(in_a_line(fault, "the inputs"))),
    }
    Exit::Faulty
}
