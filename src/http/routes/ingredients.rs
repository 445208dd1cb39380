//! `/v1/ingredients`: what a formula may name.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::listings::{IngredientList, ingredients};
use crate::live_rules::LiveRules;

/// List the ingredients
#[utoipa::path(
    get,
    path = "/v1/ingredients",
    tag = "vocabulary",
    operation_id = "listIngredients",
    responses((status = 200, description = "The ingredients", body = IngredientList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, _: NoParameters) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    json(&ingredients(&rules.diagnostician.knowledge().declared))
}
