//! `whybake intake-sheet`

mod text;

use clap::Args;

use super::exit::Exit;
use super::options::{JsonOption, RulesOption};
use super::output::{complain, width};
use crate::intake::page;
use crate::json::listing;
use crate::suggest::did_you_mean;

/// Print what to ask about a product that went wrong
#[derive(Debug, Args)]
pub(super) struct IntakeSheet {
    /// Id of the product, for example hamburger_bun
    #[arg(value_name = "PRODUCT")]
    product: String,
    #[command(flatten)]
    json: JsonOption,
    /// Print HTML to print on two sides of A4 and fill in
    #[arg(long, conflicts_with = "json")]
    page: bool,
    #[command(flatten)]
    rules: RulesOption,
}

impl IntakeSheet {
    pub(super) fn run(self) -> Result<(), Exit> {
        let rules = self.rules.load()?;
        let products = &rules.diagnostician.knowledge().declared.products;
        let Some(key) = products.find(&self.product) else {
            let help = did_you_mean(&self.product, products.ids());
            let help = help.unwrap_or_else(|| format!("the products are {}", listing(products.ids())));
            complain(format_args!("unknown product `{}` (help: {help})", self.product));
            return Err(Exit::Faulty);
        };
        let sheet = rules.intake.sheet(&rules.diagnostician, key).map_err(|error| {
            complain(format_args!("the sheet cannot be made: {error}"));
            Exit::Failed
        })?;
        self.json.show(&sheet, || if self.page { page(&sheet) } else { text::sheet(&sheet, width()) })
    }
}
