//! `/v1/diagnoses`: one case in, one diagnosis out.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::case::{Case, CaseDocument};
use crate::diagnosis::Diagnosis;
use crate::http::body::JsonText;
use crate::http::openapi::CaseProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json_bytes;
use crate::live_rules::LiveRules;

/// Diagnose a case
///
/// Ranks the causes of what went wrong, each with the evidence for and against it, what to do about it, and what to
/// measure next. The same case and the same rules give the same bytes.
#[utoipa::path(
    post,
    path = "/v1/diagnoses",
    tag = "diagnoses",
    operation_id = "diagnose",
    request_body(content = CaseDocument, description = "The case", content_type = "application/json"),
    responses((status = 200, description = "The diagnosis", body = Diagnosis<'_>), CaseProblems)
)]
pub(crate) async fn create(rules: Data<LiveRules>, _: NoParameters, text: JsonText) -> Result<HttpResponse, Problem> {
    // Stays on this worker: there is one a core, and the number of symptoms bounds the work.
    let rules = rules.current();
    let case = Case::parse(&text, rules.diagnostician.knowledge()).map_err(Problem::faulty(ProblemKind::FaultyCase))?;
    let diagnosis = rules.diagnostician.diagnose(case).map_err(|fault| Problem::undiagnosable(fault, "/symptoms"))?;
    Ok(json_bytes(diagnosis.to_json().map_err(|error| Problem::internal(&error))?))
}
