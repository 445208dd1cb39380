//! `ETag` and `If-None-Match`, on every route that has them.

use actix_web::test::TestRequest;
use whybake::http::routes::ROUTES;

use crate::schema::document;
use crate::service::{Answer, get, post, send};

async fn ask(path: &str, known: &str) -> Answer {
    send(TestRequest::get().uri(path).insert_header(("if-none-match", known))).await
}

/// The routes with a tag, at places that are there.
fn tagged() -> Vec<String> {
    let paths = ROUTES.iter().filter(|route| route.is_tagged()).map(|route| {
        let id = if route.path.contains("problems") { "faulty-case" } else { "dough_too_warm" };
        route.path.replace("{id}", id).replace("{name}", "dew_point").replace("{product}", "jam")
    });
    paths.collect()
}

#[actix_web::test]
async fn what_has_not_changed_is_not_sent_again() {
    assert!(tagged().len() > 10);
    for path in tagged() {
        let answer = get(&path).await;
        let tag = answer.header("etag");
        assert!(answer.status == 200 && tag.starts_with("W/\"") && tag.contains("sha256:"), "{path}: {tag}");
        for known in [tag, "*", &format!("\"x\", {tag}"), tag.strip_prefix("W/").unwrap()] {
            let unchanged = ask(&path, known).await;
            assert_eq!((unchanged.status, unchanged.body.len()), (304, 0), "{path} {known}");
            assert_eq!(unchanged.header("etag"), tag, "{path}");
        }
        for known in ["\"x\"", "W/\"0.0.0\"", "no tag"] {
            let again = ask(&path, known).await;
            assert_eq!(
                (again.status, again.body, again.headers.get("etag").is_some()),
                (200, answer.body.clone(), true)
            );
        }
    }
}

#[actix_web::test]
async fn a_fault_is_told_to_whoever_knows_the_tag() {
    let tag = get("/v1/products").await;
    let tag = tag.header("etag");
    for (path, status) in [("/v1/causes/nope", 404), ("/v1/symptoms?product=nope", 422), ("/v1/products?x=1", 422)] {
        let answer = ask(path, tag).await;
        assert_eq!((answer.status, answer.headers.get("etag").is_none()), (status, true), "{path}");
    }
}

#[actix_web::test]
async fn what_changes_with_the_hour_or_the_request_has_none() {
    for path in ["/healthz", "/readyz", "/docs/"] {
        assert!(get(path).await.headers.get("etag").is_none(), "{path}");
    }
    let computed = post("application/json", r#"{"dry_bulb": 28, "relative_humidity": 70}"#);
    let computed = send(computed.uri("/v1/calculations/dew_point").insert_header(("if-none-match", "*"))).await;
    assert_eq!((computed.status, computed.headers.get("etag").is_none()), (200, true));
}

#[test]
fn the_document_tells_which_answers_have_one() {
    let document = document();
    for route in &ROUTES {
        let method = route.method.as_str().to_lowercase();
        let responses = &document["paths"][route.path][&method]["responses"];
        assert_eq!(responses.get("304").is_some(), route.is_tagged(), "{}", route.path);
        assert_eq!(responses["200"]["headers"].get("ETag").is_some(), route.is_tagged(), "{}", route.path);
    }
}
