//! `/v1/inquiries`: what to find out about a case.

use actix_web::HttpResponse;
use actix_web::web::{self, Data};

use crate::case::{InquiryRequest, InquiryRequestDocument};
use crate::diagnosis::Inquiries;
use crate::http::body::JsonText;
use crate::http::openapi::InquiryProblems;
use crate::http::parameters::NoParameters;
use crate::http::planning::Planning;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json_bytes;
use crate::live_rules::LiveRules;

/// Plan what to find out
///
/// Ranks every reading, fact and symptom that a case leaves open by the information that it is expected to give a minute
/// of effort, tells what each of its outcomes would do to the ranking, and lays out a short plan: what to find out first,
/// and after each outcome what next, until a cause is certain enough or there is another reason to stop. The same request
/// and the same rules give the same bytes.
#[utoipa::path(
    post,
    path = "/v1/inquiries",
    tag = "diagnoses",
    operation_id = "inquire",
    request_body(content = InquiryRequestDocument, description = "The case and how far to go", content_type = "application/json"),
    responses((status = 200, description = "What to find out", body = Inquiries<'_>), InquiryProblems)
)]
pub(crate) async fn create(
    rules: Data<LiveRules>,
    planning: Data<Planning>,
    _: NoParameters,
    text: JsonText,
) -> Result<HttpResponse, Problem> {
    let place = planning.wait_for_place().await?;
    let rules = rules.current();
    // A plan takes many inferences: off the workers, which go on diagnosing. The place is taken until the work is done,
    // even if the caller hangs up.
    let answer = web::block(move || {
        let _place = place;
        let request = InquiryRequest::parse(&text, rules.diagnostician.knowledge())
            .map_err(Problem::faulty(ProblemKind::FaultyCase))?;
        let undiagnosable = |fault| Problem::undiagnosable(fault, "/case/symptoms");
        let inquiries = rules.diagnostician.inquire(request).map_err(undiagnosable)?;
        inquiries.to_json().map_err(|error| Problem::internal(&error))
    });
    Ok(json_bytes(answer.await.map_err(Problem::internal)??))
}
