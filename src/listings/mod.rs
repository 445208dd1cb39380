//! What a case may name, listed: for the service, and for the command that prints the same bytes.

mod facts;
mod ingredients;
mod listing;
mod parts;
mod products;
mod readings;
mod symptoms;

pub(crate) use facts::{FactList, facts};
pub(crate) use ingredients::{IngredientList, ingredients};
pub(crate) use listing::{Listing, listing_json};
pub(crate) use parts::{CautionItem, SourceItem, cautions, ids, keys, sources};
pub(crate) use products::{ProductList, products};
pub(crate) use readings::{ReadingList, readings};
pub(crate) use symptoms::{SymptomList, symptoms};
