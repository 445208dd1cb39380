//! `/v1/rules`: which rules answer.

use std::time::SystemTime;

use actix_web::HttpResponse;
use actix_web::web::Data;
use serde::Serialize;
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;
use utoipa::ToSchema;

use crate::http::live_rules::LiveRules;
use crate::http::openapi::ParameterProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::Problem;
use crate::http::reply::json;
use crate::knowledge::Declarations;

/// The rules in force.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct RulesStatus<'k> {
    /// Id of the pack.
    #[schema(example = "core")]
    id: &'k str,
    /// Title for people.
    #[schema(example = "Bread and rolls")]
    title: &'k str,
    /// The authors' version.
    #[schema(example = "0.1.0")]
    version: &'k str,
    /// Hash of the rule files; every answer names it.
    #[schema(example = "sha256:9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08")]
    digest: &'k str,
    /// When this replica loaded them (RFC 3339, UTC).
    #[schema(format = DateTime, example = "2026-01-31T06:30:00Z")]
    loaded_at: String,
    /// Paths of the rule files, sorted.
    #[schema(example = json!(["pack.rhai", "soft_rolls/mixing.rhai"]))]
    files: Vec<&'k str>,
    /// How much they declare.
    counts: Counts,
}

/// Numbers of declared things.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = RuleCounts)]
struct Counts {
    /// Families of products.
    families: usize,
    /// Products.
    products: usize,
    /// Symptoms.
    symptoms: usize,
    /// Readings.
    readings: usize,
    /// Facts.
    facts: usize,
    /// Ingredients.
    ingredients: usize,
    /// Causes.
    causes: usize,
    /// Actions.
    actions: usize,
    /// Cautions.
    cautions: usize,
    /// Sources.
    sources: usize,
}

/// Show the rules in force
#[utoipa::path(
    get,
    path = "/v1/rules",
    tag = "service",
    operation_id = "showRules",
    responses((status = 200, description = "The rules", body = RulesStatus<'_>), ParameterProblems)
)]
pub(crate) async fn show(rules: Data<LiveRules>, _: NoParameters) -> Result<HttpResponse, Problem> {
    let rules = rules.current();
    let declared = &rules.diagnostician.knowledge().declared;
    json(&status(declared, rules.loaded_at)?)
}

fn status(declared: &Declarations, loaded_at: SystemTime) -> Result<RulesStatus<'_>, Problem> {
    let pack = &declared.pack;
    Ok(RulesStatus {
        id: &pack.id,
        title: &pack.title,
        version: &pack.version,
        digest: &pack.digest,
        loaded_at: timestamp(loaded_at)?,
        files: pack.files.iter().map(String::as_str).collect(),
        counts: counts(declared),
    })
}

/// RFC 3339 in UTC, to the second.
fn timestamp(at: SystemTime) -> Result<String, Problem> {
    let at = OffsetDateTime::from(at).truncate_to_second();
    at.format(&Rfc3339).map_err(Problem::internal)
}

fn counts(declared: &Declarations) -> Counts {
    Counts {
        families: declared.families.len(),
        products: declared.products.len(),
        symptoms: declared.symptoms.len(),
        readings: declared.readings.len(),
        facts: declared.facts.len(),
        ingredients: declared.ingredients.len(),
        causes: declared.causes.len(),
        actions: declared.actions.len(),
        cautions: declared.cautions.len(),
        sources: declared.sources.len(),
    }
}
