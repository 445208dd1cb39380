//! `/v1/calculations`: what a technologist computes, by name.

use actix_web::HttpResponse;
use actix_web::web::Path;

use crate::calculations::{Calculation, CalculationDescription, CalculationList, find, suggestion};
use crate::http::body::JsonText;
use crate::http::openapi::{ItemProblems, ParameterProblems};
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;

/// List the calculations
#[utoipa::path(
    get,
    path = "/v1/calculations",
    tag = "calculations",
    operation_id = "listCalculations",
    responses((status = 200, description = "The calculations", body = CalculationList), ParameterProblems)
)]
pub(crate) async fn list(_: NoParameters) -> Result<HttpResponse, Problem> {
    json(&CalculationList::all())
}

/// Describe a calculation
///
/// Its inputs with units, plausible ranges and defaults, its figures, and a worked example with the sources of its
/// methods. `POST` to the same path computes.
#[utoipa::path(
    get,
    path = "/v1/calculations/{name}",
    tag = "calculations",
    operation_id = "describeCalculation",
    params(("name" = String, Path, description = "Name of the calculation", example = "mixing_water_temperature")),
    responses((status = 200, description = "The calculation", body = CalculationDescription), ItemProblems, ParameterProblems)
)]
pub(crate) async fn show(_: NoParameters, name: Path<String>) -> Result<HttpResponse, Problem> {
    json(&named(&name)?.describe().map_err(Problem::internal)?)
}

/// Computes. Its operation stands in the OpenAPI document once for every calculation, with the inputs of each.
pub(crate) async fn compute(_: NoParameters, name: Path<String>, text: JsonText) -> Result<HttpResponse, Problem> {
    // Stays on this worker: the length of every list is bounded, and so is the work.
    json(&named(&name)?.answer(&text).map_err(Problem::faulty(ProblemKind::FaultyInputs))?)
}

fn named(name: &str) -> Result<&'static Calculation, Problem> {
    find(name).ok_or_else(|| {
        let help = suggestion(name).map(|help| format!("; {help}")).unwrap_or_default();
        Problem::new(ProblemKind::UnknownItem).detail(format!("unknown calculation `{name}`{help}"))
    })
}
