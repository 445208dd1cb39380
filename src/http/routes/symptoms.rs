//! `/v1/symptoms`: what people can see, feel or taste.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::ProductFilter;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::listings::{SymptomList, symptoms};
use crate::live_rules::LiveRules;

/// List the symptoms
#[utoipa::path(
    get,
    path = "/v1/symptoms",
    tag = "vocabulary",
    operation_id = "listSymptoms",
    params(("product" = Option<String>, Query, description = "Id of a product: only what concerns it", example = "hamburger_bun")),
    responses((status = 200, description = "The symptoms", body = SymptomList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, filter: ProductFilter) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    json(&symptoms(knowledge, filter.view(knowledge)?))
}
