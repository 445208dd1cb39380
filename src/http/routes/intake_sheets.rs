//! `/v1/intake_sheets/{product}`: what to ask.

use actix_web::HttpResponse;
use actix_web::http::header::ContentType;
use actix_web::web::{self, Data, Path};

use crate::http::openapi::{ItemProblems, ParameterProblems};
use crate::http::parameters::SheetFormat;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json_bytes;
use crate::intake::{IntakeSheet, page};
use crate::live_rules::LiveRules;
use crate::suggest::did_you_mean;

/// The page styles itself in place and loads nothing.
const CONTENT_SECURITY_POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";

/// Show the intake sheet of a product
///
/// What to ask of whoever complains: symptoms to look for, readings worth having first, questions, lines of the formula,
/// requirements, in the order of what they usually tell. `?format=page` is the same to print and fill in, on two sides of A4.
#[utoipa::path(
    get,
    path = "/v1/intake_sheets/{product}",
    tag = "diagnoses",
    operation_id = "showIntakeSheet",
    params(
        ("product" = String, Path, description = "Id of the product", example = "hamburger_bun"),
        ("format" = Option<String>, Query, description = "`json`, or `page` for HTML to print", example = "json")
    ),
    responses(
        (status = 200, description = "The sheet", content(
            (IntakeSheet<'_> = "application/json"),
            (String = "text/html")
        )),
        ItemProblems,
        ParameterProblems
    )
)]
pub(crate) async fn show(
    rules: Data<LiveRules>,
    format: SheetFormat,
    product: Path<String>,
) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let products = &rules.diagnostician.knowledge().declared.products;
    let key = products.find(&product).ok_or_else(|| {
        let help = did_you_mean(&product, products.ids()).map(|help| format!("; {help}")).unwrap_or_default();
        Problem::new(ProblemKind::UnknownItem).detail(format!("unknown product `{product}`{help}"))
    })?;
    // Off the workers: the first sheet of a product takes many inferences.
    let answer = web::block(move || {
        let sheet = rules.intake.sheet(&rules.diagnostician, key).map_err(Problem::internal)?;
        match format {
            SheetFormat::Json => serde_json::to_vec(&sheet).map_err(Problem::internal),
            SheetFormat::Page => Ok(page(&sheet).into_bytes()),
        }
    });
    let body = answer.await.map_err(Problem::internal)??;
    Ok(match format {
        SheetFormat::Json => json_bytes(body),
        SheetFormat::Page => HttpResponse::Ok()
            .content_type(ContentType::html())
            .insert_header(("content-security-policy", CONTENT_SECURITY_POLICY))
            .body(body),
    })
}
