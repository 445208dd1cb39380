//! What is not there, on every route.

use actix_web::http::Method;
use serde_json::json;
use whybake::http::routes::ROUTES;

use crate::service::{ask, get};

#[actix_web::test]
async fn an_unknown_path_is_a_problem() {
    for path in ["/nope", "/v1", "/v1/products/", "/v1/causes/a/b", "//", "/docs/nope.js"] {
        get(path).await.assert_problem(json!({
            "type": "/v1/problems/unknown-route",
            "title": "nothing stands at this path",
            "status": 404
        }));
    }
}

#[actix_web::test]
async fn a_method_that_is_not_allowed_is_told_what_is() {
    for route in &ROUTES {
        let answer = ask(
            Method::PATCH,
            &route.path.replace("{id}", "x").replace("{name}", "x").replace("{product}", "x").replace("{file:.*}", ""),
        )
        .await;
        let of_path = ROUTES.iter().filter(|other| other.path == route.path);
        let methods =
            of_path.map(|other| if other.method == Method::GET { "GET, HEAD" } else { other.method.as_str() });
        let allowed = methods.collect::<Vec<_>>().join(", ");
        let verb = if allowed == "POST" { "is" } else { "are" };
        answer.assert_problem(json!({
            "type": "/v1/problems/method-not-allowed",
            "title": "the method is not allowed here",
            "status": 405,
            "detail": format!("allowed {verb} {allowed}")
        }));
        assert_eq!(answer.header("allow"), allowed);
    }
}

#[actix_web::test]
async fn head_is_answered_wherever_get_is() {
    for route in ROUTES.iter().filter(|route| route.method == Method::GET) {
        let path =
            route.path.replace("{id}", "x").replace("{name}", "x").replace("{product}", "x").replace("{file:.*}", "");
        let (head, get) = (ask(Method::HEAD, &path).await, get(&path).await);
        assert_eq!(head.status, get.status, "{path}");
        assert_eq!(head.header("content-type"), get.header("content-type"), "{path}");
    }
}
