//! `/v1/rules`: which rules answer, and how others take their place.

use std::time::SystemTime;

use actix_web::HttpResponse;
use actix_web::web::Data;
use serde::Serialize;
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;
use utoipa::ToSchema;

use crate::http::authoring::{Author, Authoring};
use crate::http::openapi::{ParameterProblems, ReloadProblems};
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::knowledge::Declarations;
use crate::live_rules::{Attempt, AttemptOutcome, LiveRules, RulesInForce, Trigger};
use crate::rules::Diagnostic;

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
    /// The last attempt to load rules again while the service runs.
    #[serde(skip_serializing_if = "Option::is_none")]
    last_attempt: Option<LastAttempt<'k>>,
}

/// An attempt to load rules while the service runs. Rules that are refused change nothing: those in force stay.
#[derive(Debug, Serialize, ToSchema)]
struct LastAttempt<'k> {
    /// When it ended (RFC 3339, UTC).
    #[schema(format = DateTime, example = "2026-01-31T06:30:00Z")]
    at: String,
    /// What made it.
    by: Trigger,
    /// Whether the rules were loaded or refused.
    outcome: OutcomeWord,
    /// Hash of the rule files that were loaded.
    #[serde(skip_serializing_if = "Option::is_none")]
    digest: Option<&'k str>,
    /// Why the rules were refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "the rules cannot be loaded")]
    reason: Option<&'static str>,
    /// Number of faults and failed expectations.
    faults: usize,
    /// The first hundred of them.
    diagnostics: &'k [Diagnostic],
}

/// How an attempt ended.
#[derive(Debug, Clone, Copy, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
enum OutcomeWord {
    /// The rules were loaded and are in force.
    Loaded,
    /// The rules have faults or fail their tests; those in force stayed.
    Refused,
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
    answer(&rules)
}

/// Load the rules of the folder again
///
/// All or nothing: rules with a fault, or that fail the tests that they must pass, change nothing and are answered with
/// everything that is wrong. Changes of the folder are noticed without this, within a second or at the next look.
#[utoipa::path(
    post,
    path = "/v1/rules/reload",
    tag = "service",
    operation_id = "reloadRules",
    security((), ("author" = [])),
    responses((status = 200, description = "The rules that are in force now", body = RulesStatus<'_>), ReloadProblems)
)]
pub(crate) async fn reload(
    _: Author,
    _: NoParameters,
    authoring: Data<Authoring>,
    rules: Data<LiveRules>,
) -> Result<HttpResponse, Problem> {
    let Some(reloader) = &authoring.reloader else { return Err(Problem::new(ProblemKind::NoRulesFolder)) };
    let attempt = reloader.request().await.ok_or_else(|| Problem::internal("the loader of rules has ended"))?;
    match &attempt.outcome {
        AttemptOutcome::Loaded { .. } => answer(&rules),
        AttemptOutcome::Refused { reason, count, diagnostics } => {
            let faults = if *count == 1 { "fault" } else { "faults" };
            let problem = Problem::new(ProblemKind::FaultyRules).detail(format!("{reason}: {count} {faults}"));
            Err(problem.diagnostics(diagnostics.clone()))
        }
    }
}

fn answer(rules: &LiveRules) -> Result<HttpResponse, Problem> {
    // First the attempt: whoever reads that rules were loaded reads of those or of later ones.
    let attempt = rules.last_attempt();
    let rules = rules.current();
    json(&status(&rules, attempt.as_deref())?)
}

fn status<'r>(rules: &'r RulesInForce, attempt: Option<&'r Attempt>) -> Result<RulesStatus<'r>, Problem> {
    let declared = &rules.diagnostician.knowledge().declared;
    let pack = &declared.pack;
    Ok(RulesStatus {
        id: &pack.id,
        title: &pack.title,
        version: &pack.version,
        digest: &pack.digest,
        loaded_at: timestamp(rules.loaded_at)?,
        files: pack.files.iter().map(String::as_str).collect(),
        counts: counts(declared),
        last_attempt: attempt.map(last_attempt).transpose()?,
    })
}

fn last_attempt(attempt: &Attempt) -> Result<LastAttempt<'_>, Problem> {
    let (at, by) = (timestamp(attempt.at)?, attempt.by);
    Ok(match &attempt.outcome {
        AttemptOutcome::Loaded { digest, .. } => LastAttempt {
            at,
            by,
            outcome: OutcomeWord::Loaded,
            digest: Some(digest),
            reason: None,
            faults: 0,
            diagnostics: &[],
        },
        AttemptOutcome::Refused { reason, count, diagnostics } => LastAttempt {
            at,
            by,
            outcome: OutcomeWord::Refused,
            digest: None,
            reason: Some(reason),
            faults: *count,
            diagnostics,
        },
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
