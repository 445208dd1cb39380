//! `/v1/what_if`: what the diagnosis of a case would be.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::case::{WhatIfDocument, WhatIfRequest};
use crate::http::body::JsonText;
use crate::http::openapi::CaseProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::live_rules::LiveRules;
use crate::what_if::{WhatIf, WhatIfFault, what_if};

/// Diagnose a case as it would be
///
/// The same case with hypothetical readings, facts, symptoms, amounts of the formula or actions, side by side with what it
/// is. An action applies its quantities, as they are computed in the case, to readings and to the formula. A hypothetical
/// reading tells what the diagnosis would be if that were read; what an action does to a reading is what is aimed at, not
/// what is promised.
#[utoipa::path(
    post,
    path = "/v1/what_if",
    tag = "diagnoses",
    operation_id = "diagnoseWhatIf",
    request_body(content = WhatIfDocument, description = "The case and the changes", content_type = "application/json"),
    responses((status = 200, description = "Both diagnoses, compared", body = WhatIf<'_>), CaseProblems)
)]
pub(crate) async fn create(rules: Data<LiveRules>, _: NoParameters, text: JsonText) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let request = WhatIfRequest::parse(&text, rules.diagnostician.knowledge())
        .map_err(Problem::faulty(ProblemKind::FaultyCase))?;
    json(&what_if(request, &rules.diagnostician).map_err(|fault| match fault {
        WhatIfFault::Case(fault) => Problem::undiagnosable(fault, "/case/symptoms"),
        WhatIfFault::Changed(fault) => Problem::undiagnosable(fault, "/changes/symptoms"),
    })?)
}
