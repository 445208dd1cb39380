//! `whybake explain`

use clap::Args;

use super::exit::Exit;
use super::output::{complain, print};
use crate::rules::Code;
use crate::suggest::did_you_mean;

/// Explain what the checker says
///
/// Every fault and warning of `whybake check` has a code in brackets, as in `fault[unknown-name]`. With a code it tells what
/// that means, with a wrong example and the right one; without, it lists all codes.
#[derive(Debug, Args)]
pub(super) struct Explain {
    /// Code, for example `unknown-name`
    #[arg(value_name = "CODE")]
    code: Option<String>,
}

impl Explain {
    pub(super) fn run(self) -> Result<(), Exit> {
        let Some(word) = self.code else { return print(list().as_bytes()) };
        let Some(code) = Code::named(&word) else {
            let help = did_you_mean(&word, Code::ALL.iter().map(|code| code.word()));
            let help = help.unwrap_or_else(|| "`whybake explain` lists all codes".to_owned());
            complain(format_args!("unknown code `{word}` (help: {help})"));
            return Err(Exit::Usage);
        };
        print(code.explanation().to_string().as_bytes())
    }
}

/// One line a code.
fn list() -> String {
    let wide = Code::ALL.iter().map(|code| code.word().len()).max().unwrap_or_default();
    Code::ALL.iter().map(|code| format!("{:wide$}  {}\n", code.word(), code.explanation().meaning)).collect()
}
