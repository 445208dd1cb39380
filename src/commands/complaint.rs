//! `whybake complaint`

mod text;

use std::path::Path;

use clap::Args;
use serde_json::json;

use super::exit::Exit;
use super::input::{in_a_line, read_input};
use super::options::{JsonOption, RulesOption};
use super::output::{complain, width};
use crate::intake;
use crate::json::DocumentFaults;

/// Take a complaint in plain words for a case
///
/// Tells the symptoms, readings and facts that the words name, what was not understood, and the draft of a case for
/// `whybake diagnose`.
#[derive(Debug, Args)]
pub(super) struct Complaint {
    /// The complaint, for example "hollow under the lid, dough was at 31 °C"; `-` reads standard input
    #[arg(value_name = "TEXT", allow_hyphen_values = true)]
    text: String,
    /// Product that it is about; left out, the text is searched for it
    #[arg(long, value_name = "ID")]
    product: Option<String>,
    /// Most symptoms to name, 1 to 50
    #[arg(long, value_name = "N")]
    most: Option<u32>,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl Complaint {
    pub(super) fn run(self) -> Result<(), Exit> {
        let rules = self.rules.load()?;
        let knowledge = rules.diagnostician.knowledge();
        let request = self.request()?;
        let complaint = intake::Complaint::parse(&request, knowledge).map_err(|faults| {
            explain(&faults);
            Exit::Faulty
        })?;
        let answer = rules.intake.interpret(knowledge, &complaint);
        self.json.show(&answer, || text::interpretation(&answer, width()))
    }

    /// The request that the HTTP service takes.
    fn request(&self) -> Result<Vec<u8>, Exit> {
        let text = if self.text == "-" {
            String::from_utf8(read_input(Path::new("-"))?).map_err(|_| {
                complain("-: is not text in UTF-8");
                Exit::Failed
            })?
        } else {
            self.text.clone()
        };
        let mut request = json!({ "text": text });
        if let Some(members) = request.as_object_mut() {
            members.extend(self.product.iter().map(|id| ("product".to_owned(), json!(id))));
            members.extend(self.most.iter().map(|most| ("most".to_owned(), json!(most))));
        }
        Ok(request.to_string().into_bytes())
    }
}

fn explain(faults: &DocumentFaults) {
    match faults {
        DocumentFaults::Malformed(_) => complain(faults),
        DocumentFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(in_a_line(fault, "the complaint"))),
    }
}
