//! `/v1/readings`: what can be measured.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::ProductFilter;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::listings::{ReadingList, readings};
use crate::live_rules::LiveRules;

/// List the readings
#[utoipa::path(
    get,
    path = "/v1/readings",
    tag = "vocabulary",
    operation_id = "listReadings",
    params(("product" = Option<String>, Query, description = "Id of a product: only what concerns it", example = "hamburger_bun")),
    responses((status = 200, description = "The readings", body = ReadingList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, filter: ProductFilter) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    json(&readings(knowledge, filter.view(knowledge)?))
}
