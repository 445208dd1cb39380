//! The products of the rules: what the rules know how to judge.

use serde::Serialize;
use utoipa::ToSchema;

use crate::knowledge::{Declarations, Product};

/// All products.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ProductList<'k> {
    /// The products, in the order of the rules.
    products: Vec<ProductItem<'k>>,
}

/// A product.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Product)]
struct ProductItem<'k> {
    /// Id, as in a case.
    #[schema(example = "hamburger_bun")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Hamburger bun")]
    title: &'k str,
    /// What it is.
    #[schema(example = "Soft, round roll that is cut and filled.")]
    description: &'k str,
    /// Other words for it.
    #[schema(example = json!(["burger bun"]))]
    synonyms: Vec<&'k str>,
    /// The family that it belongs to.
    #[serde(skip_serializing_if = "Option::is_none")]
    family: Option<FamilyItem<'k>>,
}

/// A family of products that share causes.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Family)]
struct FamilyItem<'k> {
    /// Id.
    #[schema(example = "soft_rolls")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Soft rolls")]
    title: &'k str,
}

/// The listing.
pub(crate) fn products(declared: &Declarations) -> ProductList<'_> {
    ProductList { products: declared.products.iter().map(|(_, product)| item(declared, product)).collect() }
}

fn item<'k>(declared: &'k Declarations, product: &'k Product) -> ProductItem<'k> {
    let family = product.family.map(|key| &declared.families[key]);
    ProductItem {
        id: &product.id,
        title: &product.title,
        description: &product.description,
        synonyms: product.synonyms.iter().map(String::as_str).collect(),
        family: family.map(|family| FamilyItem { id: &family.id, title: &family.title }),
    }
}
