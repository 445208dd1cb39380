//! `whybake inquire`

use std::path::PathBuf;

use clap::Args;
use serde_json::{Map, Value};

use super::case_request::{told, wrapped};
use super::exit::Exit;
use super::input::read_case;
use super::options::{JsonOption, RulesOption};
use super::output::{complain, width};
use crate::case::InquiryRequest;
use crate::diagnosis::render_inquiries;

/// Plan what to find out about a case
#[derive(Debug, Args)]
pub(super) struct Inquire {
    /// File with the case as JSON, or a record or a rule test with the case as its member `case`; `-` reads standard input
    #[arg(value_name = "CASE.json")]
    case: PathBuf,
    /// Probability from which a cause is certain enough, 0.5 to 0.999 [usual: 0.9]
    #[arg(long, value_name = "PROBABILITY")]
    certain_enough: Option<f64>,
    /// Most minutes that the plan may take [usual: no limit]
    #[arg(long, value_name = "MINUTES")]
    most_minutes: Option<f64>,
    /// Least information, bits a minute, that is worth the effort [usual: 0.002]
    #[arg(long, value_name = "BITS")]
    least_bits_per_minute: Option<f64>,
    /// Most inquiries one after the other in the plan, 1 to 3 [usual: 3]
    #[arg(long, value_name = "N")]
    depth: Option<u8>,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl Inquire {
    pub(super) fn run(self) -> Result<(), Exit> {
        let diagnostician = self.rules.load()?.diagnostician;
        let text = wrapped(&read_case(&self.case)?, &self.rest())?;
        let request = InquiryRequest::parse(&text, diagnostician.knowledge()).map_err(told)?;
        let inquiries = diagnostician.inquire(request).map_err(|fault| {
            complain(fault);
            Exit::Faulty
        })?;
        self.json.show(&inquiries, || render_inquiries(&inquiries, width()))
    }

    /// What the request says beside the case.
    fn rest(&self) -> Map<String, Value> {
        // A number that JSON cannot write becomes `null`: of the wrong type, and told as such.
        let options = [
            ("certain_enough", self.certain_enough.map(Value::from)),
            ("most_minutes", self.most_minutes.map(Value::from)),
            ("least_bits_per_minute", self.least_bits_per_minute.map(Value::from)),
            ("depth", self.depth.map(Value::from)),
        ];
        options.into_iter().filter_map(|(name, value)| Some((name.to_owned(), value?))).collect()
    }
}
