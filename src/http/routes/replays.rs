//! `/v1/replays`: a stored diagnosis, diagnosed again.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::http::body::RecordText;
use crate::http::openapi::RecordProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::live_rules::LiveRules;
use crate::replay::{Record, RecordDocument, Replay};

/// Replay a stored diagnosis
///
/// Diagnoses the case of the record again and compares with the stored answer: byte for byte the same, or what has changed
/// since, with the rules and the program of then and now. Store the answer of `/v1/diagnoses` as it came.
#[utoipa::path(
    post,
    path = "/v1/replays",
    tag = "diagnoses",
    operation_id = "replayDiagnosis",
    request_body(content = RecordDocument, description = "The record", content_type = "application/json"),
    responses((status = 200, description = "Whether the answer is the same, and what differs", body = Replay), RecordProblems)
)]
pub(crate) async fn create(rules: Data<LiveRules>, _: NoParameters, text: RecordText) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let record = Record::parse(&text).map_err(Problem::faulty(ProblemKind::FaultyRecord))?;
    json(&record.replay(&rules.diagnostician).map_err(|error| Problem::internal(&error))?)
}
