//! Example of the what-if route.

use utoipa::openapi::OpenApi;

use super::formulas;

/// An invented case, and the action that is tried on it.
const REQUEST: &str = include_str!("examples/what_if_request.json");

/// What the service answered with the rules that it carries, its list of causes shortened.
const ANSWER: &str = include_str!("examples/what_if.json");

/// Adds the example to a document.
pub(super) fn add(document: &mut OpenApi) -> serde_json::Result<()> {
    let operation = document.paths.paths.get_mut("/v1/what_if").and_then(|item| item.post.as_mut());
    operation.map_or(Ok(()), |operation| formulas::add(operation, REQUEST, ANSWER))
}
