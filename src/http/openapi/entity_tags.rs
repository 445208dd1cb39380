//! Entity tags of the answers that have them.

use utoipa::openapi::header::HeaderBuilder;
use utoipa::openapi::path::{ParameterBuilder, ParameterIn};
use utoipa::openapi::{ObjectBuilder, OpenApi, RefOr, Required, ResponseBuilder, Type};

use crate::http::routes::ROUTES;

const TAG: &str = "Changes with the version of the program and with the rules in force; send it as `If-None-Match`";

/// Adds `ETag`, `If-None-Match` and 304 to every operation that answers with them.
pub(super) fn add(document: &mut OpenApi) {
    let text = || ObjectBuilder::new().schema_type(Type::String).build();
    for route in ROUTES.iter().filter(|route| route.is_tagged()) {
        let operation = document.paths.paths.get_mut(route.path).and_then(|item| item.get.as_mut());
        let Some(operation) = operation else { continue };
        let header = || HeaderBuilder::new().schema(Some(text())).description(Some(TAG)).build();
        let known = ParameterBuilder::new()
            .name("If-None-Match")
            .parameter_in(ParameterIn::Header)
            .required(Required::False)
            .description(Some("The `ETag` of an answer that the caller has"))
            .schema(Some(text()))
            .build();
        operation.parameters.get_or_insert_default().push(known.into());
        let responses = &mut operation.responses.responses;
        if let Some(RefOr::T(success)) = responses.get_mut("200") {
            success.headers.insert("ETag".to_owned(), header().into());
        }
        let unchanged = ResponseBuilder::new().description("Nothing has changed").header("ETag", header()).build();
        responses.insert("304".to_owned(), unchanged.into());
    }
}
