//! `POST /v1/rules/reload`, and what `GET /v1/rules` tells of reloads.
#![cfg(unix)]

use reqwest::{Client, Response, StatusCode};
use serde_json::{Value, json};
use whybake::http::AuthorAccess;
use whybake::settings::AuthorKey;

use crate::schema;
use crate::service::{ask, get};
use crate::small_pack::{CAUSE, Folder, NEVER, cause, pack};

const KEY: &str = "correct-horse-battery-staple";

async fn reload(address: std::net::SocketAddr, authorization: Option<&str>) -> Response {
    let mut request = Client::new().post(format!("http://{address}/v1/rules/reload"));
    if let Some(authorization) = authorization {
        request = request.header("authorization", authorization);
    }
    request.send().await.unwrap()
}

async fn status(address: std::net::SocketAddr) -> Value {
    Client::new().get(format!("http://{address}/v1/rules")).send().await.unwrap().json().await.unwrap()
}

#[actix_web::test]
async fn a_request_loads_the_folder_and_tells_the_outcome() {
    let folder = Folder::new(NEVER);
    let address = folder.serve(AuthorAccess::Everybody);
    assert_eq!(status(address).await["last_attempt"], Value::Null);
    folder.write(CAUSE, &cause(0.2));
    let answer = reload(address, None).await;
    assert_eq!(answer.status(), StatusCode::OK);
    let answer: Value = answer.json().await.unwrap();
    assert_eq!(schema::faults("RulesStatus", &answer), Vec::<String>::new());
    assert_eq!(answer["digest"], pack(0.2).digest());
    let attempt = &answer["last_attempt"];
    assert_eq!((&attempt["by"], &attempt["outcome"]), (&json!("request"), &json!("loaded")));
    assert_eq!((&attempt["digest"], &attempt["faults"]), (&answer["digest"], &json!(0)));
}

#[actix_web::test]
async fn refused_rules_are_told_with_every_diagnostic_and_stay_ready() {
    let folder = Folder::new(NEVER);
    let address = folder.serve(AuthorAccess::Everybody);
    folder.write(CAUSE, &cause(0.2).replace("hollow", "hollo"));
    let answer = reload(address, None).await;
    assert_eq!(answer.status(), StatusCode::CONFLICT);
    assert_eq!(answer.headers()["content-type"], "application/problem+json");
    let problem: Value = answer.json().await.unwrap();
    assert_eq!(schema::faults("Problem", &problem), Vec::<String>::new());
    assert_eq!(problem["type"], "/v1/problems/faulty-rules");
    let diagnostics = problem["diagnostics"].as_array().unwrap();
    assert_eq!(problem["detail"], format!("the rules cannot be loaded: {} faults", diagnostics.len()));
    assert!(diagnostics.iter().any(|diagnostic| diagnostic["message"] == "unknown name `hollo`"), "{problem}");

    let status = status(address).await;
    assert_eq!(schema::faults("RulesStatus", &status), Vec::<String>::new());
    assert_eq!(status["digest"], pack(0.1).digest());
    let attempt = &status["last_attempt"];
    assert_eq!((&attempt["outcome"], &attempt["reason"]), (&json!("refused"), &json!("the rules cannot be loaded")));
    assert_eq!((&attempt["faults"], &attempt["diagnostics"]), (&json!(diagnostics.len()), &problem["diagnostics"]));
    let ready = Client::new().get(format!("http://{address}/readyz")).send().await.unwrap();
    assert_eq!(ready.status(), StatusCode::OK);
}

#[actix_web::test]
async fn a_service_with_a_key_wants_it() {
    let folder = Folder::new(NEVER);
    let address = folder.serve(AuthorAccess::Key(AuthorKey::new(KEY).unwrap()));
    let nothing = reload(address, None).await;
    assert_eq!(nothing.status(), StatusCode::UNAUTHORIZED);
    assert_eq!(nothing.headers()["www-authenticate"], "Bearer realm=\"whybake rules\"");
    let expected = json!({
        "type": "/v1/problems/unknown-author",
        "title": "the key of authors is wanted",
        "status": 401,
        "detail": "the request carries no key"
    });
    assert_eq!(nothing.json::<Value>().await.unwrap(), expected);
    for wrong in ["Bearer correct-horse-battery-stapl", "Basic correct-horse-battery-staple", "Bearer", "Bearer "] {
        assert_eq!(reload(address, Some(wrong)).await.status(), StatusCode::UNAUTHORIZED, "{wrong}");
    }
    let wrong = reload(address, Some("Bearer wrong")).await;
    assert_eq!(wrong.headers()["www-authenticate"], "Bearer realm=\"whybake rules\", error=\"invalid_token\"");
    assert!(folder.live.last_attempt().is_none(), "nothing was loaded so far");
    assert_eq!(reload(address, Some(&format!("Bearer {KEY}"))).await.status(), StatusCode::OK);
}

#[actix_web::test]
async fn a_service_that_is_heard_elsewhere_and_has_no_key_grants_nothing() {
    let folder = Folder::new(NEVER);
    let address = folder.serve(AuthorAccess::Nobody);
    let answer = reload(address, Some(&format!("Bearer {KEY}"))).await;
    let expected = json!({
        "type": "/v1/problems/authoring-off",
        "title": "the service takes no changes of rules",
        "status": 403
    });
    assert_eq!(answer.json::<Value>().await.unwrap(), expected);
}

#[actix_web::test]
async fn rules_of_the_program_never_change() {
    ask(actix_web::http::Method::POST, "/v1/rules/reload").await.assert_problem(json!({
        "type": "/v1/problems/no-rules-folder",
        "title": "the rules come from no folder",
        "status": 409
    }));
    assert_eq!(get("/v1/rules").await.success()["last_attempt"], Value::Null);
}
