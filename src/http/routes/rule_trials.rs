//! `/v1/rules/trial`: what a change of the rules would do.

use std::time::Instant;

use actix_web::HttpResponse;
use actix_web::web::{self, Data};

use crate::http::authoring::{Author, Authoring};
use crate::http::body::TrialText;
use crate::http::openapi::TrialProblems;
use crate::http::parameters::NoParameters;
use crate::http::problem::{Problem, ProblemKind};
use crate::http::reply::json;
use crate::live_rules::LiveRules;
use crate::rule_trial::{Trial, TrialAnswer, TrialDocument, TrialTooLong};

/// Seconds after which a trial may find a place.
const RETRY_AFTER_SECONDS: &str = "5";

/// Try a change of the rules
///
/// Loads the rules in force with the changed files, in memory and beside them, runs the rule tests, and tells what the
/// change does to the ranking of every case of the tests and of the request. Nothing is kept and nothing else changes. One
/// trial runs at a time.
#[utoipa::path(
    post,
    path = "/v1/rules/trial",
    tag = "service",
    operation_id = "tryRules",
    security((), ("author" = [])),
    request_body(content = TrialDocument, description = "The change", content_type = "application/json"),
    responses((status = 200, description = "What the change does", body = TrialAnswer), TrialProblems)
)]
pub(crate) async fn create(
    _: Author,
    _: NoParameters,
    authoring: Data<Authoring>,
    rules: Data<LiveRules>,
    text: TrialText,
) -> Result<HttpResponse, Problem> {
    let Some(place) = authoring.occupy() else {
        return Err(Problem::new(ProblemKind::Busy).header("retry-after", RETRY_AFTER_SECONDS));
    };
    let (rules, time) = (rules.current(), authoring.trial_time);
    // Off the workers, which go on diagnosing. The place is taken until the work is done, even if the caller hangs up.
    let answer = web::block(move || {
        let _place = place;
        let deadline = Instant::now() + time;
        let trial = Trial::read(&text, &rules.files).map_err(Problem::faulty(ProblemKind::FaultyTrial))?;
        trial.run(&rules.diagnostician, deadline).map_err(|TrialTooLong| {
            let detail = format!("the trial was ended after {} s", time.as_secs_f64());
            Problem::new(ProblemKind::LongTrial).detail(detail)
        })
    });
    json(&answer.await.map_err(Problem::internal)??)
}
