//! The OpenAPI 3.1 document of the service.

mod calculations;
mod complaints;
mod entity_tags;
mod formulas;
mod inquiries;
mod optional;
mod problems;
mod trial;
mod trial_sheets;
mod what_if_examples;

use std::sync::LazyLock;

use actix_web::HttpResponse;
use actix_web::http::header::ContentType;
use actix_web::web::Bytes;
use serde_json::Value;
use utoipa::OpenApi;
use utoipa::openapi::path::Operation;
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityScheme};
use utoipa::openapi::{Content, RefOr};

pub(super) use problems::{
    CaseProblems, ComplaintProblems, FormulaProblems, InquiryProblems, ItemProblems, ParameterProblems, RecordProblems,
    ReloadProblems, TrialProblems, TrialSheetProblems,
};

use super::parameters::NoParameters;
use super::problem::{Problem, ProblemDocument};
use super::routes::{
    calculations as calculation_routes, causes, complaints as complaint_route, diagnoses, facts,
    formulas as formula_routes, health, ingredients, inquiries as inquiry_route, intake_sheets,
    problems as problem_routes, products, readings, replays, requirements, rule_trials as trial_route, rules, symptoms,
    trial_sheets as trial_sheet_route, what_if,
};
use crate::calculations::CalculationAnswer;

/// The example case of the contract.
const EXAMPLE_CASE: &str = include_str!("examples/case.json");

/// What the service answered to it, shortened; recorded with `whybake diagnose --json`. `rules` names the rules that
/// answered.
const EXAMPLE_DIAGNOSIS: &str = include_str!("examples/diagnosis.json");

const JSON: &str = "application/json";

static TEXT: LazyLock<Result<Bytes, String>> = LazyLock::new(|| text().map(Bytes::from));

#[derive(OpenApi)]
#[openapi(
    info(
        title = "whybake",
        description = "Tells why a bake went wrong: ranked causes with the evidence for and against each, what to do \
                       about them with quantities, and what to measure next. Answers are advice to qualified people; \
                       they never call a product safe."
    ),
    paths(
        diagnoses::create,
        inquiry_route::create,
        complaint_route::create,
        intake_sheets::show,
        what_if::create,
        calculation_routes::list,
        calculation_routes::show,
        formula_routes::figures,
        formula_routes::batches,
        formula_routes::ratios,
        trial_sheet_route::create,
        replays::create,
        products::list,
        ingredients::list,
        requirements::list,
        symptoms::list,
        readings::list,
        facts::list,
        causes::list,
        causes::show,
        rules::show,
        rules::reload,
        trial_route::create,
        problem_routes::list,
        problem_routes::show,
        show,
        health::live,
        health::ready
    ),
    components(schemas(ProblemDocument<'_>, CalculationAnswer)),
    tags(
        (name = "diagnoses", description = "From a complaint to a case, and from a case to its causes"),
        (name = "trial sheets", description = "From a case to a trial bake"),
        (name = "formulas", description = "What a formula comes to, without a case"),
        (name = "calculations", description = "What a technologist computes, each with its published source"),
        (name = "vocabulary", description = "What the rules declare: the ids that a case may use"),
        (name = "service", description = "The service itself")
    )
)]
struct Api;

/// The document as pretty-printed JSON text that ends with a newline; `openapi/openapi.json` holds the same bytes.
///
/// # Errors
/// When an example of the document is not JSON.
pub fn text() -> Result<String, String> {
    let mut document = Api::openapi();
    optional::forbid_null(&mut document);
    add_security(&mut document);
    entity_tags::add(&mut document);
    calculations::add(&mut document).map_err(|error| error.to_string())?;
    let operation = document.paths.paths.get_mut("/v1/diagnoses").and_then(|item| item.post.as_mut());
    if let Some(operation) = operation {
        add_examples(operation).map_err(|error| error.to_string())?;
    }
    inquiries::add_examples(&mut document).map_err(|error| error.to_string())?;
    trial::add_examples(&mut document).map_err(|error| error.to_string())?;
    complaints::add_examples(&mut document).map_err(|error| error.to_string())?;
    what_if_examples::add(&mut document).map_err(|error| error.to_string())?;
    trial_sheets::add_examples(&mut document).map_err(|error| error.to_string())?;
    formulas::add_examples(&mut document).map_err(|error| error.to_string())?;
    document.to_pretty_json().map(|json| json + "\n").map_err(|error| error.to_string())
}

/// The key of authors, which some services want.
fn add_security(document: &mut utoipa::openapi::OpenApi) {
    let description = "The key of authors (setting `rules.author_key`). A service without a key grants these routes to \
                       everybody when it listens on a loopback address, and else to nobody.";
    let scheme = HttpBuilder::new().scheme(HttpAuthScheme::Bearer).description(Some(description)).build();
    if let Some(components) = &mut document.components {
        components.add_security_scheme("author", SecurityScheme::Http(scheme));
    }
}

fn add_examples(operation: &mut Operation) -> serde_json::Result<()> {
    if let Some(RefOr::T(request)) = &mut operation.request_body {
        set_example(request.content.get_mut(JSON), EXAMPLE_CASE)?;
    }
    if let Some(RefOr::T(response)) = operation.responses.responses.get_mut("200") {
        set_example(response.content.get_mut(JSON), EXAMPLE_DIAGNOSIS)?;
    }
    Ok(())
}

fn set_example(content: Option<&mut RefOr<Content>>, text: &str) -> serde_json::Result<()> {
    if let Some(RefOr::T(content)) = content {
        content.example = Some(serde_json::from_str::<Value>(text)?);
    }
    Ok(())
}

/// Show this document
#[utoipa::path(
    get,
    path = "/openapi.json",
    tag = "service",
    operation_id = "showOpenApi",
    responses((status = 200, description = "The OpenAPI document", body = Object), ParameterProblems)
)]
pub(super) async fn show(_: NoParameters) -> Result<HttpResponse, Problem> {
    let text = TEXT.as_ref().map_err(Problem::internal)?;
    Ok(HttpResponse::Ok().content_type(ContentType::json()).body(text.clone()))
}
