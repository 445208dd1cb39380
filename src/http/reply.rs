//! Answers as JSON.

use actix_web::HttpResponse;
use actix_web::http::header::ContentType;
use serde::Serialize;

use super::problem::Problem;

/// `200 OK` with the JSON of `value`.
///
/// # Errors
/// An internal problem when `value` cannot be written as JSON.
pub(super) fn json(value: &impl Serialize) -> Result<HttpResponse, Problem> {
    let text = serde_json::to_vec(value).map_err(|error| Problem::internal(&error))?;
    Ok(json_bytes(text))
}

/// An answer that is JSON already.
pub(super) fn json_bytes(text: Vec<u8>) -> HttpResponse {
    HttpResponse::Ok().content_type(ContentType::json()).body(text)
}
