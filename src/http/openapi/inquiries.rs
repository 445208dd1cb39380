//! Example of the route about what to find out.

use utoipa::openapi::OpenApi;

use super::formulas::add;

/// A case and how far to go.
const REQUEST: &str = include_str!("examples/inquiry_request.json");

/// What the service answered with the rules that it carries, its lists shortened.
const ANSWER: &str = include_str!("examples/inquiries.json");

/// Adds the example to a document.
pub(super) fn add_examples(document: &mut OpenApi) -> serde_json::Result<()> {
    let operation = document.paths.paths.get_mut("/v1/inquiries").and_then(|item| item.post.as_mut());
    operation.map_or(Ok(()), |operation| add(operation, REQUEST, ANSWER))
}
