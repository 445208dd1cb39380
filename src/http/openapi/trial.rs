//! Example of the trial route.

use utoipa::openapi::OpenApi;

use super::formulas::add;

/// A new cause, and a case that it bears on.
const REQUEST: &str = include_str!("examples/trial_request.json");

/// What the service answered with the rules that it carries, its list of cases shortened.
const ANSWER: &str = include_str!("examples/trial.json");

/// Adds the example to a document.
pub(super) fn add_examples(document: &mut OpenApi) -> serde_json::Result<()> {
    let operation = document.paths.paths.get_mut("/v1/rules/trial").and_then(|item| item.post.as_mut());
    operation.map_or(Ok(()), |operation| add(operation, REQUEST, ANSWER))
}
