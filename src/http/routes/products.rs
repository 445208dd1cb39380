//! `/v1/products`: what the rules know how to judge.

use actix_web::HttpResponse;
use actix_web::web::Data;
use serde::Serialize;
use utoipa::ToSchema;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::knowledge::{Declarations, Product};
use crate::live_rules::LiveRules;

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

/// List the products
#[utoipa::path(
    get,
    path = "/v1/products",
    tag = "vocabulary",
    operation_id = "listProducts",
    responses((status = 200, description = "The products", body = ProductList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, _: NoParameters) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    json(&listing(&rules.diagnostician.knowledge().declared))
}

/// The listing.
pub(super) fn listing(declared: &Declarations) -> ProductList<'_> {
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
