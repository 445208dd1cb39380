//! `whybake complaint`

mod text;

use std::path::{Path, PathBuf};

use clap::Args;
use serde_json::json;

use super::exit::Exit;
use super::input::{in_a_line, read_input};
use super::knowledge::load_rules;
use super::output::{complain, print, width};
use crate::intake::{self, ComplaintFaults};
use crate::settings::TestsPolicy;

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
    /// Print the JSON that the HTTP service answers, byte for byte
    #[arg(long)]
    json: bool,
    /// Folder of a rule pack, in place of the rules that the program carries
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
}

impl Complaint {
    pub(super) fn run(self) -> Result<(), Exit> {
        let rules = load_rules(self.rules.as_deref(), TestsPolicy::Ignored)?;
        let knowledge = rules.diagnostician.knowledge();
        let request = self.request()?;
        let complaint = intake::Complaint::parse(&request, knowledge).map_err(|faults| {
            explain(&faults);
            Exit::Faulty
        })?;
        let answer = rules.intake.interpret(knowledge, &complaint);
        if !self.json {
            return print(text::interpretation(&answer, width()).as_bytes());
        }
        let json = serde_json::to_vec(&answer).map_err(|error| {
            complain(format_args!("the answer cannot be written as JSON: {error}"));
            Exit::Failed
        })?;
        print(&json)
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

fn explain(faults: &ComplaintFaults) {
    match faults {
        ComplaintFaults::Malformed(_) => complain(faults),
        ComplaintFaults::Faulty(faults) => faults.iter().for_each(|fault| complain(in_a_line(fault, "the complaint"))),
    }
}
