//! `/v1/requirements`: what a case may ask an answer to respect.

use actix_web::HttpResponse;
use actix_web::web::Data;
use serde::Serialize;
use utoipa::ToSchema;

use crate::http::openapi::ParameterProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::live_rules::LiveRules;

/// Diets, allergens and markets that the rules know.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct RequirementList<'k> {
    /// Diets, for `requirements.diets`.
    diets: Vec<RequirementItem<'k>>,
    /// Allergens, for `requirements.avoid`; it takes ids of ingredients too.
    allergens: Vec<RequirementItem<'k>>,
    /// Markets, for `requirements.market`.
    markets: Vec<RequirementItem<'k>>,
}

/// Something that a case may require.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = Requirement)]
struct RequirementItem<'k> {
    /// Id, as in a case.
    #[schema(example = "halal")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Halal")]
    title: &'k str,
}

/// List the requirements
#[utoipa::path(
    get,
    path = "/v1/requirements",
    tag = "vocabulary",
    operation_id = "listRequirements",
    responses((status = 200, description = "The requirements", body = RequirementList<'_>), ParameterProblems)
)]
pub(crate) async fn list(rules: Data<LiveRules>, _: NoParameters) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let declared = &rules.diagnostician.knowledge().declared;
    let diets = declared.diets.iter().map(|(_, diet)| RequirementItem { id: &diet.id, title: &diet.title });
    let allergens = declared.allergens.iter().map(|(_, one)| RequirementItem { id: &one.id, title: &one.title });
    let markets = declared.markets.iter().map(|(_, market)| RequirementItem { id: &market.id, title: &market.title });
    json(&RequirementList { diets: diets.collect(), allergens: allergens.collect(), markets: markets.collect() })
}
