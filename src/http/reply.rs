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

/// An answer for people, in Markdown.
pub(super) fn markdown(text: String) -> HttpResponse {
    HttpResponse::Ok().content_type("text/markdown; charset=utf-8").body(text)
}

/// A page to print: it styles itself, and nothing in it may run or load.
pub(super) fn printed_page(text: String) -> HttpResponse {
    let policy = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'";
    HttpResponse::Ok()
        .content_type(ContentType::html())
        .insert_header(("content-security-policy", policy))
        .insert_header(("x-content-type-options", "nosniff"))
        .body(text)
}
