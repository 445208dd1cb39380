//! Examples of the routes about formulas.

use utoipa::openapi::path::Operation;
use utoipa::openapi::{OpenApi, RefOr};

use super::{JSON, set_example};

/// Path, request and answer; the answers were recorded from the service, that of the figures shortened.
const EXAMPLES: [(&str, &str, &str); 3] = [
    ("/v1/formulas/figures", include_str!("examples/formula.json"), include_str!("examples/figures.json")),
    ("/v1/formulas/batches", include_str!("examples/batch_request.json"), include_str!("examples/batch.json")),
    ("/v1/formulas/ratios", include_str!("examples/ratio_request.json"), include_str!("examples/ratio.json")),
];

/// Adds the examples to a document.
pub(super) fn add_examples(document: &mut OpenApi) -> serde_json::Result<()> {
    for (path, request, answer) in EXAMPLES {
        let operation = document.paths.paths.get_mut(path).and_then(|item| item.post.as_mut());
        if let Some(operation) = operation {
            add(operation, request, answer)?;
        }
    }
    Ok(())
}

pub(super) fn add(operation: &mut Operation, request: &str, answer: &str) -> serde_json::Result<()> {
    if let Some(RefOr::T(body)) = &mut operation.request_body {
        set_example(body.content.get_mut(JSON), request)?;
    }
    if let Some(RefOr::T(response)) = operation.responses.responses.get_mut("200") {
        set_example(response.content.get_mut(JSON), answer)?;
    }
    Ok(())
}
