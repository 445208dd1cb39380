//! `/v1/formulas/…`: figures, batches and ratios of a formula.

use actix_web::HttpResponse;
use actix_web::web::Data;

use crate::case::{
    BatchDocument, BatchRequest, FormulaRequest, FormulaRequestDocument, RatioDocument, RatioRequest, faults_of,
};
use crate::formulas::{Batch, RatioComparison, Report, Weighed};
use crate::http::body::JsonText;
use crate::http::openapi::FormulaProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::json::DocumentFaults;
use crate::live_rules::LiveRules;
use crate::science::Nonsense;

/// Compute the figures of a formula
///
/// Baker's percentages and true percentages of every line, and everything that follows from the composition: each figure
/// with its unit, method, source and domain, or with the reason why it is not known.
#[utoipa::path(
    post,
    path = "/v1/formulas/figures",
    tag = "formulas",
    operation_id = "computeFormulaFigures",
    request_body(content = FormulaRequestDocument, description = "The formula", content_type = "application/json"),
    responses((status = 200, description = "The figures", body = Report), FormulaProblems)
)]
pub(crate) async fn figures(rules: Data<LiveRules>, _: NoParameters, text: JsonText) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    let request = FormulaRequest::parse(&text, knowledge).map_err(Problem::faulty(ProblemKind::FaultyFormula))?;
    let report =
        Weighed::of(&request, &knowledge.declared).map_err(Problem::faulty(ProblemKind::FaultyFormula))?.report();
    json(&report.map_err(impossible)?)
}

/// Scale a formula to a batch
///
/// To a mass, or to pieces of a baked mass with a bake loss.
#[utoipa::path(
    post,
    path = "/v1/formulas/batches",
    tag = "formulas",
    operation_id = "scaleFormula",
    request_body(content = BatchDocument, description = "The formula and the batch", content_type = "application/json"),
    responses((status = 200, description = "What to weigh", body = Batch), FormulaProblems)
)]
pub(crate) async fn batches(rules: Data<LiveRules>, _: NoParameters, text: JsonText) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    let asked = BatchRequest::parse(&text, knowledge).map_err(Problem::faulty(ProblemKind::FaultyFormula))?;
    let weighed =
        Weighed::of(&asked.request, &knowledge.declared).map_err(Problem::faulty(ProblemKind::FaultyFormula))?;
    let batch = weighed.batch(asked.part, asked.size);
    json(&batch.map_err(impossible)?)
}

/// The problem that science has with a formula.
fn impossible(nonsense: Nonsense) -> Problem {
    Problem::faulty(ProblemKind::FaultyFormula)(DocumentFaults::Faulty(faults_of(&nonsense)))
}

/// Set a formula against a classic ratio
///
/// The dough, item by item, against the ratio of its product or another one.
#[utoipa::path(
    post,
    path = "/v1/formulas/ratios",
    tag = "formulas",
    operation_id = "compareFormulaWithRatio",
    request_body(content = RatioDocument, description = "The formula and the ratio", content_type = "application/json"),
    responses((status = 200, description = "The comparison", body = RatioComparison), FormulaProblems)
)]
pub(crate) async fn ratios(rules: Data<LiveRules>, _: NoParameters, text: JsonText) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let knowledge = rules.diagnostician.knowledge();
    let asked = RatioRequest::parse(&text, knowledge).map_err(Problem::faulty(ProblemKind::FaultyFormula))?;
    let weighed =
        Weighed::of(&asked.request, &knowledge.declared).map_err(Problem::faulty(ProblemKind::FaultyFormula))?;
    json(&weighed.compare(asked.ratio))
}
