//! The interactive page of the API at `/docs/`. Everything it needs is in the binary; it asks nothing of other hosts.

use std::sync::{Arc, LazyLock};

use actix_web::HttpResponse;
use actix_web::http::header::{ContentEncoding, LOCATION};
use actix_web::web::Path;
use utoipa_swagger_ui::{Config, SwaggerFile, serve};

use super::problem::{Problem, ProblemKind};

/// Keeps the page from loading anything from elsewhere; it styles itself in place and draws icons from `data:` URLs.
const CONTENT_SECURITY_POLICY: &str =
    "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'";

/// The validator is a service of somebody else's: no page of ours calls it.
static CONFIG: LazyLock<Arc<Config<'static>>> =
    LazyLock::new(|| Arc::new(Config::from("../openapi.json").validator_url("none")));

/// Sends `/docs` to `/docs/`, against which the page resolves its files.
pub(super) async fn redirect() -> HttpResponse {
    HttpResponse::PermanentRedirect().insert_header((LOCATION, "docs/")).finish()
}

/// A file of the page; the page itself for the empty path.
pub(super) async fn file(path: Path<String>) -> Result<HttpResponse, Problem> {
    let found = serve(&path, Arc::clone(&CONFIG)).map_err(Problem::internal)?;
    found.map(respond).ok_or_else(|| Problem::new(ProblemKind::UnknownRoute))
}

fn respond(file: SwaggerFile<'static>) -> HttpResponse {
    let mut response = HttpResponse::Ok();
    response.content_type(file.content_type).insert_header(("content-security-policy", CONTENT_SECURITY_POLICY));
    if file.gzpipped {
        response.insert_header(ContentEncoding::Gzip);
    }
    response.body(file.bytes.into_owned())
}
