//! Example of the route about complaints.

use utoipa::openapi::OpenApi;

use super::formulas::add;

/// A complaint about a bun.
const REQUEST: &str = include_str!("examples/complaint_request.json");

/// What the service answered with the rules that it carries, shortened.
const ANSWER: &str = include_str!("examples/complaint.json");

/// Adds the example to a document.
pub(super) fn add_examples(document: &mut OpenApi) -> serde_json::Result<()> {
    let operation = document.paths.paths.get_mut("/v1/complaints").and_then(|item| item.post.as_mut());
    operation.map_or(Ok(()), |operation| add(operation, REQUEST, ANSWER))
}
