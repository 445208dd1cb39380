//! `/healthz` and `/readyz`: for load balancers and orchestrators. They take any query, which some probes add.

use actix_web::HttpResponse;
use actix_web::web::Data;
use serde::Serialize;
use utoipa::ToSchema;

use crate::diagnosis::RulesStamp;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::live_rules::LiveRules;

/// The service runs.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct Liveness {
    /// Always `live`: a service that does not run does not answer.
    #[schema(example = "live")]
    status: &'static str,
}

/// The service can diagnose.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct Readiness<'k> {
    /// Always `ready`: the service binds its address once its rules are loaded.
    #[schema(example = "ready")]
    status: &'static str,
    /// The rules that answer.
    rules: RulesStamp<'k>,
}

/// Tell whether the service runs
#[utoipa::path(
    get,
    path = "/healthz",
    tag = "service",
    operation_id = "live",
    responses((status = 200, description = "It runs", body = Liveness))
)]
pub(crate) async fn live() -> Result<HttpResponse, Problem> {
    json(&Liveness { status: "live" })
}

/// Tell whether the service can diagnose
#[utoipa::path(
    get,
    path = "/readyz",
    tag = "service",
    operation_id = "ready",
    responses((status = 200, description = "Its rules are loaded", body = Readiness<'_>))
)]
pub(crate) async fn ready(rules: Data<LiveRules>) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let pack = &rules.diagnostician.knowledge().declared.pack;
    json(&Readiness { status: "ready", rules: RulesStamp { version: &pack.version, digest: &pack.digest } })
}
