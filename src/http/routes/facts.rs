//! `/v1/facts`: yes-or-no facts about the line or the ingredients.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::ProductFilter;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::listings::{FactList, facts};
use crate::live_rules::LiveRules;

/// List the facts
#[utoipa::path(
    get,
    path = "/v1/facts",
    tag = "vocabulary",
    operation_id = "listFacts",
    params(("product" = Option<String>, Query, description = "Id of a product: only what concerns it", example = "hamburger_bun")),
    responses((status = 200, description = "The facts", body = FactList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, filter: ProductFilter) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    json(&facts(knowledge, filter.view(knowledge)?))
}
