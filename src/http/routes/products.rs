//! `/v1/products`: what the rules know how to judge.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::listings::{ProductList, products};
use crate::live_rules::LiveRules;

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
    json(&products(&rules.diagnostician.knowledge().declared))
}
