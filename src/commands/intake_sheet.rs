//! `whybake intake-sheet`

mod text;

use std::path::PathBuf;

use clap::Args;

use super::exit::Exit;
use super::knowledge::load_rules;
use super::output::{complain, print, width};
use crate::intake::page;
use crate::json::listing;
use crate::settings::TestsPolicy;
use crate::suggest::did_you_mean;

/// Print what to ask about a product that went wrong
#[derive(Debug, Args)]
pub(super) struct IntakeSheet {
    /// Id of the product, for example hamburger_bun
    #[arg(value_name = "PRODUCT")]
    product: String,
    /// Print the JSON that the HTTP service answers, byte for byte
    #[arg(long, conflicts_with = "page")]
    json: bool,
    /// Print HTML to print on two sides of A4 and fill in
    #[arg(long)]
    page: bool,
    /// Folder of a rule pack, in place of the rules that the program carries
    #[arg(long, value_name = "DIR")]
    rules: Option<PathBuf>,
}

impl IntakeSheet {
    pub(super) fn run(self) -> Result<(), Exit> {
        let rules = load_rules(self.rules.as_deref(), TestsPolicy::Ignored)?;
        let products = &rules.diagnostician.knowledge().declared.products;
        let Some(key) = products.find(&self.product) else {
            let help = did_you_mean(&self.product, products.ids());
            let help = help.unwrap_or_else(|| format!("the products are {}", listing(products.ids())));
            complain(format_args!("unknown product `{}` (help: {help})", self.product));
            return Err(Exit::Faulty);
        };
        let failed = |error: &dyn std::fmt::Display| {
            complain(format_args!("the sheet cannot be made: {error}"));
            Exit::Failed
        };
        let sheet = rules.intake.sheet(&rules.diagnostician, key).map_err(|error| failed(&error))?;
        if self.json {
            return print(&serde_json::to_vec(&sheet).map_err(|error| failed(&error))?);
        }
        let text = if self.page { page(&sheet) } else { text::sheet(&sheet, width()) };
        print(text.as_bytes())
    }
}
