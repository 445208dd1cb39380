//! The listings by what they list, as JSON.

use super::{facts, ingredients, products, readings, symptoms};
use crate::knowledge::{Knowledge, ProductView};

/// What a case may name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Listing {
    /// `/v1/products`
    Products,
    /// `/v1/symptoms`
    Symptoms,
    /// `/v1/readings`
    Readings,
    /// `/v1/facts`
    Facts,
    /// `/v1/ingredients`
    Ingredients,
}

/// The JSON of a listing, of one product or all; products and ingredients are the same for all.
pub(crate) fn listing_json(
    listing: Listing,
    knowledge: &Knowledge,
    view: Option<&ProductView>,
) -> serde_json::Result<Vec<u8>> {
    match listing {
        Listing::Products => serde_json::to_vec(&products(&knowledge.declared)),
        Listing::Symptoms => serde_json::to_vec(&symptoms(knowledge, view)),
        Listing::Readings => serde_json::to_vec(&readings(knowledge, view)),
        Listing::Facts => serde_json::to_vec(&facts(knowledge, view)),
        Listing::Ingredients => serde_json::to_vec(&ingredients(&knowledge.declared)),
    }
}
