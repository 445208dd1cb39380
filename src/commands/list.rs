//! `whybake list`

mod text;

use clap::{Args, ValueEnum};

use super::exit::Exit;
use super::options::{JsonOption, RulesOption};
use super::output::{complain, print};
use crate::json::listing;
use crate::knowledge::{Knowledge, ProductView};
use crate::listings::{Listing, listing_json};
use crate::suggest::did_you_mean;

/// What to list.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Kind {
    Products,
    Symptoms,
    Readings,
    Facts,
    Ingredients,
}

/// List what a case may name
#[derive(Debug, Args)]
pub(super) struct List {
    /// What to list
    #[arg(value_name = "WHAT")]
    kind: Kind,
    /// Only what concerns this product; products and ingredients are the same for all
    #[arg(long, value_name = "ID")]
    product: Option<String>,
    #[command(flatten)]
    json: JsonOption,
    #[command(flatten)]
    rules: RulesOption,
}

impl List {
    pub(super) fn run(self) -> Result<(), Exit> {
        if self.product.is_some() && matches!(self.kind, Kind::Products | Kind::Ingredients) {
            complain("--product: products and ingredients are the same for all products");
            return Err(Exit::Usage);
        }
        let rules = self.rules.load()?;
        let knowledge = rules.diagnostician.knowledge();
        let view = self.product.as_deref().map(|id| view(id, knowledge)).transpose()?;
        if !self.json.is_wanted() {
            return print(text::table(self.kind, knowledge, view).as_bytes());
        }
        let json = listing_json(self.kind.into(), knowledge, view).map_err(|error| {
            complain(format_args!("the answer cannot be written as JSON: {error}"));
            Exit::Failed
        });
        print(&json?)
    }
}

impl From<Kind> for Listing {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Products => Self::Products,
            Kind::Symptoms => Self::Symptoms,
            Kind::Readings => Self::Readings,
            Kind::Facts => Self::Facts,
            Kind::Ingredients => Self::Ingredients,
        }
    }
}

fn view<'k>(id: &str, knowledge: &'k Knowledge) -> Result<&'k ProductView, Exit> {
    let products = &knowledge.declared.products;
    products.find(id).map(|key| knowledge.view(key)).ok_or_else(|| {
        let help = did_you_mean(id, products.ids());
        let help = help.unwrap_or_else(|| format!("the products are {}", listing(products.ids())));
        complain(format_args!("unknown product `{id}` (help: {help})"));
        Exit::Faulty
    })
}
