//! `/v1/problems`: what the `type` of a problem means.

use actix_web::HttpResponse;
use actix_web::web::Path;
use serde::Serialize;
use utoipa::ToSchema;

use crate::http::openapi::{ItemProblems, ParameterProblems};
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;

/// The catalogue of problems.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ProblemList {
    /// All kinds of problems.
    problems: Vec<ProblemItem>,
}

/// A kind of problem.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ProblemKind)]
pub(crate) struct ProblemItem {
    /// Id: the last part of `type`.
    #[schema(example = "faulty-case")]
    id: &'static str,
    /// `type` of such problems.
    #[serde(rename = "type")]
    #[schema(example = "/v1/problems/faulty-case")]
    type_uri: String,
    /// `title` of such problems.
    #[schema(example = "the case has faults")]
    title: &'static str,
    /// Status code.
    #[schema(example = 422)]
    status: u16,
    /// What the caller can do about it.
    #[schema(example = "Mend every entry of `errors`; each names the place by a JSON Pointer (RFC 6901).")]
    description: &'static str,
}

/// List the kinds of problems
#[utoipa::path(
    get,
    path = "/v1/problems",
    tag = "service",
    operation_id = "listProblems",
    responses((status = 200, description = "The catalogue", body = ProblemList), ParameterProblems)
)]
pub(crate) async fn list(_: NoParameters) -> Result<HttpResponse, Problem> {
    json(&ProblemList { problems: ProblemKind::ALL.into_iter().map(item).collect() })
}

/// Explain a kind of problem
#[utoipa::path(
    get,
    path = "/v1/problems/{id}",
    tag = "service",
    operation_id = "showProblem",
    params(("id" = String, Path, description = "Last part of the `type` of a problem", example = "faulty-case")),
    responses((status = 200, description = "The kind of problem", body = ProblemItem), ItemProblems, ParameterProblems)
)]
pub(crate) async fn show(_: NoParameters, id: Path<String>) -> Result<HttpResponse, Problem> {
    let kind = ProblemKind::named(&id);
    json(&item(kind.ok_or_else(|| Problem::new(ProblemKind::UnknownItem).detail(format!("unknown problem `{id}`")))?))
}

fn item(kind: ProblemKind) -> ProblemItem {
    ProblemItem {
        id: kind.word(),
        type_uri: kind.type_uri(),
        title: kind.title(),
        status: kind.status().as_u16(),
        description: kind.advice(),
    }
}
