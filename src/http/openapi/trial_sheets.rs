//! Examples of the routes that go on from a diagnosis: the trial sheet and the replay.

use utoipa::openapi::OpenApi;

use super::formulas::add;

/// Path, request and answer; recorded from the service, the digests shortened, and in the record all but what is read.
const EXAMPLES: [(&str, &str, &str); 2] = [
    ("/v1/trial_sheets", include_str!("examples/trial_sheet_request.json"), include_str!("examples/trial_sheet.json")),
    ("/v1/replays", include_str!("examples/record.json"), include_str!("examples/replay.json")),
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
