//! `/v1/complaints`: a complaint in plain words, taken for a case.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::body::JsonText;
use crate::http::openapi::ComplaintProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::intake::{Complaint, ComplaintDocument, Interpretation};
use crate::live_rules::LiveRules;

/// Take a complaint in plain words for a case
///
/// Finds symptoms, values with their readings, facts and the product in a text, tells what it did not understand, and drafts
/// a case with what is beyond doubt. Nothing of the text is kept, and nothing is diagnosed.
#[utoipa::path(
    post,
    path = "/v1/complaints",
    tag = "diagnoses",
    operation_id = "readComplaint",
    request_body(content = ComplaintDocument, description = "The complaint", content_type = "application/json"),
    responses((status = 200, description = "What it is taken for", body = Interpretation<'_>), ComplaintProblems)
)]
pub(crate) async fn create(rules: Data<LiveRules>, _: NoParameters, text: JsonText) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    let complaint = Complaint::parse(&text, knowledge).map_err(Problem::faulty(ProblemKind::FaultyComplaint))?;
    json(&rules.intake.interpret(knowledge, &complaint))
}
